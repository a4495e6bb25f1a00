#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// How hard the airways are to breathe through: cmH2O for each litre per second.
struct AirwayResistance {
    double cmH2O_s_per_L = 0;
};

/// How readily the lung and chest give way.
struct LungCompliance {
    double mL_per_cmH2O = 0;
};

struct ExhalationTime {
    Duration constant;  ///< after one of them 63 % of the breath is out
    Duration needed;    ///< three of them: 95 %
};

/// How long breathing out takes, in the simplest model: less time than `needed` traps air.
///
/// Formula  constant = resistance x compliance; needed = 3 x constant
/// Units    cmH2O per L/s and mL/cmH2O, result in s
/// Range    resistance 2 to 100, compliance 5 to 200 mL/cmH2O
/// Source   physiology textbooks (63, 86, 95, 98 and 99 % after 1 to 5 time constants; from memory)
/// Example  20 cmH2O per L/s, 50 mL/cmH2O: constant 1 s, needed 3 s
/// Nothing  is returned outside the range.
std::optional<ExhalationTime> exhalation_time(AirwayResistance resistance, LungCompliance compliance);

/// The share of a breath that has left the lung after a time.
///
/// Formula  1 - exp(-time / (resistance x compliance))
/// Units    as above; result a fraction
/// Range    time 0 to 30 s, the others as above
/// Source   the same
/// Example  1 s at a constant of 1 s: 63.2 %
/// Nothing  is returned outside the range.
std::optional<Fraction> breathed_out(Duration time_out, AirwayResistance resistance, LungCompliance compliance);

struct LungStretch {
    Pressure driving;
    LungCompliance compliance;
};

/// How far a breath stretches the lung, and what it yields for each cmH2O. It holds only without effort of the person
/// and with no flow at the end of the breath.
///
/// Formula  driving = plateau - baseline; compliance = volume / driving
/// Units    mL and cmH2O
/// Range    volume 10 to 2500 mL, plateau above baseline by 1 cmH2O or more, both 0 to 60 cmH2O
/// Source   definition; a driving pressure of 15 cmH2O is the limit of PALICC-2, Pediatr Crit Care Med 2023
/// Example  450 mL, 20 over 5 cmH2O: driving 15 cmH2O, compliance 30 mL/cmH2O
/// Nothing  is returned outside the range.
std::optional<LungStretch> lung_stretch(Volume breath, Pressure plateau, Pressure baseline);

}  // namespace ventfolio::calc
