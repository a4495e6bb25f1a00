#pragma once

#include <compare>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// Water vapour in a gas; the same number in g per cubic metre.
struct MilligramsPerLitre {
    double value = 0;
    friend constexpr auto operator<=>(MilligramsPerLitre, MilligramsPerLitre) = default;
};

/// The pressure of water vapour in saturated air.
///
/// Formula  6.1121 hPa x exp((18.678 - T / 234.5) x T / (257.14 + T))
/// Units    degrees Celsius, result a pressure
/// Range    0 to 50 degrees Celsius
/// Source   Buck 1996; CRC Handbook, 62nd edition, as quoted in a UNU book
/// Example  37 degrees: 62.8 hPa, 47 mmHg
/// Nothing  is returned outside the range.
std::optional<Pressure> saturation_pressure(Temperature temperature);

/// The water in a gas.
///
/// Formula  216.674 x relative humidity x saturation pressure in hPa / (T + 273.15)
/// Units    degrees Celsius and a fraction, result in mg/L
/// Range    0 to 50 degrees Celsius, relative humidity 0 to 100 %
/// Source   ideal gas law; CRC Handbook as above; 44 mg/L at 37 degrees saturated
/// Example  23 degrees at 50 %: 10.3 mg/L
/// Nothing  is returned outside the range.
std::optional<MilligramsPerLitre> absolute_humidity(Temperature temperature, Fraction relative);

/// The water that rains out where saturated gas meets a colder hose.
///
/// Formula  water in the gas less what saturated gas holds at the wall, not below 0
/// Units    mg for each litre of gas
/// Range    both temperatures 0 to 50 degrees Celsius
/// Source   the same
/// Example  37 degrees saturated, wall 22 degrees: 24.5 mg/L
/// Nothing  is returned outside the range.
std::optional<MilligramsPerLitre> rain_out(Temperature gas, Temperature wall);

/// The water that a humidifier uses in a day: leak flow is humidified too.
///
/// Formula  flow x 1440 min x (water out - water in)
/// Units    L/min and mg/L, result a volume of water; round up to print
/// Range    flow 0.3 to 180 L/min; water out not below water in, both 0 to 60 mg/L
/// Source   balance of mass
/// Example  8 L/min from 10.3 to 43.9 mg/L: 387 mL
/// Nothing  is returned outside the range.
std::optional<Volume> humidifier_water_per_day(Flow flow, MilligramsPerLitre in, MilligramsPerLitre out);

/// How wet saturated gas still is after it was warmed without more water: the air of a heated hose.
///
/// Formula  water of saturated gas at the first temperature / at the second
/// Units    degrees Celsius, result a fraction
/// Range    0 to 50 degrees Celsius, the second not below the first
/// Source   the same; AARC humidification guideline 2012 asks for 33 to 44 mg/L at the tube
/// Example  37 to 40 degrees: 85.9 %
/// Nothing  is returned outside the range: cooled gas stays saturated and rains out.
std::optional<Fraction> humidity_after_warming(Temperature saturated_at, Temperature warmed_to);

}  // namespace ventfolio::calc
