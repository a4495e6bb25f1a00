#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The minutes off the ventilator that paper promises to a caregiver in an emergency: half of what the person manages
/// on a good day, and never more than five.
///
/// Formula  the smaller of 5 and half the minutes, rounded down
/// Units    whole minutes
/// Range    0 min to 24 h of free breathing
/// Source   common practice, no source
/// Example  7 min: 3 min. 30 min: 5 min
/// Nothing  is returned outside the range, or when less than 2 min is known: the paper then speaks as for none.
std::optional<int> safe_free_minutes(Duration free_breathing);

}  // namespace ventfolio::calc
