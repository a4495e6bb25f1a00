#include "sheets/alarm_data.hpp"

#include <algorithm>

#include "calc/safe_minutes.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kCharts = wall | folder | crew | wallet;

template <class Test>
bool any_order(const Household& home, Test test) {
    return std::ranges::any_of(home.prescriptions,
                               [&](const DerivedPrescription& one) { return test(*one.order, one); });
}

bool has_circuit(const Household& home, CircuitKind kind) {
    return any_order(home, [&](const Prescription& order, const auto&) {
        return order.circuit.given() && order.circuit->kind.is(kind);
    });
}

constexpr int kHours = 1000;  // of minutes: no limit that a chart need tell

/// The minutes that paper promises without the machine; 0 for none, and where it is not recorded.
int minutes_alone(const Group<FreeBreathing>& free) {
    if (free.given() && free->kind.is(FreeTimeKind::hours)) return kHours;
    if (!free.given() || !free->kind.is(FreeTimeKind::minutes) || !free->time) return 0;
    return calc::safe_free_minutes(*free->time).value_or(0);
}

/// An alarm may come awake or asleep: the charts plan for the worse of the two.
void add_alone(TemplateData::Object& data, const Household& home, const Printer& printer) {
    const int minutes = std::min(minutes_alone(home.profile.dependence->unaided_awake),
                                 minutes_alone(home.profile.dependence->unaided_asleep));
    const bool some = minutes > 0 && minutes < kHours;
    data["alone_none"] = minutes == 0;
    data["alone_minutes"] = some;
    data["alone_hours"] = minutes == kHours;
    data["alone_time"] =
        some ? TemplateData{calculated("alone_time", kCharts, printer.number(Decimal::whole(minutes), "min"))}
             : TemplateData{};
}

void add_circuits(TemplateData::Object& data, const Household& home) {
    data["single_hose_with_port"] = has_circuit(home, CircuitKind::passive);
    data["two_hoses"] = has_circuit(home, CircuitKind::dual);
    data["open_mouthpiece"] = has_circuit(home, CircuitKind::open_mouthpiece);
    data["small_lines"] = any_order(home, [](const Prescription& order, const auto&) {
        return order.circuit.given() &&
               (order.circuit->kind.is(CircuitKind::active_single) || !order.circuit->small_lines.empty());
    });
    const auto port = [&](PortPlace place) {
        return any_order(home, [&](const Prescription& order, const auto&) {
            return order.circuit.given() && order.circuit->exhalation_port.given() &&
                   order.circuit->exhalation_port->place.is(place);
        });
    };
    data["hose_port"] = port(PortPlace::in_hose);
    data["mask_port"] = port(PortPlace::in_mask);
    data["water_traps"] = any_order(home, [](const Prescription& order, const auto&) {
        if (!order.circuit.given()) return false;
        const auto trap = [](const Group<Limb>& limb) { return limb.given() && limb->water_trap.or_else(false); };
        return trap(order.circuit->inspiratory_limb) || trap(order.circuit->expiratory_limb);
    });
}

void add_modes(TemplateData::Object& data, const Household& home) {
    data["pressure_modes"] = any_order(home, [](const Prescription&, const DerivedPrescription& one) {
        return one.pressure_mode || one.volume_assured;
    });
    data["volume_modes"] =
        any_order(home, [](const Prescription&, const DerivedPrescription& one) { return one.volume_mode; });
}

void add_humidity(TemplateData::Object& data, const Household& home) {
    data["heats_water"] = any_order(home, [](const Prescription& order, const auto&) {
        return order.humidity.given() &&
               (order.humidity->kind.is(HumidityKind::heated) || order.humidity->kind.is(HumidityKind::built_in));
    });
    data["wet_exchanger"] = any_order(home, [](const Prescription& order, const auto&) {
        return order.humidity.given() && order.humidity->moisture_exchanger.given();
    });
}

void add_interface(TemplateData::Object& data, const Household& home) {
    data["covers_mouth"] = any_order(home, [](const Prescription& order, const auto&) {
        return order.interface.given() && order.interface->mask.given() &&
               (order.interface->mask->type.is(MaskType::oronasal) ||
                order.interface->mask->type.is(MaskType::total_face));
    });
    data["mask_or_mouthpiece"] = home.uses(InterfaceKind::mask) || home.uses(InterfaceKind::mouthpiece);
    const NeckTube* tube = home.neck_tube;
    data["air_cuff"] = tube != nullptr && tube->cuff.given() && !tube->cuff.is(Cuff::foam);
    data["valve_in_line"] = tube != nullptr && tube->speaking_valve.given() &&
                            tube->speaking_valve->allowed.or_else(false) &&
                            tube->speaking_valve->in_line.or_else(false);
}

}  // namespace

void add_alarm_data(TemplateData::Object& data, const Household& home, const Printer& printer) {
    add_alone(data, home, printer);
    add_circuits(data, home);
    add_modes(data, home);
    add_humidity(data, home);
    add_interface(data, home);
    const Profile& profile = home.profile;
    data["can_suction_mouth"] = profile.suction.given() && profile.suction->use.given();
    data["has_oximeter"] = profile.monitors.given() && profile.monitors->oximeter.given();
    data["has_cough_device"] = profile.cough_device.given();
    data["has_spare_hose"] =
        profile.emergency_equipment.given() && profile.emergency_equipment->spare_hose_assembled.or_else(false);
    data["has_concentrator"] =
        profile.oxygen.given() && std::ranges::any_of(profile.oxygen->sources, [](const OxygenSource& source) {
            return source.kind.is(OxygenSourceKind::concentrator);
        });
    data["fed_by_tube"] =
        profile.feeding.given() && profile.feeding->route.given() && !profile.feeding->route.is(FeedingRoute::mouth);
}

}  // namespace ventfolio
