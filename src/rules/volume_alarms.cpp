#include "calc/alarm_margins.hpp"
#include "calc/minute_ventilation.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

void crosses(Report& report, const DerivedPrescription& rx, const FieldBase& limit, std::string alarm,
             std::string setting) {
    report.at(limit, "on the wrong side of " + setting)
        .with("rx", rx.name)
        .with("alarm", std::move(alarm))
        .with("limit", limit)
        .with("setting", std::move(setting));
}

/// What the minute volume should be by the settings alone; in a pressure mode what is usual.
std::optional<Flow> ordered_minute_volume(const DerivedPrescription& rx) {
    if (rx.ordered_volume) return rx.rate ? calc::minute_ventilation(*rx.rate, *rx.ordered_volume) : std::nullopt;
    return rx.usual_minute_volume;
}

bool low_volume_crosses(const DerivedPrescription& rx) {
    const auto& low = rx.order->alarms->low_tidal_volume;
    return !rx.mouthpiece && low && rx.ordered_volume && at_or_above(*low, *rx.ordered_volume);
}
bool high_volume_crosses(const DerivedPrescription& rx) {
    const auto& high = rx.order->alarms->high_tidal_volume;
    return !rx.mouthpiece && high && rx.ordered_volume && at_or_below(*high, *rx.ordered_volume);
}
bool low_minute_volume_crosses(const DerivedPrescription& rx) {
    const auto& low = rx.order->alarms->low_minute_volume;
    const auto ordered = ordered_minute_volume(rx);
    return !rx.mouthpiece && low && ordered && at_or_above(*low, *ordered);
}
bool high_minute_volume_crosses(const DerivedPrescription& rx) {
    const auto& high = rx.order->alarms->high_minute_volume;
    const auto ordered = ordered_minute_volume(rx);
    return !rx.mouthpiece && high && ordered && at_or_below(*high, *ordered);
}
bool high_rate_crosses(const DerivedPrescription& rx) {
    const auto& high = rx.order->alarms->high_rate;
    return high && rx.rate && at_or_below(*high, *rx.rate);
}

template <Dimension D>
void check_pair(Report& report, const DerivedPrescription& rx, const Field<Quantity<D>>& low,
                const Field<Quantity<D>>& high, std::string name) {
    if (low && high && at_or_above(*low, *high))
        crosses(report, rx, low, "low-" + name, "the high limit of " + written(high));
}

void inside(Report& report, const DerivedPrescription& rx, const FieldBase& limit, std::string alarm,
            std::string range) {
    report.at(limit, "the log accepts " + range)
        .with("rx", rx.name)
        .with("alarm", std::move(alarm))
        .with("limit", limit)
        .with("range", range);
}

void check_volume_ranges(Report& report, const DerivedPrescription& rx) {
    const Alarms& alarms = *rx.order->alarms;
    if (rx.accepted_volume && alarms.low_tidal_volume && !low_volume_crosses(rx) &&
        at_or_above(*alarms.low_tidal_volume, rx.accepted_volume->low))
        inside(report, rx, alarms.low_tidal_volume, "low-volume",
               shown_volume(rx.accepted_volume->low) + " to " + shown_volume(rx.accepted_volume->high));
    if (!rx.accepted_minute_volume) return;
    const std::string range =
        shown_flow(rx.accepted_minute_volume->low) + " to " + shown_flow(rx.accepted_minute_volume->high);
    if (alarms.low_minute_volume && !low_minute_volume_crosses(rx) &&
        at_or_above(*alarms.low_minute_volume, rx.accepted_minute_volume->low))
        inside(report, rx, alarms.low_minute_volume, "low-minute-volume", range);
    if (alarms.high_minute_volume && !high_minute_volume_crosses(rx) &&
        at_or_below(*alarms.high_minute_volume, rx.accepted_minute_volume->high))
        inside(report, rx, alarms.high_minute_volume, "high-minute-volume", range);
}

void check_rate_range(Report& report, const DerivedPrescription& rx) {
    const auto& high = rx.order->alarms->high_rate;
    if (!high || high_rate_crosses(rx)) return;
    const auto& expected = rx.order->expected->total_rate;
    if (expected && at_or_below(*high, expected.high()))
        inside(report, rx, high, "high-rate", written(expected));
    else if (rx.rate && below(*high, *rx.rate + threshold::kHighRateMarginLeast))
        inside(report, rx, high, "high-rate", "breathing a little above the rate of " + written(rx.order->rate));
}

}  // namespace

namespace check {

void alarm_limit_crosses_setting(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Alarms& alarms = *rx.order->alarms;
        const std::string volume =
            rx.ordered_volume ? "the volume of " + shown_volume(*rx.ordered_volume) : std::string{};
        const auto minute = ordered_minute_volume(rx);
        const std::string minute_volume = minute ? "the usual " + shown_flow(*minute) : std::string{};
        if (low_volume_crosses(rx)) crosses(report, rx, alarms.low_tidal_volume, "low-volume", volume);
        if (high_volume_crosses(rx)) crosses(report, rx, alarms.high_tidal_volume, "high-volume", volume);
        if (low_minute_volume_crosses(rx))
            crosses(report, rx, alarms.low_minute_volume, "low-minute-volume", minute_volume);
        if (high_minute_volume_crosses(rx))
            crosses(report, rx, alarms.high_minute_volume, "high-minute-volume", minute_volume);
        if (high_rate_crosses(rx))
            crosses(report, rx, alarms.high_rate, "high-rate", "the rate of " + written(rx.order->rate));
        check_pair(report, rx, alarms.low_pressure, alarms.high_pressure, "pressure");
        check_pair(report, rx, alarms.low_tidal_volume, alarms.high_tidal_volume, "volume");
        check_pair(report, rx, alarms.low_minute_volume, alarms.high_minute_volume, "minute-volume");
        check_pair(report, rx, alarms.low_rate, alarms.high_rate, "rate");
    }
}

void alarm_inside_accepted_range(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (rx.mouthpiece) continue;
        check_volume_ranges(report, rx);
        check_rate_range(report, rx);
    }
}

void low_volume_alarm_loose(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.closed) continue;
        const Alarms& alarms = *rx.order->alarms;
        const auto loose = [&](const FieldBase& limit, std::optional<double> share, std::string alarm,
                               std::string usual) {
            if (!share || !below(*share, threshold::kVolumeAlarmLoosestShare)) return;
            report.at(limit, "usual is " + usual)
                .with("rx", rx.name)
                .with("alarm", std::move(alarm))
                .with("limit", limit)
                .with("usual", usual);
        };
        if (alarms.low_minute_volume && rx.usual_minute_volume)
            loose(alarms.low_minute_volume, calc::share_of_usual(*alarms.low_minute_volume, *rx.usual_minute_volume),
                  "low-minute-volume", shown_flow(*rx.usual_minute_volume));
        if (alarms.low_tidal_volume && rx.usual_volume)
            loose(alarms.low_tidal_volume, calc::share_of_usual(*alarms.low_tidal_volume, *rx.usual_volume),
                  "low-volume", shown_volume(*rx.usual_volume));
    }
}

}  // namespace check
}  // namespace ventfolio
