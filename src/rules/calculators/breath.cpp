#include "calc/breath_timing.hpp"
#include "calc/dead_space.hpp"
#include "calc/exhalation_time.hpp"
#include "calc/minute_ventilation.hpp"
#include "calc/pressure_sums.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

calc::AirwayResistance resistance(const Inputs& in) { return {in.number("resistance")}; }
calc::LungCompliance compliance(const Inputs& in) { return {in.number("compliance")}; }

}  // namespace

std::optional<Answer> breath_timing(const Inputs& in) {
    const auto timing = calc::breath_timing(rate(in, "rate"), duration(in, "time-in"));
    if (!timing) return std::nullopt;
    return Answer{}
        .give("cycle", timing->cycle)
        .give("out", timing->out)
        .give("share", 100 * timing->share_in)
        .give_ratio("ratio", timing->ratio.in, timing->ratio.out);
}

std::optional<Answer> inspiratory_time(const Inputs& in) {
    const auto time = calc::time_in_from_ratio(rate(in, "rate"), {in.number("in"), in.number("out")});
    if (!time) return std::nullopt;
    return Answer{}.give("time-in", *time);
}

std::optional<Answer> minute_ventilation(const Inputs& in) {
    const auto moved = calc::minute_ventilation(rate(in, "rate"), volume(in, "volume"));
    if (!moved) return std::nullopt;
    return Answer{}.give("flow", *moved);
}

std::optional<Answer> inspiratory_flow(const Inputs& in) {
    const auto mean = calc::inspiratory_flow(volume(in, "volume"), duration(in, "time-in"));
    if (!mean) return std::nullopt;
    return Answer{}.give("flow", *mean);
}

std::optional<Answer> pressure_sums(const Inputs& in) {
    const Pressure stated = pressure(in, "inspiratory");
    const Pressure baseline = pressure(in, "baseline");
    const auto sums = in.word("counted-from") == "room"
                          ? calc::pressure_sums(calc::TotalPressure{stated}, baseline)
                          : calc::pressure_sums(calc::PressureAboveBaseline{stated}, baseline);
    if (!sums) return std::nullopt;
    return Answer{}.by(in.word("counted-from")).give("peak", sums->peak).give("support", sums->support);
}

std::optional<Answer> dead_space(const Inputs& in) {
    const auto shares =
        calc::dead_space(volume(in, "breath"), volume(in, "body"), volume(in, "equipment"), rate(in, "rate"));
    if (!shares) return std::nullopt;
    return Answer{}
        .give("alveolar", shares->alveolar)
        .give("equipment-share", 100 * shares->equipment)
        .give("total-share", 100 * shares->total);
}

std::optional<Answer> airway_dead_space(const Inputs& in) {
    constexpr int kAdult = 18;
    const int years = whole(in, "years");
    const auto space = calc::airway_dead_space(years, mass(in, "weight"));
    if (!space) return std::nullopt;
    return Answer{}.by(years < kAdult ? "child" : "adult").give("volume", *space);
}

std::optional<Answer> chest_dead_space(const Inputs& in) {
    const auto space = calc::chest_dead_space(mass(in, "weight"));
    if (!space) return std::nullopt;
    return Answer{}.give("volume", *space);
}

std::optional<Answer> tube_volume(const Inputs& in) {
    const auto gas = calc::tube_volume(length(in, "bore"), length(in, "length"));
    if (!gas) return std::nullopt;
    return Answer{}.give("volume", *gas);
}

std::optional<Answer> lung_stretch(const Inputs& in) {
    const auto stretch = calc::lung_stretch(volume(in, "volume"), pressure(in, "plateau"), pressure(in, "baseline"));
    if (!stretch) return std::nullopt;
    return Answer{}.give("driving", stretch->driving).give("compliance", stretch->compliance.mL_per_cmH2O);
}

std::optional<Answer> exhalation_time(const Inputs& in) {
    const auto time = calc::exhalation_time(resistance(in), compliance(in));
    if (!time) return std::nullopt;
    return Answer{}.give("constant", time->constant).give("needed", time->needed);
}

std::optional<Answer> breathed_out(const Inputs& in) {
    const auto part = calc::breathed_out(duration(in, "time-out"), resistance(in), compliance(in));
    if (!part) return std::nullopt;
    return Answer{}.give("share", *part);
}

}  // namespace ventfolio::calculators
