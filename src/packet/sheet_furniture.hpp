#pragma once

#include <string>

#include "layout/lay_out.hpp"
#include "packet/stationery.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// What stands on every page of a sheet beside its own words: for whom it is, from when and until when its settings
/// hold (not on letters), its code, and who comes before it.
Furniture furniture_for(const Document& document, const Household& home, const Stationery& stationery,
                        const std::string& code);

}  // namespace ventfolio
