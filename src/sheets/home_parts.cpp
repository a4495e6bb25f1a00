#include "sheets/home_parts.hpp"

#include <algorithm>

#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

template <class Test>
bool every_order(const Household& home, Test test) {
    return !home.prescriptions.empty() &&
           std::ranges::all_of(home.prescriptions, [&](const DerivedPrescription& one) { return test(*one.order); });
}

}  // namespace

bool has_exchanger(const Household& home) {
    const bool on_ventilator = std::ranges::any_of(home.prescriptions, [](const DerivedPrescription& one) {
        return one.order->humidity.given() && one.order->humidity->moisture_exchanger.given();
    });
    if (!home.profile.humidity_plan.given()) return on_ventilator;
    const HumidityPlan& plan = *home.profile.humidity_plan;
    const auto is_exchanger = [](const Group<AwayHumidity>& away) {
        return away.given() && away->kind.is(AwayHumidityKind::moisture_exchanger);
    };
    return on_ventilator || is_exchanger(plan.outage_swap) || is_exchanger(plan.off_ventilator);
}

bool opening_is_fresh(const Household& home) {
    if (home.neck_tube == nullptr) return false;
    if (!home.neck_tube->opening_healed.or_else(false)) return true;
    return home.neck_tube->opening_made_on &&
           days_between(*home.neck_tube->opening_made_on, home.on) < threshold::kOpeningFreshBelow;
}

bool lacks_neck_tube(const Household& home) { return home.neck_tube == nullptr; }

bool lacks_cuff(const Household& home) { return home.neck_tube == nullptr || home.neck_tube->cuff.is_none(); }

bool lacks_inner_tube(const Household& home) {
    return home.neck_tube == nullptr || home.neck_tube->inner_tube.is_none();
}

bool lacks_oxygen(const Household& home) { return home.profile.oxygen.is_none() || home.profile.oxygen->use.is_none(); }

bool lacks_exhalation_port(const Household& home) {
    return every_order(home, [](const Prescription& order) {
        if (!order.circuit.given() || !order.circuit->kind.given()) return false;
        const bool vented = order.interface->mask.given() && order.interface->mask->vented.or_else(false);
        return !order.circuit->kind.is(CircuitKind::passive) && !order.circuit->exhalation_port.given() && !vented;
    });
}

bool lacks_small_lines(const Household& home) {
    return every_order(home, [](const Prescription& order) {
        return order.circuit.given() && order.circuit->kind.given() &&
               !order.circuit->kind.is(CircuitKind::active_single) && order.circuit->small_lines.empty();
    });
}

bool lacks_exchanger(const Household& home) {
    const bool recorded = every_order(home, [](const Prescription& order) {
        return order.humidity.is_none() || order.humidity->kind.given() || order.humidity->kind.is_none();
    });
    return recorded && !has_exchanger(home);
}

bool lacks_second_ventilator(const Household& home) {
    return home.profile.devices.size() == 1 && !home.profile.devices.begin()->is_backup.or_else(false);
}

}  // namespace ventfolio
