#include "calc/battery_time.hpp"

#include <cmath>

namespace ventfolio::calc {
namespace {

bool is_share(double share) { return within(share, 0.1, 1); }

}  // namespace

std::optional<Duration> battery_time(std::span<const TestedBattery> batteries) {
    if (batteries.empty()) return std::nullopt;
    Duration sum;
    for (const TestedBattery& battery : batteries) {
        const bool tested = battery.tested >= Duration::of(1, unit::min) && within(battery.tested, 0, 7, unit::days);
        if (!tested || !(battery.derating > 0) || !within(battery.derating, 0, 1)) return std::nullopt;
        sum = sum + battery.tested * battery.derating;
    }
    return sum;
}

std::optional<Duration> labelled_battery_time(const LabelledBattery& battery, Power load) {
    const bool usable = within(battery.nominal, 3, 60, unit::V) && within(battery.capacity, 0.1, 1000, unit::Ah) &&
                        within(load, 0.5, 5000, unit::W) && is_share(battery.age_share) &&
                        is_share(battery.temperature_share) && is_share(battery.usable_share) &&
                        is_share(battery.supply_efficiency);
    if (!usable) return std::nullopt;
    const double watt_hours = battery.nominal.in(unit::V)*battery.capacity.in(unit::Ah);
    const double shares =
        battery.age_share * battery.temperature_share * battery.usable_share * battery.supply_efficiency;
    return Duration::of(watt_hours * shares / load.in(unit::W), unit::h);
}

std::optional<Duration> rated_battery_time(const RatedBattery& battery, Current load) {
    const bool usable = within(battery.capacity, 0.1, 1000, unit::Ah) && within(battery.rated_over, 1, 100, unit::h) &&
                        within(load, 0.01, 500, unit::A) && within(battery.exponent, 1, 1.4);
    if (!usable) return std::nullopt;
    const double hours = battery.rated_over.in(unit::h);
    const double rated_current = battery.capacity.in(unit::Ah) / hours;
    const double time = hours * std::pow(rated_current / load.in(unit::A), battery.exponent);
    if (!within(time, 0, 1000)) return std::nullopt;
    return Duration::of(time, unit::h);
}

std::optional<Band<Duration>> battery_time_range(std::span<const TestedBattery> batteries) {
    const auto low = battery_time(batteries);
    if (!low) return std::nullopt;
    Duration high;
    for (const TestedBattery& battery : batteries) high = high + battery.tested;
    return Band<Duration>{*low, high};
}

std::optional<Band<Duration>> labelled_battery_range(const LabelledBattery& battery, Power load) {
    const auto low = labelled_battery_time(battery, load);
    if (!low) return std::nullopt;
    const double watt_hours = battery.nominal.in(unit::V)*battery.capacity.in(unit::Ah);
    return Band<Duration>{*low, Duration::of(watt_hours / load.in(unit::W), unit::h)};
}

std::optional<double> battery_exponent(ElectricCharge slow, Duration slow_time, ElectricCharge fast,
                                       Duration fast_time) {
    const bool usable = within(slow, 0.1, 1000, unit::Ah) && within(fast, 0.1, 1000, unit::Ah) &&
                        within(slow_time, 0.1, 100, unit::h) && within(fast_time, 0.1, 100, unit::h) &&
                        fast_time < slow_time;
    if (!usable) return std::nullopt;
    const double current_ratio = (fast / slow) * (slow_time / fast_time);
    const double exponent = std::log(slow_time / fast_time) / std::log(current_ratio);
    if (!within(exponent, 1, 1.4)) return std::nullopt;
    return exponent;
}

}  // namespace ventfolio::calc
