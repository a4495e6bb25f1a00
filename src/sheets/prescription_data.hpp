#pragma once

#include <optional>

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// The prescriptions of a home with what follows from each; `prescriptions` is the list that profile_data made.
TemplateData with_derived(const TemplateData& prescriptions, const Household& home, const Printer& printer);

/// "4 seconds": how often the breathing bag is squeezed at a rate, for this person's age.
TemplateData squeeze_data(const Household& home, std::optional<BreathRate> rate, const Printer& printer);

}  // namespace ventfolio
