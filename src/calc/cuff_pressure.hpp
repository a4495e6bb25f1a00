#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The widest published band for the pressure in an air-filled cuff.
inline constexpr Band<Pressure> kCuffBand{Pressure::of(15, unit::cmH2O), Pressure::of(30, unit::cmH2O)};

struct CuffPressure {
    double cmH2O = 0;
    double mmHg = 0;
    bool in_band = false;
};

/// A cuff pressure on both gauges. 25 on a gauge in mmHg is 34 cmH2O: the wrong unit passes unseen.
///
/// Formula  mmHg = cmH2O x 98.0665 / 133.322387415
/// Units    cmH2O and mmHg
/// Range    0 to 60 cmH2O (above that a unit has slipped); air-filled cuffs only, water and foam have no such number
/// Source   15 to 30: NHS Greater Glasgow cuff page; 20 to 30: Ann Rehabil Med 2020;44:402; conversion: NIST SP 811
/// Example  25 mmHg: 34.0 cmH2O, outside the band
/// Nothing  is returned outside the range.
std::optional<CuffPressure> cuff_pressure(Pressure pressure);

}  // namespace ventfolio::calc
