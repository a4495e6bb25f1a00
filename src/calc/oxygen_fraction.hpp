#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// Oxygen in the gas of a source, as fractions of 1.
inline constexpr Band<double> kCylinderPurity{1, 1};
/// Pharmacopoeia and ISO 80601-2-69: 93 -/+ 3 % (from memory).
inline constexpr Band<double> kConcentratorPurity{0.90, 0.96};
inline constexpr double kRoomAir = 0.21;

struct OxygenBleed {
    Flow oxygen;
    Flow minute_volume;
    Flow mean_leak;  ///< of an exhalation port or mask; 0 on a closed circuit
    Band<double> purity = kCylinderPurity;
};

/// The oxygen fraction when oxygen joins a ventilator circuit: a range, never one figure. Where it joins, the time in,
/// pooling and the mask all matter; the level on the finger decides.
///
/// Formula  0.21 + (purity - 0.21) x oxygen / total; the total is minute volume plus leak for the low end and minute
///          volume alone for the high end; never above the purity
/// Units    L/min, result a fraction of 1
/// Range    oxygen 0 to 25, minute volume 0.3 to 30, leak 0 to 150 L/min; purity 0.5 to 1
/// Source   mixing equation; high-flow teaching sheet (10 L/min air and 6 L/min oxygen: 0.506); limits of the closed
///          formula: Thys et al., Eur Respir J 2002;19:653 (abstract)
/// Example  2 L/min, minute volume 8, leak 30 L/min: 0.25 to 0.41
/// Nothing  is returned outside the range.
std::optional<Band<Fraction>> oxygen_fraction(const OxygenBleed& bleed);

/// The oxygen that a blender takes for a fraction.
///
/// Formula  total x (fraction - 0.21) / (purity - 0.21)
/// Units    L/min
/// Range    total 0.3 to 180 L/min, fraction 0.21 to the purity, purity 0.5 to 1
/// Source   mixing equation
/// Example  0.40 at 10 L/min from a cylinder: 2.41 L/min
/// Nothing  is returned outside the range: a source cannot give more than its purity.
std::optional<Flow> oxygen_for_fraction(Fraction fraction, Flow total, double purity);

}  // namespace ventfolio::calc
