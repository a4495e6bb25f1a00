#include "calc/alarm_margins.hpp"

#include "calc/safe_minutes.hpp"
#include "calc/squeeze_interval.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

calc::AgeGroup group(const std::string& word) {
    if (word == "adult") return calc::AgeGroup::adult;
    return word == "child" ? calc::AgeGroup::child : calc::AgeGroup::infant;
}

}  // namespace

std::optional<Answer> alarm_margins(const Inputs& in) {
    const Pressure peak = pressure(in, "peak");
    const Pressure low = pressure(in, "low-limit");
    const auto above_peak = calc::high_pressure_margin(pressure(in, "high-limit"), peak);
    const auto below_peak = calc::low_pressure_below_peak(low, peak);
    const auto above_baseline = calc::low_pressure_above_baseline(low, pressure(in, "baseline"));
    if (!above_peak || !below_peak || !above_baseline) return std::nullopt;
    return Answer{}
        .give("above-peak", *above_peak)
        .give("below-peak", *below_peak)
        .give("above-baseline", *above_baseline);
}

std::optional<Answer> no_breath_window(const Inputs& in) {
    const auto window = calc::no_breath_window(rate(in, "backup-rate"));
    if (!window) return std::nullopt;
    return Answer{}.give("delay", *window);
}

std::optional<Answer> silent_tube(const Inputs& in) {
    const auto silent = calc::tube_may_slip_silently(length(in, "inner-diameter"), pressure(in, "below-peak"));
    if (!silent) return std::nullopt;
    return Answer{}.give_word("silent", yes_or_no(*silent));
}

std::optional<Answer> volume_alarm_share(const Inputs& in) {
    const auto part = calc::share_of_usual(volume(in, "limit"), volume(in, "usual"));
    if (!part) return std::nullopt;
    return Answer{}.give("share", 100 * *part);
}

std::optional<Answer> minute_volume_alarm_share(const Inputs& in) {
    const auto part = calc::share_of_usual(flow(in, "limit"), flow(in, "usual"));
    if (!part) return std::nullopt;
    return Answer{}.give("share", 100 * *part);
}

std::optional<Answer> squeeze_interval(const Inputs& in) {
    const auto set_rate = in.maybe<Dimension::breath_rate>("rate");
    const auto interval = calc::squeeze_interval(group(in.word("group")), set_rate);
    if (!interval) return std::nullopt;
    return Answer{}
        .by(set_rate ? "rate" : "group")
        .give("interval",
              calc::Band<Duration>{Duration::of(interval->from, unit::s), Duration::of(interval->to, unit::s)});
}

std::optional<Answer> safe_minutes(const Inputs& in) {
    const auto minutes = calc::safe_free_minutes(duration(in, "free"));
    if (!minutes) return std::nullopt;
    return Answer{}.give("minutes", Duration::of(*minutes, unit::min));
}

}  // namespace ventfolio::calculators
