#pragma once

#include <string>

namespace ventfolio {

/// Appends a number as PDF wants it (ISO 32000-1, 7.3.3), rounded to 1/100: no exponent, no needless zero, a point for
/// the decimal sign whatever the locale. Throws std::logic_error for what is not a number or is beyond a million.
void append_number(std::string& out, double value);

}  // namespace ventfolio
