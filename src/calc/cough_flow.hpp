#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

enum class CoughStrength { ineffective, weak, sufficient };

/// Below this a cough clears nothing (used as goal in a Cuban review).
inline constexpr Flow kIneffectiveCough = Flow::of(160, unit::L_per_min);
/// Below this help with coughing is taught (used as cut-off in a Portuguese pulmonology paper).
inline constexpr Flow kWeakCough = Flow::of(270, unit::L_per_min);

/// What a measured peak flow says about a cough.
///
/// Formula  below 160 L/min ineffective, below 270 L/min weak, else sufficient
/// Units    L/min
/// Range    0 to 900 L/min
/// Source   as named beside the limits
/// Example  200 L/min: weak
/// Nothing  is returned outside the range.
std::optional<CoughStrength> cough_strength(Flow peak);

struct CoughPressures {
    Pressure swing;             ///< from full breath in to full breath out
    bool reaches_goal = false;  ///< both at least 30 cmH2O
};

/// The pressures of a device that helps coughing. Breathing out is below the room and carries a minus sign.
///
/// Formula  swing = in - out; most studies passed 160 L/min only with 30 cmH2O or more on each side
/// Units    cmH2O
/// Range    in 1 to 70 cmH2O, out -70 to -1 cmH2O
/// Source   reviews of mechanical insufflation-exsufflation (40 and -40 are common, 30 and -30 the least that worked)
/// Example  40 and -40 cmH2O: swing 80 cmH2O, reaches the goal
/// Nothing  is returned outside the range, or for a pressure out without its minus sign.
std::optional<CoughPressures> cough_pressures(Pressure in, Pressure out);

}  // namespace ventfolio::calc
