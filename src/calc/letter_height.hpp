#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The height of a letter that is seen under an angle.
///
/// Formula  2 x distance x tan(angle / 2)
/// Units    mm; angle in minutes of arc (16 at least, 20 to 22 preferred)
/// Range    distance 200 to 10,000 mm, angle 5 to 60 minutes of arc
/// Source   geometry; 20 to 22 and 16 minutes: US aviation human-factors page, ISO 9241-3 as quoted
/// Example  22 minutes at 0.5 m: 3.2 mm
/// Nothing  is returned outside the range.
std::optional<Length> letter_height(Length distance, double minutes_of_arc);

/// The type size whose capitals have a height. A type size is not a letter height: 12 points have capitals near 3 mm.
///
/// Formula  height / (cap height of the font) in points of 1/72 inch
/// Units    mm, result in points; round up to use
/// Range    letter height 0.5 to 200 mm, cap height 0.4 to 0.9 of the type size
/// Source   definition of the point
/// Example  3.2 mm with capitals of 0.70: 12.96 points
/// Nothing  is returned outside the range.
std::optional<double> type_size_for(Length capital, double cap_height);

}  // namespace ventfolio::calc
