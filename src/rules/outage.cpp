#include "rules/outage.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "calc/battery_time.hpp"
#include "calc/cylinder_time.hpp"
#include "calc/outage_timeline.hpp"
#include "rules/compare.hpp"
#include "rules/household.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// The revision of a prescription with which a battery was timed is not the one in force.
std::optional<std::string> timed_with_other_settings(const Battery& battery, const Household& home) {
    for (const BatteryTest& test : battery.tested_at) {
        if (!test.prescription || !test.revision) continue;
        const DerivedPrescription* rx = home.prescription(*test.prescription);
        if (rx != nullptr && rx->order->changed_in && *rx->order->changed_in != *test.revision)
            return fmt::format("timed with {} at {}, now at {}", rx->name, test.revision->text(),
                               rx->order->changed_in->text());
    }
    return std::nullopt;
}

std::optional<std::string> too_old(const Battery& battery, Date on) {
    if (!battery.made_on) return std::nullopt;
    if (battery.stated_life && battery.stated_life->after(*battery.made_on) < on)
        return fmt::format("past its stated life of {}", battery.stated_life->text());
    const bool lead = battery.chemistry.is(BatteryChemistry::lead_acid);
    const int years = lead ? threshold::kBatteryOldFromLeadAcid : threshold::kBatteryOldFrom;
    if (battery.made_on->plus_months(12 * years) < on)
        return fmt::format("made {}, over {} years ago", battery.made_on->iso(), years);
    return std::nullopt;
}

double usual_derating(const Profile& profile) {
    const auto& share = profile.power->battery_derating;
    return share ? (*share).in(unit::percent) / 100 : threshold::kBatteryDerating;
}

BatteryFacts facts_of(const Battery& battery, const Household& home) {
    BatteryFacts facts;
    facts.battery = &battery;
    facts.derating = usual_derating(home.profile);
    auto reason = timed_with_other_settings(battery, home);
    if (!reason) reason = too_old(battery, home.on);
    if (reason) {
        facts.lowered = true;
        facts.lowered_because = *reason;
        const auto& start = home.profile.orders->effective_at;
        if (start) facts.retest_by = start->date.plus_days(threshold::kBatteryRetestWithin);
        facts.derating = std::min(facts.derating, threshold::kBatteryDeratingLowered);
    }
    const Device* bed = home.unit_at_bed();
    facts.at_bed = bed != nullptr && bed->label && battery.unit.is(*bed->label);
    facts.test_too_old = battery.tested_on && battery.tested_on->plus_months(threshold::kBatteryTestInterval) < home.on;
    if (battery.tested_time) {
        const calc::TestedBattery tested{*battery.tested_time, facts.derating};
        facts.counted = calc::battery_time({&tested, 1});
    }
    return facts;
}

std::optional<Duration> power_of(const std::vector<BatteryFacts>& batteries) {
    std::vector<calc::TestedBattery> tested;
    for (const BatteryFacts& facts : batteries)
        if (facts.at_bed && facts.counted) tested.push_back({*facts.battery->tested_time, facts.derating});
    return calc::battery_time(tested);
}

std::optional<calc::LitresPerPsi> factor_of(const OxygenSource& source) {
    const auto listed =
        source.size && source.country ? calc::cylinder_size(*source.country, *source.size) : std::nullopt;
    if (source.contents && source.full) return calc::litres_per_psi(*source.contents, *source.full);
    if (source.contents && listed) return calc::litres_per_psi(*source.contents, listed->full);
    return listed ? std::optional{listed->factor} : std::nullopt;
}

/// The gauge, or a full cylinder when nobody has read it.
std::optional<Pressure> gauge_of(const OxygenSource& source) {
    if (source.gauge) return *source.gauge;
    if (source.full) return *source.full;
    const auto listed =
        source.size && source.country ? calc::cylinder_size(*source.country, *source.size) : std::nullopt;
    return listed ? std::optional{listed->full} : std::nullopt;
}

std::optional<Duration> oxygen_of(const Household& home, Flow flow) {
    std::optional<Duration> sum;
    for (const OxygenSource& source : home.profile.oxygen->sources) {
        if (source.kind.is(OxygenSourceKind::concentrator)) continue;
        const auto one = time_of(source, flow);
        if (!one) continue;
        const double number = source.number ? (*source.number).in(unit::pieces) : 1;
        sum = sum.value_or(Duration{}) + *one * number;
    }
    return sum;
}

/// Power besides wall and batteries: a vehicle's socket and a generator outdoors, where they carry what hangs on them.
int further_sources(const Profile& profile) {
    const auto unsuitable = unsuitable_supplies(profile);
    const auto suits = [&](UnsuitableSupply::Kind kind) {
        return std::ranges::find(unsuitable, kind, &UnsuitableSupply::kind) == unsuitable.end();
    };
    const bool vehicle = profile.power->vehicle.given() && suits(UnsuitableSupply::Kind::vehicle);
    const bool generator = profile.power->generator.given() && suits(UnsuitableSupply::Kind::generator) &&
                           profile.power->generator->place.is(GeneratorPlace::outdoors);
    return (vehicle ? 1 : 0) + (generator ? 1 : 0);
}

}  // namespace

std::optional<Duration> time_of(const OxygenSource& source, Flow flow) {
    if (source.kind.is(OxygenSourceKind::liquid)) {
        if (!source.contents || !above(flow, Flow{})) return std::nullopt;
        return Duration::of((*source.contents).in(unit::L) / flow.in(unit::L_per_min), unit::min);
    }
    const auto factor = factor_of(source);
    const auto gauge = gauge_of(source);
    if (!factor || !gauge) return std::nullopt;
    const Pressure reserve = source.reserve ? *source.reserve : threshold::kCylinderReserve;
    return calc::cylinder_time({.gauge = *gauge, .residual = reserve, .factor = *factor, .flow = flow});
}

std::optional<Flow> highest_oxygen_flow(const Household& home) {
    std::optional<Flow> highest;
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.oxygen_flow && (!highest || *rx.oxygen_flow > *highest)) highest = rx.oxygen_flow;
    return highest;
}

OutageFacts outage_facts(const Household& home) {
    OutageFacts facts;
    for (const Battery& battery : home.profile.batteries) facts.batteries.push_back(facts_of(battery, home));
    facts.power = power_of(facts.batteries);
    const auto& use = home.profile.oxygen->use;
    facts.oxygen_needed = use.is(OxygenUse::continuous) || use.is(OxygenUse::night);
    if (const auto flow = highest_oxygen_flow(home)) facts.oxygen = oxygen_of(home, *flow);
    facts.sources_at_bed =
        static_cast<int>(std::ranges::count_if(facts.batteries, &BatteryFacts::at_bed)) + further_sources(home.profile);
    if (!facts.power) return facts;
    facts.time_left = *facts.power;
    const bool oxygen_first = facts.oxygen_needed && facts.oxygen && *facts.oxygen < *facts.power;
    if (oxygen_first) facts.time_left = *facts.oxygen;
    const auto& travel = home.profile.evacuation->travel_time;
    if (travel) facts.leave_reserve = *travel * threshold::kLeaveTravelFactor + threshold::kLeaveReserve;
    return facts;
}

}  // namespace ventfolio
