#include "calc/altitude.hpp"
#include "calc/cylinder_time.hpp"
#include "calc/oxygen_fraction.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

/// The factor that was given, or else the safe one of the size; nothing for a gauge that the size cannot show.
std::optional<calc::LitresPerPsi> factor_of(const Inputs& in) {
    if (in.has("factor")) return calc::LitresPerPsi{in.number("factor")};
    if (!in.has("size")) return std::nullopt;
    const auto size = calc::cylinder_size(in.word("country"), in.word("size"));
    if (!size || !calc::gauge_is_possible(pressure(in, "gauge"), size->full).value_or(false)) return std::nullopt;
    return size->factor;
}

}  // namespace

std::optional<Answer> cylinder_time(const Inputs& in) {
    const auto factor = factor_of(in);
    if (!factor) return std::nullopt;
    const auto time = calc::cylinder_time({.gauge = pressure(in, "gauge"),
                                           .residual = pressure(in, "residual"),
                                           .factor = *factor,
                                           .flow = flow(in, "flow")});
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time).give("factor-used", factor->value);
}

std::optional<Answer> cylinder_factor(const Inputs& in) {
    const auto factor = calc::litres_per_psi(volume(in, "contents"), pressure(in, "full"));
    if (!factor) return std::nullopt;
    return Answer{}.give("factor", factor->value);
}

std::optional<Answer> cylinder_contents(const Inputs& in) {
    const auto contents = calc::cylinder_contents(volume(in, "water-volume"), pressure(in, "gauge"));
    if (!contents) return std::nullopt;
    return Answer{}.give("contents", *contents);
}

std::optional<Answer> starting_gauge(const Inputs& in) {
    const auto gauge =
        calc::starting_gauge(flow(in, "flow"), duration(in, "time"), {in.number("factor")}, pressure(in, "residual"));
    if (!gauge) return std::nullopt;
    return Answer{}.give("gauge", *gauge);
}

std::optional<Answer> liquid_oxygen_time(const Inputs& in) {
    const auto time = calc::liquid_oxygen_time(mass(in, "liquid"), flow(in, "flow"));
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> liquid_oxygen_days(const Inputs& in) {
    const auto time = calc::liquid_oxygen_days({.liquid = mass(in, "liquid"),
                                                .flow = flow(in, "flow"),
                                                .hours_a_day = duration(in, "hours-a-day"),
                                                .lost_a_day = mass(in, "lost-a-day")});
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> oxygen_fraction(const Inputs& in) {
    const bool concentrator = in.word("supply") == "concentrator";
    const auto mixed =
        calc::oxygen_fraction({.oxygen = flow(in, "oxygen"),
                               .minute_volume = flow(in, "minute-volume"),
                               .mean_leak = flow(in, "leak"),
                               .purity = concentrator ? calc::kConcentratorPurity : calc::kCylinderPurity});
    if (!mixed) return std::nullopt;
    return Answer{}.give("fraction", *mixed);
}

std::optional<Answer> blender_oxygen(const Inputs& in) {
    const auto oxygen = calc::oxygen_for_fraction(fraction(in, "fraction"), flow(in, "total"), share(in, "purity"));
    if (!oxygen) return std::nullopt;
    return Answer{}.give("oxygen", *oxygen);
}

std::optional<Answer> air_pressure(const Inputs& in) {
    const auto air = calc::air_pressure(length(in, "height"));
    if (!air) return std::nullopt;
    return Answer{}.give("pressure", *air).give("mercury", *air);
}

std::optional<Answer> inspired_oxygen(const Inputs& in) {
    const auto oxygen = calc::inspired_oxygen(fraction(in, "fraction"), pressure(in, "air-pressure"));
    if (!oxygen) return std::nullopt;
    return Answer{}.give("oxygen", *oxygen);
}

std::optional<Answer> equivalent_fraction(const Inputs& in) {
    const auto needed =
        calc::equivalent_fraction(fraction(in, "fraction"), pressure(in, "there"), pressure(in, "here"));
    if (!needed) return std::nullopt;
    return Answer{}.give("needed", *needed);
}

std::optional<Answer> alveolar_oxygen(const Inputs& in) {
    const auto oxygen =
        calc::alveolar_oxygen(fraction(in, "fraction"), pressure(in, "air-pressure"), pressure(in, "carbon-dioxide"));
    if (!oxygen) return std::nullopt;
    return Answer{}.give("oxygen", *oxygen);
}

std::optional<Answer> trapped_gas(const Inputs& in) {
    const auto growth = calc::trapped_gas_growth(pressure(in, "here"), pressure(in, "there"));
    if (!growth) return std::nullopt;
    return Answer{}.give("growth", *growth);
}

}  // namespace ventfolio::calculators
