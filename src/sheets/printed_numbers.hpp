#pragma once

#include <string>

#include "units/print.hpp"

namespace ventfolio {

/// A text of the program with its numbers as the region writes them. It has them with a point and with commas between
/// thousands; digits that belong to a word or to a path stay as they are.
///
/// Example: with a decimal comma "2,000 psi x 0.28" is "2 000 psi x 0,28", with a no-break blank.
std::string with_printed_numbers(std::string text, const NumberFormat& format);

}  // namespace ventfolio
