#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

const SpeakingValve* allowed_valve(const Household& home) {
    if (home.neck_tube == nullptr || !home.neck_tube->speaking_valve->allowed.is(true)) return nullptr;
    return &*home.neck_tube->speaking_valve;
}

const Cap* allowed_cap(const Household& home) {
    if (home.neck_tube == nullptr || !home.neck_tube->cap->allowed.is(true)) return nullptr;
    return &*home.neck_tube->cap;
}

bool way_out_is_closed(const Household& home) {
    const auto& upper = home.profile.airway->upper;
    return upper.is(UpperAirway::laryngectomy) || upper.is(UpperAirway::blocked);
}

/// The order keeps the cuff up in some of the valve's hours. A valve without hours may be on at any time.
bool cuff_up_in_hours_of(const SpeakingValve& valve, const CuffOrder& order) {
    if (!order.up) return false;
    const WakingState hours = valve.state ? *valve.state : WakingState::both;
    switch (*order.up) {
        case CuffUp::day_and_night:
            return true;
        case CuffUp::night_only:
            return in_sleeping_hours(hours);
        case CuffUp::day_only:
            return in_waking_hours(hours);
        case CuffUp::never:
            return false;
    }
    return true;
}

bool exchanger_in_hours_of(const SpeakingValve& valve, const DerivedPrescription& rx) {
    if (!rx.neck_tube || !rx.order->humidity->moisture_exchanger.given()) return false;
    const WakingState hours = valve.state ? *valve.state : WakingState::both;
    return (in_waking_hours(hours) && rx.covers_awake) || (in_sleeping_hours(hours) && rx.covers_asleep);
}

}  // namespace

namespace check {

void speaking_valve_with_filled_cuff(const Household& home, Report& report) {
    const SpeakingValve* valve = allowed_valve(home);
    if (valve == nullptr || !home.neck_tube->cuff.given()) return;
    const NeckTube& tube = *home.neck_tube;
    const bool foam = *tube.cuff == Cuff::foam;
    const bool safe = !foam && valve->cuff_flat_first.is(true) && !cuff_up_in_hours_of(*valve, *tube.cuff_order);
    if (safe) return;
    report.at(valve->allowed, "a speaking valve")
        .also(tube.cuff)
        .also(tube.cuff_order->up)
        .with("cuff", foam ? "a foam cuff" : "a filled cuff")
        .with("name", home.name());
}

void speaking_valve_without_upper_airway(const Household& home, Report& report) {
    if (!way_out_is_closed(home)) return;
    const auto found = [&](const FieldBase& allowed, std::string device) {
        report.at(allowed, "allowed")
            .also(home.profile.airway->upper)
            .with("device", std::move(device))
            .with("name", home.name());
    };
    if (const SpeakingValve* valve = allowed_valve(home)) found(valve->allowed, "speaking valve");
    if (const Cap* cap = allowed_cap(home)) found(cap->allowed, "cap");
}

void speaking_valve_during_sleep(const Household& home, Report& report) {
    const SpeakingValve* valve = allowed_valve(home);
    if (valve != nullptr && valve->state && in_sleeping_hours(*valve->state))
        report.at(valve->state, "includes sleep").with("device", "A speaking valve");
    const Cap* cap = allowed_cap(home);
    if (cap != nullptr && cap->state && in_sleeping_hours(*cap->state))
        report.at(cap->state, "includes sleep").with("device", "A cap");
}

void speaking_valve_with_moisture_exchanger(const Household& home, Report& report) {
    const SpeakingValve* valve = allowed_valve(home);
    if (valve == nullptr) return;
    if (valve->in_line.is(true))
        for (const DerivedPrescription& rx : home.prescriptions)
            if (exchanger_in_hours_of(*valve, rx))
                report.at(rx.order->humidity->moisture_exchanger, "in the hose in the same hours").also(valve->in_line);
    const auto& away = home.profile.humidity_plan->off_ventilator;
    const bool away_exchanger = away.given() && away->kind.is(AwayHumidityKind::moisture_exchanger);
    if (away_exchanger && !valve->in_line.is(true) && !valve->exchanger_off.is(true))
        report.at(valve->exchanger_off, "not said to come off").also(away->kind);
}

void speaking_valve_without_own_orders(const Household& home, Report& report) {
    const SpeakingValve* valve = allowed_valve(home);
    if (valve != nullptr && valve->in_line.is(true) && !valve->own_settings)
        report.at(valve->in_line, "no orders for that time");
}

void mouth_route_contradiction(const Household& home, Report& report) {
    if (!way_out_is_closed(home)) return;
    const auto found = [&](const FieldBase& at, std::string device) {
        report.at(home.profile.airway->upper, "no way through the mouth").also(at).with("device", std::move(device));
    };
    if (const SpeakingValve* valve = allowed_valve(home)) found(valve->allowed, "a speaking valve");
    if (const Cap* cap = allowed_cap(home)) found(cap->allowed, "a cap");
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.mask || rx.mouthpiece)
            found(rx.order->interface->kind, rx.name + " with a " + written(rx.order->interface->kind));
}

}  // namespace check
}  // namespace ventfolio
