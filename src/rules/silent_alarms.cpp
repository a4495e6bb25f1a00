#include <algorithm>
#include <string>
#include <vector>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

/// Off, or an alarm that this order does not have at all.
bool silent(const FieldBase& alarm) { return !alarm.given(); }

bool blocked_tube_silent(const DerivedPrescription& rx) {
    const Alarms& alarms = *rx.order->alarms;
    return rx.closed && (rx.pressure_mode || rx.volume_assured) && silent(alarms.low_tidal_volume) &&
           silent(alarms.low_minute_volume);
}

bool hose_off_silent(const DerivedPrescription& rx) {
    const Alarms& alarms = *rx.order->alarms;
    if (!rx.closed) return false;
    const bool passive = rx.order->circuit->kind.is(CircuitKind::passive);
    if (passive && silent(alarms.disconnect) && silent(alarms.high_leak) && silent(alarms.low_minute_volume))
        return true;
    return silent(alarms.low_pressure) && silent(alarms.low_tidal_volume) && silent(alarms.low_minute_volume) &&
           silent(alarms.disconnect);
}

bool off_by_order(const Prescription& order, AlarmName alarm) {
    return std::ranges::any_of(order.alarms_off_by_order, [&](const AlarmOffByOrder& entry) {
        return entry.alarm.is(alarm) && entry.by && entry.date;
    });
}

struct KeyAlarm {
    const FieldBase* field;
    AlarmName name;
    std::string_view words;
};

}  // namespace

namespace check {

void blocked_tube_would_be_silent(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.heavy_user || !blocked_tube_silent(rx)) continue;
        report.at(rx.order->alarms->low_minute_volume)
            .also(rx.order->alarms->low_tidal_volume)
            .also(rx.order->mode)
            .with("rx", rx.name)
            .with("mode", shown_mode(*rx.order));
    }
}

void hose_off_would_be_silent(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.heavy_user || !hose_off_silent(rx)) continue;
        report.at(rx.order->alarms->disconnect)
            .also(rx.order->alarms->low_minute_volume)
            .also(rx.order->circuit->kind)
            .with("rx", rx.name);
    }
}

void main_alarms_off(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (rx.heavy_user || (!blocked_tube_silent(rx) && !hose_off_silent(rx))) continue;
        report.at(rx.order->alarms->low_minute_volume).also(rx.order->alarms->disconnect).with("rx", rx.name);
    }
}

void key_alarm_switched_off(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.closed || !rx.dependent) continue;
        const Alarms& alarms = *rx.order->alarms;
        const KeyAlarm keys[] = {{&alarms.high_pressure, AlarmName::high_pressure, "high-pressure"},
                                 {&alarms.low_pressure, AlarmName::low_pressure, "low-pressure"},
                                 {&alarms.no_breath, AlarmName::no_breath, "no-breath"}};
        for (const KeyAlarm& key : keys) {
            if (!key.field->is_off() || off_by_order(*rx.order, key.name)) continue;
            if (key.name == AlarmName::low_pressure && hose_off_silent(rx)) continue;
            report.at(*key.field, "off").with("rx", rx.name).with("alarm", std::string{key.words});
        }
    }
}

}  // namespace check
}  // namespace ventfolio
