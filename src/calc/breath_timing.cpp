#include "calc/breath_timing.hpp"

namespace ventfolio::calc {

std::optional<Duration> breath_cycle(BreathRate rate) {
    if (!within(rate, 2, 80, unit::breaths_per_min)) return std::nullopt;
    return Duration::of(60 / rate.in(unit::breaths_per_min), unit::s);
}

std::optional<BreathTiming> breath_timing(BreathRate rate, Duration time_in) {
    const auto cycle = breath_cycle(rate);
    if (!cycle || !within(time_in, 0.20, 4.0, unit::s) || at_least(time_in / *cycle, 1)) return std::nullopt;
    BreathTiming timing{
        .cycle = *cycle, .in = time_in, .out = *cycle - time_in, .share_in = time_in / *cycle, .ratio = {}};
    if (timing.out >= timing.in)
        timing.ratio.out = timing.out / timing.in;
    else
        timing.ratio.in = timing.in / timing.out;
    return timing;
}

std::optional<Duration> time_in_from_ratio(BreathRate rate, InToOut ratio) {
    const auto cycle = breath_cycle(rate);
    const auto usable = [](double side) { return side > 0 && side <= 10; };
    if (!cycle || !usable(ratio.in) || !usable(ratio.out)) return std::nullopt;
    const Duration time_in = *cycle * (ratio.in / (ratio.in + ratio.out));
    if (!within(time_in, 0.20, 4.0, unit::s)) return std::nullopt;
    return time_in;
}

}  // namespace ventfolio::calc
