#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// An inspiratory pressure counted from the room: some machines show this one.
struct TotalPressure {
    Pressure value;
};

/// An inspiratory pressure counted from the baseline (PEEP, EPAP): other machines show this one.
struct PressureAboveBaseline {
    Pressure value;
};

/// The three pressures of a breath. Paper prints both peak and support, whichever of them was ordered.
struct PressureSums {
    Pressure baseline;
    Pressure peak;     ///< total
    Pressure support;  ///< above baseline
};

/// Both ways to state an inspiratory pressure, from either.
///
/// Formula  peak = baseline + support
/// Units    any pressure
/// Range    baseline 0 to 25 cmH2O; the inspiratory pressure, as stated, above 0 and up to 60 cmH2O. The sum may pass
///          60 cmH2O, so that a rule can say so
/// Source   definition (vocabulary of ISO 19223, from memory)
/// Example  14 above a baseline of 6 cmH2O: peak 20 cmH2O
/// Nothing  is returned outside the range, or when the total pressure is not above the baseline.
std::optional<PressureSums> pressure_sums(TotalPressure inspiratory, Pressure baseline);
std::optional<PressureSums> pressure_sums(PressureAboveBaseline inspiratory, Pressure baseline);

}  // namespace ventfolio::calc
