#pragma once

#include <cmath>

namespace ventfolio {

/// Millimetres in points.
constexpr double mm(double millimetres) { return millimetres * 72.0 / 25.4; }

/// Coordinates stand on a grid of 1/100 pt, so that the same sheet gives the same numbers everywhere.
inline double snapped(double points) { return std::round(points * 100) / 100; }

/// Room for rounding when a thing is asked whether it fits.
inline constexpr double kFitTolerance = 0.05;

}  // namespace ventfolio
