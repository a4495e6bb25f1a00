#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the list of supplies says, under the name `stock`.
///
///   days        the time for which quantities are counted, "14 days"
///   items       the profile's supplies with `needed`, pieces for so many days, and `has_rate`
///   by_interval what the change intervals of the orders use up: `every`, `needed` (with a tenth spare), `tag`,
///               `position`, and one of `is_tube`, `is_exchanger`, `is_filter`
///   backups     devices that are kept as a backup
///
/// Quantities are rounded up.
TemplateData supply_data(const TemplateData::Object& profile, const Household& home, const Printer& printer);

}  // namespace ventfolio
