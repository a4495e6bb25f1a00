#include "calc/altitude.hpp"

#include <cmath>

namespace ventfolio::calc {
namespace {

constexpr Pressure kWaterVapour = Pressure::of(47, unit::mmHg);

bool is_air(Pressure pressure) { return within(pressure, 400, 820, unit::mmHg); }

}  // namespace

std::optional<Pressure> air_pressure(Length height) {
    if (!within(height, -430, 5500, unit::m)) return std::nullopt;
    return Pressure::of(1013.25 * std::pow(1 - 0.0065 * height.in(unit::m) / 288.15, 5.255876), unit::hPa);
}

std::optional<Pressure> inspired_oxygen(Fraction oxygen, Pressure air) {
    if (!within(oxygen, 20.9, 100, unit::percent) || !is_air(air)) return std::nullopt;
    return (air - kWaterVapour) * (oxygen.in(unit::percent) / 100);
}

std::optional<Fraction> equivalent_fraction(Fraction oxygen, Pressure air_there, Pressure air_here) {
    if (!within(oxygen, 20.9, 100, unit::percent) || !is_air(air_there) || !is_air(air_here)) return std::nullopt;
    const Fraction needed = oxygen * ((air_there - kWaterVapour) / (air_here - kWaterVapour));
    if (!within(needed, 0, 100, unit::percent)) return std::nullopt;
    return needed;
}

}  // namespace ventfolio::calc
