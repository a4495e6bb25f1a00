#include <fmt/format.h>
#include <algorithm>

#include "calc/oxygen_fraction.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Concentrators give 0.90 to 0.96 (from memory).
constexpr double kConcentratorMost = 0.90;
constexpr Pressure kHighMaskTop = Pressure::of(12, unit::cmH2O);  // Thys and others, 2002
constexpr Flow kSmallMaskFlow = Flow::of(4, unit::L_per_min);     // Thys and others, 2002
constexpr double kMaskFractionDoubtful = 0.30;                    // Thys and others, 2002
constexpr double kAirTravelFactor = 1.5;                          // air-travel battery rule (from memory)

double share(const Field<Fraction>& fraction) { return (*fraction).in(unit::percent) / 100; }
bool ordered(const DerivedPrescription& rx) {
    const auto& fraction = rx.order->oxygen->fraction;
    return rx.oxygen_flow || (fraction && above(share(fraction), calc::kRoomAir));
}
bool has_source(const Oxygen& oxygen, OxygenSourceKind kind) {
    return std::ranges::any_of(oxygen.sources, [&](const OxygenSource& source) { return source.kind.is(kind); });
}
bool stored_oxygen(const Oxygen& oxygen) {
    return has_source(oxygen, OxygenSourceKind::cylinder) || has_source(oxygen, OxygenSourceKind::liquid);
}
bool in_use(const Oxygen& oxygen) { return oxygen.use.given(); }

const Device* unit_with_inlet(const Household& home, const Prescription& order) {
    for (const Device& unit : home.profile.devices)
        if (Household::runs(unit, order) && unit.oxygen_inlet.is(true)) return &unit;
    return nullptr;
}

calc::Band<double> purity(const Oxygen& oxygen) {
    return has_source(oxygen, OxygenSourceKind::concentrator) ? calc::kConcentratorPurity : calc::kCylinderPurity;
}

std::optional<calc::Band<Fraction>> estimate(const DerivedPrescription& rx, const Oxygen& oxygen) {
    if (!rx.oxygen_flow || !rx.usual_minute_volume) return std::nullopt;
    Flow leak{};
    if (rx.order->expected->leak) leak = rx.order->expected->leak.middle();
    return calc::oxygen_fraction({.oxygen = *rx.oxygen_flow,
                                  .minute_volume = *rx.usual_minute_volume,
                                  .mean_leak = leak,
                                  .purity = purity(oxygen)});
}

void disagree(Report& report, const DerivedPrescription& rx, std::string low, std::string high) {
    const PrescriptionOxygen& oxygen = *rx.order->oxygen;
    report.at(oxygen.flow)
        .also(oxygen.fraction)
        .with("rx", rx.name)
        .with("flow", oxygen.flow)
        .with("fio2", oxygen.fraction)
        .with("low", std::move(low))
        .with("high", std::move(high));
}

std::string percent(Fraction fraction) { return shown_share(fraction.in(unit::percent) / 100); }

}  // namespace

namespace check {

void pulse_oxygen_on_ventilator(const Household& home, Report& report) {
    const auto& delivery = home.profile.oxygen->delivery;
    if (delivery.is(OxygenDelivery::pulse) || delivery.is(OxygenDelivery::conserving))
        report.at(delivery, "waits for a breath").with("delivery", delivery);
}

void oxygen_bypasses_machine_inlet(const Household& home, Report& report) {
    const auto& entry = home.profile.oxygen->entry;
    if (!entry || *entry == OxygenEntry::device_inlet) return;
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Device* unit = ordered(rx) ? unit_with_inlet(home, *rx.order) : nullptr;
        if (unit == nullptr) continue;
        report.at(entry, "not the inlet")
            .also(unit->oxygen_inlet)
            .with("rx", rx.name)
            .with("entry", "the " + written(entry))
            .with("unit", unit->label);
    }
}

void oxygen_entry_unconfirmed(const Household& home, Report& report) {
    const auto& entry = home.profile.oxygen->entry;
    if (!entry || *entry == OxygenEntry::device_inlet) return;
    for (const DerivedPrescription& rx : home.prescriptions)
        if (ordered(rx) && unit_with_inlet(home, *rx.order) == nullptr)
            report.at(entry).with("rx", rx.name).with("entry", "the " + written(entry));
}

void oxygen_targets_missing(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    if (!in_use(oxygen)) return;
    std::vector<std::string> missing;
    const std::pair<const FieldBase*, std::string> targets[] = {{&oxygen.goal_low, "low end of the goal"},
                                                                {&oxygen.goal_high, "high end of the goal"},
                                                                {&oxygen.call_below, "level to call at"},
                                                                {&oxygen.emergency_below, "emergency level"}};
    for (const auto& [field, name] : targets)
        if (!field->given()) missing.push_back(name);
    if (!missing.empty()) report.at(oxygen.use, "no levels to act on").with("missing", joined(missing, ", "));
}

void oxygen_limits_out_of_order(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    const Field<Fraction>& low = oxygen.goal_low;
    const Field<Fraction>& high = oxygen.goal_high;
    const Field<Fraction>& call = oxygen.call_below;
    const Field<Fraction>& emergency = oxygen.emergency_below;
    const bool wrong = (emergency && call && at_or_above(*emergency, *call)) || (call && low && above(*call, *low)) ||
                       (low && high && at_or_above(*low, *high)) ||
                       (emergency && low && !call && at_or_above(*emergency, *low));
    if (!wrong) return;
    report.at(oxygen.goal_low)
        .also(oxygen.goal_high)
        .also(oxygen.call_below)
        .also(oxygen.emergency_below)
        .with("emergency", oxygen.emergency_below)
        .with("call", oxygen.call_below)
        .with("goal", written(oxygen.goal_low) + " to " + written(oxygen.goal_high));
}

void oxygen_flow_above_source(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    std::optional<Flow> concentrator;
    for (const OxygenSource& source : oxygen.sources)
        if (source.kind.is(OxygenSourceKind::concentrator) && source.flow_most)
            concentrator = std::max(concentrator.value_or(Flow{}), *source.flow_most);
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.oxygen_flow) continue;
        const bool too_much = concentrator && !stored_oxygen(oxygen) && above(*rx.oxygen_flow, *concentrator);
        const bool above_hose = above(*rx.oxygen_flow, threshold::kOxygenIntoCircuitMost);
        if (!too_much && !above_hose) continue;
        report.at(rx.order->oxygen->flow)
            .also(oxygen.sources)
            .with("flow", rx.order->oxygen->flow)
            .with("source", too_much ? "the largest concentrator (" + shown_flow(*concentrator) + ")"
                                     : "a hose usually takes (" + shown_flow(threshold::kOxygenIntoCircuitMost) + ")");
    }
}

void oxygen_stops_with_power(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    if (in_use(oxygen) && !stored_oxygen(oxygen))
        report.at(oxygen.sources, "nothing that works without power").also(oxygen.use);
}

void oxygen_fraction_out_of_reach(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& fraction = rx.order->oxygen->fraction;
        if (!fraction) continue;
        const bool nothing_gives_it =
            above(share(fraction), calc::kRoomAir) && !rx.oxygen_flow && !oxygen.blender.is(true);
        const bool too_pure = above(share(fraction), kConcentratorMost) &&
                              has_source(oxygen, OxygenSourceKind::concentrator) && !stored_oxygen(oxygen);
        if (!nothing_gives_it && !too_pure) continue;
        report.at(fraction, "cannot be reached")
            .also(oxygen.sources)
            .with("rx", rx.name)
            .with("fio2", fraction)
            .with("source", nothing_gives_it ? "a machine without an oxygen flow or a blender" : "a concentrator");
    }
}

void oxygen_estimate_disagrees(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& fraction = rx.order->oxygen->fraction;
        const auto& kind = rx.order->circuit->kind;
        const auto band = estimate(rx, oxygen);
        const std::string low = band ? percent(band->low) : "not known";
        const std::string high = band ? percent(band->high) : "not known";
        const bool closed_loop = kind.is(CircuitKind::active_single) || kind.is(CircuitKind::dual);
        if (fraction && band &&
            (below(share(fraction), band->low.in(unit::percent) / 100 - threshold::kOxygenFractionDifference) ||
             above(share(fraction), band->high.in(unit::percent) / 100 + threshold::kOxygenFractionDifference)))
            disagree(report, rx, low, high);
        else if (closed_loop && rx.oxygen_flow && rx.usual_minute_volume &&
                 above(*rx.oxygen_flow, *rx.usual_minute_volume))
            disagree(report, rx, low, high);
        else if (rx.mask && rx.top && above(*rx.top, kHighMaskTop) && rx.oxygen_flow &&
                 below(*rx.oxygen_flow, kSmallMaskFlow) && fraction && !below(share(fraction), kMaskFractionDoubtful))
            disagree(report, rx, low, high);
    }
}

void oxygen_near_flame(const Household& home, Report& report) {
    const Hazards& hazards = *home.profile.home->hazards;
    const bool in_home = in_use(*home.profile.oxygen) || home.profile.oxygen->sources.size() > 0;
    if (!in_home) return;
    if (hazards.smoker.is(true)) report.at(hazards.smoker).with("hazard", "someone who smokes");
    if (!hazards.oxygen_rooms) return;
    for (const Flame& flame : hazards.flames) {
        if (!flame.room) continue;
        const bool same_room = std::ranges::any_of(*hazards.oxygen_rooms, [&](const std::string& room) {
            return lower_ascii(room) == lower_ascii(*flame.room);
        });
        if (same_room)
            report.at(flame.room, "oxygen is here too")
                .also(hazards.oxygen_rooms)
                .with("hazard", "a " + written(flame.what));
    }
}

void cylinder_size_unclear(const Household& home, Report& report) {
    for (const OxygenSource& source : home.profile.oxygen->sources) {
        if (!source.kind.is(OxygenSourceKind::cylinder) || source.contents) continue;
        if (source.size && source.country) continue;
        report.at(source.kind, "no contents in litres")
            .also(source.size)
            .with("size", source.size ? *source.size : "A cylinder without a size");
    }
}

void oxygen_gauge_above_full(const Household& home, Report& report) {
    for (const OxygenSource& source : home.profile.oxygen->sources) {
        if (!source.gauge || !source.full || !above(*source.gauge, *source.full * threshold::kCylinderGaugeOverFull))
            continue;
        report.at(source.gauge, "full is " + written(source.full))
            .also(source.full)
            .with("gauge", source.gauge)
            .with("full", source.full);
    }
}

void oxygen_runs_out_first(const Household& home, Report& report) {
    const OutageFacts& outage = home.outage;
    if (!outage.oxygen_needed || !outage.oxygen) return;
    const auto& backup = home.profile.oxygen->backup_hours;
    const bool before_battery = outage.power && below(*outage.oxygen, *outage.power);
    const bool below_plan = backup && below(*outage.oxygen, *backup * kAirTravelFactor);
    if (!before_battery && !below_plan) return;
    report.at(home.profile.oxygen->sources)
        .with("oxygen_time", shown_minutes(*outage.oxygen))
        .with("battery_time", outage.power ? shown_minutes(*outage.power) : std::string{"not timed"});
}

void oxygen_record_contradicts_itself(const Household& home, Report& report) {
    const Oxygen& oxygen = *home.profile.oxygen;
    const auto clash = [&](Spot at, std::string first, std::string second) {
        report.at(at).also(oxygen.use).with("first", std::move(first)).with("second", std::move(second));
    };
    for (const DerivedPrescription& rx : home.prescriptions)
        if (oxygen.use.is_none() && rx.oxygen_flow)
            clash(rx.order->oxygen->flow, "none is used",
                  fmt::format("{} has {}", rx.name, written(rx.order->oxygen->flow)));
    const bool nowhere = std::ranges::none_of(
        home.prescriptions, [](const auto& rx) { return rx.oxygen_flow || rx.order->oxygen->fraction; });
    if (home.outage.oxygen_needed && nowhere)
        clash(home.profile.prescriptions, "it is used " + written(oxygen.use),
              "no prescription has a flow or a fraction");
    const auto& for_bag = home.profile.emergency_equipment->oxygen_for_bag;
    if (for_bag.is(true) && oxygen.sources.empty())
        clash(for_bag, "it goes to the breathing bag", "there is no source");
}

}  // namespace check
}  // namespace ventfolio
