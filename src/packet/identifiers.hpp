#pragma once

#include <vector>

#include "rules/household.hpp"
#include "sheets/printed_value.hpp"
#include "sheets/printer.hpp"

namespace ventfolio {

/// Two identifiers on every page, by the audience of the sheet: on a wall the name that is called and the record
/// number, in the folder full name and birth date, in a wallet name and age, on a letter the name and the number that
/// its reader uses.
std::vector<PrintedValue> identifiers_for(Audience audience, const Household& household, const Printer& printer);

}  // namespace ventfolio
