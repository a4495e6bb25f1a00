#pragma once

#include <string>

#include "units/decimal.hpp"
#include "units/quantity.hpp"

namespace ventfolio {

/// How a region writes numbers.
struct NumberFormat {
    std::string decimal_sign = ".";
    std::string group_sign = ",";  ///< between thousands, from 1,000 on
};

/// Sizes that are read off a box keep their zeros ("8.0"); every other number loses them ("5").
enum class Zeros { drop, keep };

/// The one place that turns a number into print: leading zero, no trailing zero, thousands grouped, minus in words is
/// the caller's business.
///
/// Example: printed(*Decimal::parse(".5"), {}, Zeros::drop) is "0.5"; 1200 is "1,200"; 8.0 with Zeros::keep "8.0".
/// Source: error-prone notation list, Institute for Safe Medication Practices (as quoted).
std::string printed(const Decimal& number, const NumberFormat& format, Zeros zeros = Zeros::drop);

/// Whole minutes of a time, rounded down, with a tolerance for binary fractions (616.0000000000001 is 616).
long long floor_minutes(Duration time);
/// Rounded down to a multiple of `step` minutes: what paper shows for a time that runs out.
long long floor_minutes(Duration time, int step);
/// Rounded up to whole pieces.
long long ceil_pieces(double pieces);

}  // namespace ventfolio
