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

std::optional<Band<Pressure>> alveolar_oxygen(Fraction oxygen, Pressure air, Pressure carbon_dioxide) {
    constexpr double kExchangeRatio = 0.8;
    const auto inspired = inspired_oxygen(oxygen, air);
    if (!inspired || !within(carbon_dioxide, 20, 100, unit::mmHg)) return std::nullopt;
    const double fraction = oxygen.in(unit::percent) / 100;
    const Band<Pressure> left{*inspired - carbon_dioxide / kExchangeRatio,
                              *inspired - carbon_dioxide * (fraction + (1 - fraction) / kExchangeRatio)};
    if (!(left.low > Pressure{})) return std::nullopt;
    return left;
}

std::optional<double> trapped_gas_growth(Pressure air_here, Pressure air_there) {
    if (!is_air(air_here) || !is_air(air_there) || air_there > air_here) return std::nullopt;
    return air_here / air_there;
}

}  // namespace ventfolio::calc
