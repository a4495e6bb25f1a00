#include "calc/humidity.hpp"

#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {

std::optional<Answer> saturation_pressure(const Inputs& in) {
    const auto vapour = calc::saturation_pressure(temperature(in, "temperature"));
    if (!vapour) return std::nullopt;
    return Answer{}.give("pressure", *vapour).give("mercury", *vapour);
}

std::optional<Answer> absolute_humidity(const Inputs& in) {
    const auto water = calc::absolute_humidity(temperature(in, "temperature"), fraction(in, "relative"));
    if (!water) return std::nullopt;
    return Answer{}.give("water", water->value);
}

std::optional<Answer> rain_out(const Inputs& in) {
    const auto water = calc::rain_out(temperature(in, "gas"), temperature(in, "wall"));
    if (!water) return std::nullopt;
    return Answer{}.give("water", water->value);
}

std::optional<Answer> humidifier_water(const Inputs& in) {
    const auto water = calc::humidifier_water_per_day(flow(in, "flow"), {in.number("in")}, {in.number("out")});
    if (!water) return std::nullopt;
    return Answer{}.give("water", *water);
}

std::optional<Answer> warmed_humidity(const Inputs& in) {
    const auto relative = calc::humidity_after_warming(temperature(in, "saturated-at"), temperature(in, "warmed-to"));
    if (!relative) return std::nullopt;
    return Answer{}.give("relative", *relative);
}

}  // namespace ventfolio::calculators
