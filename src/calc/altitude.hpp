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

/// The pressure of oxygen in the lung, between the two usual forms of the equation.
///
/// Formula  inspired - carbon dioxide / 0.8 (simple, the low end) and inspired - carbon dioxide x (fraction +
///          (1 - fraction) / 0.8) (full, the high end), where inspired = fraction x (air pressure - 47 mmHg)
/// Units    fraction of 1, pressures
/// Range    as for inspired_oxygen; carbon dioxide 20 to 100 mmHg
/// Source   alveolar gas equation; anaesthesia study page (100 mmHg at 40, simple) and sample values (107 at 36, full)
/// Example  21 % at sea level, carbon dioxide 40 mmHg: 99.7 to 101.8 mmHg
/// Nothing  is returned outside the range, or when nothing would be left.
std::optional<Band<Pressure>> alveolar_oxygen(Fraction oxygen, Pressure air, Pressure carbon_dioxide);

/// How much more room the air in a closed cuff takes at a lower air pressure, if nothing holds it back.
///
/// Formula  air pressure here / air pressure there
/// Units    pressures, result a factor
/// Range    both 400 to 820 mmHg, there not above here
/// Source   Boyle's law; US Standard Atmosphere 1976
/// Example  sea level to 8000 ft: 1.35 times
/// Nothing  is returned outside the range.
std::optional<double> trapped_gas_growth(Pressure air_here, Pressure air_there);

}  // namespace ventfolio::calc
