#include <algorithm>
#include <vector>

#include "calc/backup_supply.hpp"
#include "calc/battery_time.hpp"
#include "calc/outage_timeline.hpp"
#include "calc/recharge_time.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {

std::optional<Answer> battery_time(const Inputs& in) {
    std::vector<calc::TestedBattery> batteries;
    for (const Duration tested : in.list<Dimension::duration>("tested"))
        batteries.push_back({.tested = tested, .derating = share(in, "derating")});
    const auto time = calc::battery_time_range(batteries);
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> labelled_battery_time(const Inputs& in) {
    const auto time = calc::labelled_battery_range({.nominal = voltage(in, "volts"),
                                                    .capacity = charge(in, "capacity"),
                                                    .age_share = share(in, "age-share"),
                                                    .temperature_share = share(in, "temperature-share"),
                                                    .usable_share = share(in, "usable-share"),
                                                    .supply_efficiency = share(in, "efficiency")},
                                                   power(in, "load"));
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> rated_battery_time(const Inputs& in) {
    const auto time = calc::rated_battery_time({.capacity = charge(in, "capacity"),
                                                .rated_over = duration(in, "rated-over"),
                                                .exponent = in.number("exponent")},
                                               current(in, "current"));
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> battery_exponent(const Inputs& in) {
    const auto exponent = calc::battery_exponent(charge(in, "slow"), duration(in, "slow-time"), charge(in, "fast"),
                                                 duration(in, "fast-time"));
    if (!exponent) return std::nullopt;
    return Answer{}.give("exponent", *exponent);
}

std::optional<Answer> direct_current_draw(const Inputs& in) {
    const auto drawn =
        calc::direct_current_draw(power(in, "load"), voltage(in, "lowest-volts"), share(in, "efficiency"));
    if (!drawn) return std::nullopt;
    Answer answer;
    answer.give("draw", drawn->draw);
    return drawn->fuse ? answer.give("fuse", *drawn->fuse) : answer.give_word("no-fuse", "none");
}

std::optional<Answer> socket_load(const Inputs& in) {
    const auto carries = calc::socket_carries(current(in, "rating"), current(in, "draw"));
    if (!carries) return std::nullopt;
    return Answer{}.give_word("carries", yes_or_no(*carries));
}

std::optional<Answer> generator_load(const Inputs& in) {
    const std::vector<Power> running = in.list<Dimension::power>("running");
    const std::vector<Power> starting = in.list<Dimension::power>("starting");
    if (starting.size() > running.size()) return std::nullopt;
    std::vector<calc::SupplyLoad> loads;
    for (std::size_t at = 0; at < running.size(); ++at)
        loads.push_back({.running = running[at], .starting = at < starting.size() ? starting[at] : running[at]});
    const auto load = calc::generator_load(loads);
    if (!load) return std::nullopt;
    return Answer{}
        .by(starting.empty() ? "running" : "starting")
        .give("sum", load->running)
        .give("needed", load->needed);
}

std::optional<Answer> outage_timeline(const Inputs& in) {
    const auto oxygen = in.maybe<Dimension::duration>("oxygen");
    const auto line = calc::outage_timeline(duration(in, "power"), oxygen, duration(in, "travel"),
                                            {.fixed = duration(in, "reserve")});
    if (!line) return std::nullopt;
    Answer answer;
    answer.give("time-left", line->time_left);
    if (!line->leave_by) return answer.by(oxygen ? "late-oxygen" : "late-power").give_word("no-wait", "now");
    return answer.by(oxygen ? "oxygen" : "power").give("leave-by", *line->leave_by);
}

std::optional<Answer> recharge_time(const Inputs& in) {
    const auto time = calc::recharge_time({in.number("energy")}, power(in, "charger"), share(in, "efficiency"));
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> fuel_time(const Inputs& in) {
    const auto time = calc::fuel_time(volume(in, "tank"), in.number("use"));
    if (!time) return std::nullopt;
    return Answer{}.give("time", *time);
}

std::optional<Answer> supply_rating(const Inputs& in) {
    const auto rating = calc::supply_rating(power(in, "load"), in.number("power-factor"));
    if (!rating) return std::nullopt;
    return Answer{}.give("rating", rating->value);
}

}  // namespace ventfolio::calculators
