#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The pressure of the air at a height, in a place or an aircraft cabin.
///
/// Formula  1013.25 hPa x (1 - 0.0065 x m / 288.15) ^ 5.255876, geopotential height
/// Units    m, result a pressure
/// Range    -430 to 5500 m
/// Source   US Standard Atmosphere 1976
/// Example  8000 ft: 752.6 hPa, 564.5 mmHg
/// Nothing  is returned outside the range.
std::optional<Pressure> air_pressure(Length height);

/// The pressure of oxygen in the gas breathed in, warmed and wetted in the airway. It never decides fitness to fly.
///
/// Formula  fraction x (air pressure - 47 mmHg)
/// Units    fraction of 1, pressures
/// Range    fraction 21 to 100 % (20.9 % is accepted), air pressure 400 to 820 mmHg
/// Source   respiratory physiology teaching notes (149 mmHg at sea level)
/// Example  21 % at 564.5 mmHg: 108.7 mmHg
/// Nothing  is returned outside the range.
std::optional<Pressure> inspired_oxygen(Fraction oxygen, Pressure air);

/// The oxygen fraction that gives the same pressure of oxygen at another air pressure.
///
/// Formula  fraction x (there - 47 mmHg) / (here - 47 mmHg)
/// Units    fraction of 1
/// Range    as for inspired_oxygen
/// Source   the same
/// Example  28 % at sea level is 38.6 % at 8000 ft
/// Nothing  is returned outside the range, or when more than pure oxygen would be needed.
std::optional<Fraction> equivalent_fraction(Fraction oxygen, Pressure air_there, Pressure air_here);

}  // namespace ventfolio::calc
