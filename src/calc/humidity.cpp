#include "calc/humidity.hpp"

#include <algorithm>
#include <cmath>

namespace ventfolio::calc {
namespace {

constexpr Fraction kSaturated = Fraction::of(100, unit::percent);

}  // namespace

std::optional<Pressure> saturation_pressure(Temperature temperature) {
    if (!within(temperature, 0, 50, unit::degC)) return std::nullopt;
    const double celsius = temperature.in(unit::degC);
    return Pressure::of(6.1121 * std::exp((18.678 - celsius / 234.5) * celsius / (257.14 + celsius)), unit::hPa);
}

std::optional<MilligramsPerLitre> absolute_humidity(Temperature temperature, Fraction relative) {
    const auto saturated = saturation_pressure(temperature);
    if (!saturated || !within(relative, 0, 100, unit::percent)) return std::nullopt;
    const double share = relative.in(unit::percent) / 100;
    return MilligramsPerLitre{216.674 * share * saturated->in(unit::hPa) / (temperature.in(unit::degC) + 273.15)};
}

std::optional<MilligramsPerLitre> rain_out(Temperature gas, Temperature wall) {
    const auto warm = absolute_humidity(gas, kSaturated);
    const auto cold = absolute_humidity(wall, kSaturated);
    if (!warm || !cold) return std::nullopt;
    return MilligramsPerLitre{std::max(0.0, warm->value - cold->value)};
}

std::optional<Volume> humidifier_water_per_day(Flow flow, MilligramsPerLitre in, MilligramsPerLitre out) {
    constexpr double kMinutesPerDay = 1440;
    if (!within(flow, 0.3, 180, unit::L_per_min) || !within(in.value, 0, 60) || !within(out.value, 0, 60) || out < in)
        return std::nullopt;
    const double milligrams = flow.in(unit::L_per_min)*kMinutesPerDay * (out.value - in.value);
    return Volume::of(milligrams / 1000, unit::mL);
}

std::optional<Fraction> humidity_after_warming(Temperature saturated_at, Temperature warmed_to) {
    const auto before = absolute_humidity(saturated_at, kSaturated);
    const auto after = absolute_humidity(warmed_to, kSaturated);
    if (!before || !after || warmed_to < saturated_at) return std::nullopt;
    return kSaturated * (before->value / after->value);
}

}  // namespace ventfolio::calc
