#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// American Academy of Sleep Medicine, titration task force, 2010 (from memory).
constexpr Pressure kBaselineLeastForPort = Pressure::of(4, unit::cmH2O);

bool passive(const DerivedPrescription& rx) { return rx.order->circuit->kind.is(CircuitKind::passive); }
bool active_single(const DerivedPrescription& rx) { return rx.order->circuit->kind.is(CircuitKind::active_single); }
bool vented_mask(const DerivedPrescription& rx) { return rx.mask && rx.order->interface->mask->vented.is(true); }
bool port_in_hose(const DerivedPrescription& rx) {
    const auto& port = rx.order->circuit->exhalation_port;
    return port.given() && port->place.is(PortPlace::in_hose);
}

bool has_valve_line(const Circuit& circuit) {
    for (const SmallLine& line : circuit.small_lines)
        if (line.name.is(SmallLineName::valve_drive)) return true;
    return false;
}

void foreign(Report& report, const DerivedPrescription& rx, Spot part, std::string name) {
    report.at(part, "not on this hose")
        .also(rx.order->circuit->kind)
        .with("rx", rx.name)
        .with("part", std::move(name))
        .with("circuit", "a hose of the kind " + written(rx.order->circuit->kind));
}

std::string missing_of_lines(const Circuit& circuit) {
    if (circuit.small_lines.size() != 2) return "one or more lines";
    for (const SmallLine& line : circuit.small_lines) {
        if (!line.name) return "a name";
        if (!line.bore) return "a bore";
        if (!line.port) return "a port";
    }
    return *circuit.small_lines[0].name == *circuit.small_lines[1].name ? "one of the two names" : std::string{};
}

}  // namespace

namespace check {

void exhaled_air_cannot_leave(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.closed || !passive(rx) || port_in_hose(rx) || vented_mask(rx)) continue;
        report.at(rx.order->circuit->exhalation_port, "no opening").also(rx.order->circuit->kind).with("rx", rx.name);
    }
}

void double_leak_in_circuit(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (passive(rx) && vented_mask(rx) && port_in_hose(rx))
            report.at(rx.order->circuit->exhalation_port->place, "one")
                .also(rx.order->interface->mask->vented, "two")
                .with("rx", rx.name);
}

void parts_of_different_circuits(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Circuit& circuit = *rx.order->circuit;
        if (active_single(rx) || circuit.kind.is(CircuitKind::dual)) {
            if (vented_mask(rx)) foreign(report, rx, rx.order->interface->mask->vented, "a vented mask");
            if (circuit.exhalation_port.given()) foreign(report, rx, circuit.exhalation_port, "an exhalation port");
        }
        if (passive(rx) || circuit.kind.is(CircuitKind::open_mouthpiece)) {
            if (circuit.exhalation_valve) foreign(report, rx, circuit.exhalation_valve, "an exhalation valve");
            if (has_valve_line(circuit)) foreign(report, rx, circuit.small_lines, "a valve-drive line");
        }
    }
}

void small_lines_incomplete(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!active_single(rx)) continue;
        const std::string what = missing_of_lines(*rx.order->circuit);
        if (!what.empty()) report.at(rx.order->circuit->small_lines).with("rx", rx.name).with("what", what);
    }
}

void small_lines_look_alike(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& lines = rx.order->circuit->small_lines;
        if (!active_single(rx) || lines.size() != 2 || !lines[0].bore || !lines[1].bore) continue;
        if (!same(*lines[0].bore, *lines[1].bore)) continue;
        report.at(lines[0].bore).also(lines[1].bore, "the same").with("rx", rx.name).with("bore", lines[0].bore);
    }
}

void spare_hose_not_built(const Household& home, Report& report) {
    const auto& built = home.profile.emergency_equipment->spare_hose_assembled;
    if (home.dependent && !built.is(true)) report.at(built);
}

void hose_unsuited_to_weight(const Household& home, Report& report) {
    const auto& weight = home.profile.person->weight;
    if (!weight) return;
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& bore = rx.order->circuit->bore;
        const bool wide =
            bore && at_or_above(*bore, threshold::kHoseWideBore) && below(*weight, threshold::kHoseWideWeightBelow);
        const bool narrow = bore && !home.child && at_or_below(*bore, threshold::kHoseNarrowAdult);
        if (wide || narrow)
            report.at(bore)
                .also(weight)
                .with("rx", rx.name)
                .with("part", "a hose of " + written(bore))
                .with("weight", weight);
        for (const Device& unit : home.profile.devices)
            if (Household::runs(unit, *rx.order) && unit.suited_from && below(*weight, *unit.suited_from))
                report.at(unit.suited_from)
                    .also(weight)
                    .with("rx", rx.name)
                    .with("part", written(unit.label))
                    .with("weight", weight);
    }
}

void passive_hose_without_baseline(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.closed && passive(rx) && rx.baseline && at_or_below(*rx.baseline, Pressure{}))
            report.at(rx.order->baseline_pressure, "nothing washes the hose")
                .also(rx.order->circuit->kind)
                .with("rx", rx.name);
}

void baseline_low_for_port(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.closed && passive(rx) && rx.baseline && above(*rx.baseline, Pressure{}) &&
            below(*rx.baseline, kBaselineLeastForPort))
            report.at(rx.order->baseline_pressure, "below 4 cmH2O")
                .also(rx.order->circuit->kind)
                .with("rx", rx.name)
                .with("baseline", rx.order->baseline_pressure);
}

}  // namespace check
}  // namespace ventfolio
