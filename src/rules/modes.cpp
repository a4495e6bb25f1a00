#include <vector>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

/// A setting of an order and its name in a sentence.
struct Setting {
    const FieldBase* field;
    std::string_view name;
};

Setting inspiratory_pressure(const Prescription& o) { return {&o.inspiratory_pressure, "an inspiratory pressure"}; }
Setting support_pressure(const Prescription& o) { return {&o.support_pressure, "a support pressure"}; }
Setting tidal_volume(const Prescription& o) { return {&o.tidal_volume, "a set volume"}; }

std::vector<Setting> timed_breath(const Prescription& order) {
    return {{&order.rate, "a rate"}, {&order.inspiratory_time, "an inspiratory time"}};
}

std::vector<Setting> volume_breath(const Prescription& order) {
    std::vector<Setting> needed{tidal_volume(order), {&order.rate, "a rate"}};
    if (!order.inspiratory_flow) needed.push_back({&order.inspiratory_time, "an inspiratory time or flow"});
    return needed;
}

std::vector<Setting> pressure_breath(const Prescription& order) {
    std::vector<Setting> needed = timed_breath(order);
    needed.push_back(inspiratory_pressure(order));
    return needed;
}

std::vector<Setting> volume_assured_breath(const Prescription& order) {
    std::vector<Setting> needed = timed_breath(order);
    const VolumeAssured& assured = *order.volume_assured;
    needed.push_back({&assured.pressure_least, "a lowest pressure"});
    needed.push_back({&assured.pressure_most, "a highest pressure"});
    if (!assured.target_minute_volume) needed.push_back({&assured.target_volume, "a target volume"});
    return needed;
}

void add_support(std::vector<Setting>& needed, const Prescription& order) {
    needed.push_back(support_pressure(order));
    needed.push_back({&order.cycle, "a cycle setting"});
}

std::vector<Setting> needed_breath(const Prescription& order) {
    std::vector<Setting> needed;
    switch (*order.mode) {
        case Mode::vc_ac:
        case Mode::mpv_vc:
            return volume_breath(order);
        case Mode::pc_ac:
        case Mode::mpv_pc:
            return pressure_breath(order);
        case Mode::va_ps:
        case Mode::va_ac:
            return volume_assured_breath(order);
        case Mode::simv_vc:
            needed = volume_breath(order);
            add_support(needed, order);
            break;
        case Mode::simv_pc:
            needed = pressure_breath(order);
            add_support(needed, order);
            break;
        case Mode::psv:
        case Mode::st_bilevel:
            if (*order.mode == Mode::st_bilevel)
                needed = timed_breath(order);
            else
                needed.push_back({&order.cycle, "a cycle setting"});
            if (!order.support_pressure) needed.push_back(inspiratory_pressure(order));
            break;
        case Mode::cpap:
            break;
    }
    return needed;
}

std::vector<Setting> needed_settings(const DerivedPrescription& rx) {
    const Prescription& order = *rx.order;
    std::vector<Setting> needed = needed_breath(order);
    needed.push_back({&order.baseline_pressure, "a baseline pressure"});
    if (*order.mode != Mode::cpap) needed.push_back({&order.trigger, "a trigger"});
    if (!rx.closed) return needed;
    const Alarms& alarms = *order.alarms;
    needed.push_back({&alarms.high_pressure, "a high-pressure alarm, or off"});
    needed.push_back({&alarms.low_pressure, "a low-pressure alarm, or off"});
    needed.push_back({&alarms.low_minute_volume, "a low-minute-volume alarm, or off"});
    needed.push_back({&alarms.no_breath, "a no-breath alarm, or off"});
    return needed;
}

std::vector<Setting> foreign_settings(const Prescription& order) {
    const Setting target{&order.volume_assured->target_volume, "a target volume"};
    const Setting target_minute{&order.volume_assured->target_minute_volume, "a target volume per minute"};
    const Setting least{&order.volume_assured->pressure_least, "a lowest pressure"};
    const Setting most{&order.volume_assured->pressure_most, "a highest pressure"};
    const Setting rate{&order.rate, "a rate"};
    switch (*order.mode) {
        case Mode::vc_ac:
        case Mode::mpv_vc:
            return {inspiratory_pressure(order), support_pressure(order), target, target_minute, least, most};
        case Mode::simv_vc:
            return {inspiratory_pressure(order), target, target_minute, least, most};
        case Mode::pc_ac:
        case Mode::mpv_pc:
        case Mode::simv_pc:
        case Mode::st_bilevel:
            return {tidal_volume(order), target, target_minute, least, most};
        case Mode::psv:
            return {rate, tidal_volume(order), target, target_minute, least, most};
        case Mode::cpap:
            return {rate,
                    tidal_volume(order),
                    inspiratory_pressure(order),
                    support_pressure(order),
                    target,
                    target_minute,
                    least,
                    most};
        case Mode::va_ps:
        case Mode::va_ac:
            return {inspiratory_pressure(order), support_pressure(order), tidal_volume(order)};
    }
    return {};
}

/// A rate of 0 is a way to say that there is none.
bool present(const Prescription& order, const Setting& setting) {
    if (setting.field == &order.rate) return order.rate && above(*order.rate, BreathRate{});
    return setting.field->given();
}

}  // namespace

namespace check {

void setting_missing_for_mode(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.order->mode) continue;
        for (const Setting& setting : needed_settings(rx)) {
            const bool trigger_off = setting.field == &rx.order->trigger && setting.field->is_off();
            if (!setting.field->missing() && !trigger_off) continue;
            report.at(*setting.field, "needed here")
                .also(rx.order->mode)
                .with("rx", rx.name)
                .with("mode", shown_mode(*rx.order))
                .with("setting", std::string{setting.name});
        }
    }
}

void setting_foreign_to_mode(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.order->mode) continue;
        for (const Setting& setting : foreign_settings(*rx.order)) {
            if (!present(*rx.order, setting)) continue;
            report.at(*setting.field, "not of this mode")
                .also(rx.order->mode)
                .with("rx", rx.name)
                .with("mode", shown_mode(*rx.order))
                .with("setting", std::string{setting.name})
                .with("value", *setting.field);
        }
    }
}

void continuous_pressure_for_dependent_person(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.order->mode.is(Mode::cpap) || !rx.dependent) continue;
        report.at(rx.order->mode, "gives no breaths")
            .with("rx", rx.name)
            .with("name", home.name())
            .with("state", rx.covers_asleep && rx.covers_awake ? "awake or asleep"
                           : rx.covers_asleep                  ? "asleep"
                                                               : "awake");
    }
}

void volume_mode_on_passive_hose(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& mode = rx.order->mode;
        if (!mode.is(Mode::vc_ac) && !mode.is(Mode::simv_vc)) continue;
        if (!rx.order->circuit->kind.is(CircuitKind::passive)) continue;
        report.at(mode, "a set volume").also(rx.order->circuit->kind, "loses part of it").with("rx", rx.name);
    }
}

}  // namespace check
}  // namespace ventfolio
