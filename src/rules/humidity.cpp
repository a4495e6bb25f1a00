#include "calc/dead_space.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

// AARC, Humidification During Invasive and Noninvasive Ventilation, 2012: 34 to 41 degrees at the Y.
constexpr Temperature kWarmestAtNeckTube = Temperature::of(41, unit::degC);
constexpr Temperature kCoolestAtNeckTube = Temperature::of(34, unit::degC);
/// The same guideline: not above this minute volume.
constexpr Flow kExchangerMinuteVolumeMost = Flow::of(10, unit::L_per_min);

bool heated(const DerivedPrescription& rx) { return rx.order->humidity->kind.is(HumidityKind::heated); }
bool built_in(const DerivedPrescription& rx) { return rx.order->humidity->kind.is(HumidityKind::built_in); }
bool exchanger(const DerivedPrescription& rx) {
    return rx.order->humidity->kind.is(HumidityKind::moisture_exchanger) ||
           rx.order->humidity->moisture_exchanger.given();
}

struct NamedLimb {
    const Group<Limb>* limb;
    std::string_view name;
};

std::vector<NamedLimb> limbs_of(const Circuit& circuit) {
    std::vector<NamedLimb> limbs{{&circuit.inspiratory_limb, "inspiratory"}};
    if (circuit.expiratory_limb.given()) limbs.push_back({&circuit.expiratory_limb, "expiratory"});
    return limbs;
}

bool cuff_leaks(const DerivedPrescription& rx, const NeckTube& tube) {
    if (tube.cuff.is_none()) return true;
    const auto& up = tube.cuff_order->up;
    return up.is(CuffUp::never) || (rx.covers_awake && up.is(CuffUp::night_only)) ||
           (rx.covers_asleep && up.is(CuffUp::day_only));
}

/// Why an exchanger does little here; empty when nothing speaks against it.
std::string why_poorly(const DerivedPrescription& rx, const Household& home) {
    const NormalSecretions& mucus = *home.profile.baseline->secretions;
    if (rx.mask) return "a mask";
    if (rx.neck_tube && home.neck_tube != nullptr && cuff_leaks(rx, *home.neck_tube)) return "a leak past the tube";
    const auto& minute_volume = rx.order->expected->minute_volume;
    if (minute_volume && above(minute_volume.high(), kExchangerMinuteVolumeMost))
        return "a minute volume above 10 L/min";
    if (mucus.thickness.is(Thickness::thick)) return "thick mucus";
    if (mucus.bloody.is(true)) return "bloody mucus";
    if (rx.order->nebulized_treatments.is(true)) return "nebulized treatments";
    return {};
}

std::optional<Volume> body_dead_space(const DerivedPrescription& rx, const Household& home) {
    if (!home.reference_weight || !home.age) return std::nullopt;
    if (rx.neck_tube) return calc::chest_dead_space(*home.reference_weight);
    return calc::airway_dead_space(home.age->years, *home.reference_weight);
}

/// Which number of the exchanger does not suit the breath, and why in words.
struct Unsuited {
    const FieldBase* number;
    std::string why;
};

std::optional<Unsuited> unsuited(const MoistureExchanger& part, const DerivedPrescription& rx, const Household& home) {
    if (!rx.usual_volume) return std::nullopt;
    if (part.dead_space && above(*part.dead_space / *rx.usual_volume, threshold::kExchangerShareOfVolume))
        return Unsuited{&part.dead_space, shown_share(*part.dead_space / *rx.usual_volume) + " of the breath"};
    if (part.breath_range &&
        (below(*rx.usual_volume, part.breath_range.low()) || above(*rx.usual_volume, part.breath_range.high())))
        return Unsuited{&part.breath_range, "made for " + written(part.breath_range)};
    if (!part.dead_space) return std::nullopt;
    const auto& weight = home.profile.person->weight;
    if (home.child && weight &&
        above((*part.dead_space).in(unit::mL) / (*weight).in(unit::kg), threshold::kExchangerPerWeightChild))
        return Unsuited{&part.dead_space, "above 2 mL/kg"};
    const auto body = body_dead_space(rx, home);
    if (body && above((*body + *part.dead_space) / *rx.usual_volume, threshold::kDeadSpaceShareOfVolume))
        return Unsuited{&part.dead_space, "with the body's own dead space above half of the breath"};
    return std::nullopt;
}

/// An exchanger that a prescription is breathed through, and what to call it.
struct UsedExchanger {
    const MoistureExchanger* part;
    std::string_view name;
};

std::vector<UsedExchanger> exchangers_of(const DerivedPrescription& rx, const Household& home) {
    std::vector<UsedExchanger> used;
    if (exchanger(rx)) used.push_back({&*rx.order->humidity->moisture_exchanger, "heat and moisture exchanger"});
    const AwayHumidity& swap = *home.profile.humidity_plan->outage_swap;
    if ((heated(rx) || built_in(rx)) && swap.kind.is(AwayHumidityKind::moisture_exchanger))
        used.push_back({&*swap.moisture_exchanger, "heat and moisture exchanger of the outage plan"});
    return used;
}

}  // namespace

namespace check {

void heated_humidifier_with_moisture_exchanger(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Humidity& humidity = *rx.order->humidity;
        if ((!heated(rx) && !built_in(rx)) || !humidity.moisture_exchanger.given()) continue;
        report.at(humidity.moisture_exchanger, "soaks").also(humidity.kind).with("rx", rx.name);
    }
}

void heated_wire_with_water_trap(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        for (const NamedLimb& named : limbs_of(*rx.order->circuit)) {
            const Limb& limb = **named.limb;
            if (!limb.heating.is(LimbHeating::heated_wire) || !limb.water_trap.is(true)) continue;
            report.at(limb.water_trap, "a trap")
                .also(limb.heating)
                .with("rx", rx.name)
                .with("limb", std::string{named.name});
        }
}

void plain_hose_without_water_trap(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!heated(rx)) continue;
        for (const NamedLimb& named : limbs_of(*rx.order->circuit)) {
            const Limb& limb = **named.limb;
            if (!limb.heating.is(LimbHeating::unheated) || !limb.water_trap.is(false)) continue;
            report.at(limb.water_trap, "no trap")
                .also(limb.heating)
                .also(rx.order->humidity->kind)
                .with("rx", rx.name)
                .with("limb", std::string{named.name});
        }
    }
}

void built_in_humidifier_plain_hose(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& heating = rx.order->circuit->inspiratory_limb->heating;
        if (rx.mask && built_in(rx) && heating.is(LimbHeating::unheated)) report.at(heating).with("rx", rx.name);
    }
}

void neck_tube_without_humidity(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.neck_tube && rx.order->humidity->kind.is_none()) report.at(rx.order->humidity->kind).with("rx", rx.name);
}

void moisture_exchanger_wrong_side(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& position = rx.order->humidity->moisture_exchanger->position;
        if (rx.order->circuit->kind.is(CircuitKind::passive) && position.is(ExchangerPosition::machine_side_of_port))
            report.at(position, "the wrong side").also(rx.order->circuit->exhalation_port).with("rx", rx.name);
    }
}

void moisture_exchanger_too_big(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        for (const UsedExchanger& used : exchangers_of(rx, home)) {
            const auto found = unsuited(*used.part, rx, home);
            if (!found) continue;
            const auto& dead_space = used.part->dead_space;
            report.at(*found->number, found->why)
                .with("rx", rx.name)
                .with("exchanger", std::string{used.name})
                .with("dead_space", dead_space ? written(dead_space) : std::string{"an unknown part"})
                .with("volume", shown_volume(*rx.usual_volume))
                .with("reason", found->why);
        }
}

void moisture_exchanger_works_poorly(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const std::string reason = exchanger(rx) ? why_poorly(rx, home) : std::string{};
        if (!reason.empty()) report.at(rx.order->humidity->kind).with("rx", rx.name).with("reason", reason);
    }
}

void moisture_exchanger_against_record(const Household& home, Report& report) {
    const HumidityPlan& plan = *home.profile.humidity_plan;
    if (!plan.exchanger_ruled_out.is(true)) return;
    const auto used = [&](const FieldBase& at, std::string where) {
        report.at(at, "used here")
            .also(plan.exchanger_ruled_out)
            .with("reason", plan.exchanger_ruled_out_reason)
            .with("where", std::move(where));
    };
    for (const DerivedPrescription& rx : home.prescriptions)
        if (exchanger(rx)) used(rx.order->humidity->kind, rx.name);
    if (plan.outage_swap->kind.is(AwayHumidityKind::moisture_exchanger))
        used(plan.outage_swap->kind, "the outage plan");
}

void tap_water_in_humidifier(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.order->humidity->water.is(Water::tap)) report.at(rx.order->humidity->water, "tap water");
}

void humidifier_temperature_unusual(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& temperature = rx.order->humidity->temperature;
        if (!rx.neck_tube || !heated(rx) || !temperature) continue;
        if (!above(*temperature, kWarmestAtNeckTube) && !below(*temperature, kCoolestAtNeckTube)) continue;
        report.at(temperature, "outside 34 to 41 °C").with("rx", rx.name).with("temperature", temperature);
    }
}

void filter_on_wet_side(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!heated(rx)) continue;
        for (const Filter& filter : rx.order->circuit->filters)
            if (filter.position.is(FilterPosition::person_side) && !filter.made_for_wet_use.is(true))
                report.at(filter.position, "the wet side").also(rx.order->humidity->kind).with("rx", rx.name);
    }
}

}  // namespace check
}  // namespace ventfolio
