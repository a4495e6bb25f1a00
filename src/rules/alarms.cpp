#include <cmath>

#include "calc/alarm_margins.hpp"
#include "calc/vital_sign_band.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

bool high_below_peak(const DerivedPrescription& rx) {
    const auto& alarm = rx.order->alarms->high_pressure;
    return alarm && rx.top && at_or_below(*alarm, *rx.top);
}

bool low_below_baseline(const DerivedPrescription& rx) {
    const auto& alarm = rx.order->alarms->low_pressure;
    return rx.closed && rx.dependent && alarm && rx.baseline && at_or_below(*alarm, *rx.baseline);
}

std::string direction_of_margin(const DerivedPrescription& rx, Pressure margin) {
    if (below(margin, threshold::kHighPressureMarginLeast))
        return "only " + shown_pressure(margin, *rx.order) + " above it";
    return shown_pressure(margin, *rx.order) + " above it";
}

}  // namespace

namespace check {

void high_pressure_alarm_below_peak(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!high_below_peak(rx)) continue;
        const std::string top = shown_pressure(*rx.top, *rx.order);
        report.at(rx.order->alarms->high_pressure, "not above " + top)
            .with("rx", rx.name)
            .with("alarm", rx.order->alarms->high_pressure)
            .with("top", top);
    }
}

void high_pressure_alarm_margin_unusual(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& alarm = rx.order->alarms->high_pressure;
        if (!alarm || !rx.top || high_below_peak(rx)) continue;
        const auto margin = calc::high_pressure_margin(*alarm, *rx.top);
        const bool unusual = margin && (below(*margin, threshold::kHighPressureMarginLeast) ||
                                        above(*margin, threshold::kHighPressureMarginMost));
        if (!unusual && !above(*alarm, threshold::kHighPressureAlarmHighest)) continue;
        report.at(alarm, margin ? direction_of_margin(rx, *margin) : "very high")
            .with("rx", rx.name)
            .with("alarm", alarm)
            .with("margin", shown_pressure(*alarm - *rx.top, *rx.order))
            .with("top", shown_pressure(*rx.top, *rx.order));
    }
}

void low_pressure_alarm_above_peak(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& alarm = rx.order->alarms->low_pressure;
        if (!alarm || !rx.bottom || !at_or_above(*alarm, *rx.bottom)) continue;
        report.at(alarm, "not below the lowest breath")
            .with("rx", rx.name)
            .with("alarm", alarm)
            .with("bottom", shown_pressure(*rx.bottom, *rx.order));
    }
}

void low_pressure_alarm_below_baseline(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!low_below_baseline(rx)) continue;
        report.at(rx.order->alarms->low_pressure, "not above the baseline")
            .also(rx.order->baseline_pressure)
            .with("rx", rx.name)
            .with("alarm", rx.order->alarms->low_pressure)
            .with("baseline", rx.order->baseline_pressure);
    }
}

void low_pressure_alarm_near_baseline(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& alarm = rx.order->alarms->low_pressure;
        if (!rx.closed || !alarm || !rx.baseline || low_below_baseline(rx)) continue;
        if (above(*alarm, *rx.baseline + threshold::kLowPressureAboveBaseline)) continue;
        report.at(alarm, "hardly above the baseline")
            .also(rx.order->baseline_pressure)
            .with("rx", rx.name)
            .with("alarm", alarm)
            .with("baseline", rx.order->baseline_pressure);
    }
}

namespace {

bool watched_by_oximeter(const DerivedPrescription& rx, const Household& home) {
    const auto& use = home.profile.monitors->oximeter->use;
    if (!home.profile.monitors->oximeter.given() || !use) return false;
    switch (*use) {
        case OximeterUse::continuous:
        case OximeterUse::continuous_on_ventilator:
            return true;
        case OximeterUse::continuous_asleep:
            return !rx.covers_awake;
        case OximeterUse::spot_checks:
            return false;
    }
    return false;
}

void small_tube(const DerivedPrescription& rx, const NeckTube& tube, Report& report, const FieldBase& cause,
                std::string gap) {
    report.at(cause, "may stay quiet when the tube is out")
        .also(tube.inner_diameter)
        .with("rx", rx.name)
        .with("id_mm", tube.inner_diameter)
        .with("gap", std::move(gap));
}

}  // namespace

void small_tube_may_slip_silently(const Household& home, Report& report) {
    if (home.neck_tube == nullptr || !home.neck_tube->inner_diameter) return;
    const NeckTube& tube = *home.neck_tube;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.neck_tube) continue;
        const auto& alarm = rx.order->alarms->low_pressure;
        const bool far = rx.top && alarm && above(*rx.top - *alarm, calc::kNearAlarm);
        const bool far_or_off = alarm.is_off() || far;
        if (below(*tube.inner_diameter, calc::kSilentTubeFarAlarm) && far_or_off)
            small_tube(rx, tube, report, alarm,
                       far ? shown_pressure(*rx.top - *alarm, *rx.order) + " below the peak" : std::string{"off"});
        else if (below(*tube.inner_diameter, calc::kSilentTubeNearAlarm) && !watched_by_oximeter(rx, home))
            small_tube(rx, tube, report, alarm, "set as it is and no continuous oximeter");
    }
}

void no_breath_alarm_too_short(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& alarm = rx.order->alarms->no_breath;
        if (!alarm || !rx.cycle || !at_or_below(*alarm, *rx.cycle)) continue;
        report.at(alarm, "shorter than one breath")
            .also(rx.order->rate, "one breath in " + shown_seconds(*rx.cycle))
            .with("rx", rx.name)
            .with("alarm", alarm)
            .with("cycle", shown_seconds(*rx.cycle));
    }
}

void no_breath_alarm_long(const Household& home, Report& report) {
    // A respiratory care textbook: 20 s or less.
    constexpr Duration kLongestForChild = Duration::of(20, unit::s);
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& alarm = rx.order->alarms->no_breath;
        const Duration most = home.child ? kLongestForChild : threshold::kNoBreathLongestDependentAdult;
        if (!rx.closed || !rx.dependent || !alarm || !above(*alarm, most)) continue;
        report.at(alarm, "long").with("rx", rx.name).with("alarm", alarm);
    }
}

void alarm_not_heard_at_night(const Household& home, Report& report) {
    const auto& place = home.profile.night_cover->place;
    if (!place || home.profile.remote_alarm.given()) return;
    const Device* unit = home.unit_at_bed();
    if (unit == nullptr || !unit->alarm_heard) return;
    const bool heard = *place == NightPlace::same_room || *unit->alarm_heard == AlarmReach::whole_home ||
                       (*place == NightPlace::same_floor && *unit->alarm_heard == AlarmReach::same_floor);
    if (!heard) report.at(unit->alarm_heard, "heard so far").also(place).with("place", place);
}

void remote_alarm_untested(const Household& home, Report& report) {
    if (!home.profile.remote_alarm.given()) return;
    const RemoteAlarm& alarm = *home.profile.remote_alarm;
    const bool fresh = alarm.tested_on && alarm.tested_on->plus_months(threshold::kRemoteAlarmTestInterval) >= home.on;
    if (!fresh)
        report.at(alarm.tested_on)
            .with("where", alarm.where)
            .with("date", alarm.tested_on ? alarm.tested_on->iso() : std::string{"never"});
}

void volume_alarm_cannot_measure(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.order->circuit->kind.is(CircuitKind::active_single)) continue;
        const Alarms& alarms = *rx.order->alarms;
        const auto check_one = [&](const FieldBase& alarm, const Field<MeasuredBreath>& measured, std::string name) {
            if (alarm.given() && measured.is(MeasuredBreath::expired))
                report.at(measured, "this hose has no sensor for it")
                    .also(rx.order->circuit->kind)
                    .with("rx", rx.name)
                    .with("alarm", std::move(name));
        };
        check_one(alarms.low_tidal_volume, alarms.low_tidal_volume_measured, "low-volume");
        check_one(alarms.low_minute_volume, alarms.low_minute_volume_measured, "low-minute-volume");
    }
}

void oximeter_alarm_limit_unusual(const Household& home, Report& report) {
    if (!home.profile.monitors->oximeter.given()) return;
    const Oximeter& oximeter = *home.profile.monitors->oximeter;
    const auto report_limit = [&](const FieldBase& field, std::string limit, std::string label) {
        report.at(field, std::move(label)).with("limit", std::move(limit)).with("value", field);
    };
    const auto& goal = home.profile.oxygen->goal_low;
    if (oximeter.low_alarm) {
        if (below((*oximeter.low_alarm).in(unit::percent) / 100, threshold::kOximeterLowAlarmLeast))
            report_limit(oximeter.low_alarm, "low-oxygen", "too late");
        else if (goal && above(*oximeter.low_alarm, *goal))
            report_limit(oximeter.low_alarm, "low-oxygen", "above the goal of " + written(goal));
    }
    const auto band = home.child && home.age ? calc::vital_sign_band(*home.age) : std::nullopt;
    if (!band) return;
    if (oximeter.low_pulse_alarm && above(*oximeter.low_pulse_alarm, band->pulse_asleep.low))
        report_limit(oximeter.low_pulse_alarm, "low-pulse", "inside the usual pulse of the age");
    if (oximeter.high_pulse_alarm && below(*oximeter.high_pulse_alarm, band->pulse_awake.high))
        report_limit(oximeter.high_pulse_alarm, "high-pulse", "inside the usual pulse of the age");
}

}  // namespace check
}  // namespace ventfolio
