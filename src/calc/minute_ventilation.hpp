#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The gas moved in a minute.
///
/// Formula  rate x volume
/// Units    breaths/min and mL, result in L/min
/// Range    2 to 80 breaths/min, 10 to 2500 mL
/// Source   definition; West, Respiratory Physiology, and Guyton and Hall (500 mL at 15 is 7.5 L/min; from memory)
/// Example  14 breaths/min of 450 mL: 6.3 L/min
/// Nothing  is returned outside the range.
std::optional<Flow> minute_ventilation(BreathRate rate, Volume volume);

/// The mean flow while a breath goes in.
///
/// Formula  volume / time in
/// Units    mL and s, result in L/min
/// Range    10 to 2500 mL, 0.20 to 4.0 s
/// Source   definition
/// Example  500 mL in 0.5 s: 60 L/min
/// Nothing  is returned outside the range.
std::optional<Flow> inspiratory_flow(Volume volume, Duration time_in);

}  // namespace ventfolio::calc
