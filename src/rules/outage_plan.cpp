#include "rules/outage_plan.hpp"

#include <algorithm>
#include <array>

#include "calc/outage_timeline.hpp"
#include "rules/thresholds.hpp"
#include "units/print.hpp"

namespace ventfolio {
namespace {

constexpr int kStep = 15;  // min

/// With so much left the provider is called, and an ambulance. Common practice, no source.
constexpr auto kCallProviderAt = Duration::of(240, unit::min);
constexpr auto kCallEmergencyAt = Duration::of(60, unit::min);

/// More cylinders than this of one kind are one line of the plan.
constexpr int kMostLinesOfACylinder = 3;

PlanMinutes printed(Duration time) { return floor_minutes(time, kStep); }

/// The one that is easiest to change is used up first, the one that cannot fall out last.
int order_of_use(const BatteryFacts& facts) {
    if (facts.battery->kind.is(BatteryKind::external)) return 0;
    return facts.battery->kind.is(BatteryKind::detachable) ? 1 : 2;
}

void add_batteries(OutagePlan& plan, const Household& home) {
    std::vector<const BatteryFacts*> at_bed;
    for (const BatteryFacts& facts : home.outage.batteries)
        if (facts.at_bed) (facts.counted ? at_bed : plan.not_counted).push_back(&facts);
    std::ranges::stable_sort(at_bed, {}, [](const BatteryFacts* facts) { return order_of_use(*facts); });
    Duration sum;
    for (const BatteryFacts* facts : at_bed) {
        const Duration end = sum + *facts->counted;
        plan.batteries.push_back({facts, printed(sum), printed(end)});
        sum = end;
    }
}

void add_spares(OutagePlan& plan, const Household& home) {
    for (const Device& device : home.profile.devices) {
        if (!device.label || &device == home.unit_at_bed()) continue;
        Duration sum;
        for (const BatteryFacts& facts : home.outage.batteries)
            if (facts.battery->unit.is(*device.label) && facts.counted) sum = sum + *facts.counted;
        if (printed(sum) > 0) plan.spares.push_back({*device.label, printed(sum)});
    }
}

void add_oxygen(OutagePlan& plan, const Household& home) {
    const auto flow = highest_oxygen_flow(home);
    if (!flow) return;
    int number = 1;
    Duration sum;
    for (const OxygenSource& source : home.profile.oxygen->sources) {
        if (source.kind.is(OxygenSourceKind::concentrator)) continue;
        const auto each = time_of(source, *flow);
        if (!each) continue;
        const int count = source.number ? static_cast<int>((*source.number).in(unit::pieces)) : 1;
        const int lines = count <= kMostLinesOfACylinder ? count : 1;
        for (int line = 0; line < lines; ++line) {
            const int in_line = lines == 1 ? count : 1;
            const Duration end = sum + *each * static_cast<double>(in_line);
            plan.oxygen.push_back({.source = &source,
                                   .first = number,
                                   .last = number + in_line - 1,
                                   .each = printed(*each),
                                   .from = printed(sum),
                                   .to = printed(end)});
            number += in_line;
            sum = end;
        }
    }
}

void add_clock(OutagePlan& plan, const OutageFacts& facts, Duration travel) {
    const auto needed = facts.oxygen_needed ? facts.oxygen : std::nullopt;
    const auto timeline =
        calc::outage_timeline(*facts.power, needed, travel,
                              {.travel_times = threshold::kLeaveTravelFactor, .fixed = threshold::kLeaveReserve});
    if (!timeline) return;
    const Duration left = timeline->time_left;
    plan.oxygen_ends_first = timeline->oxygen_ends_first;
    plan.time_left = printed(left);
    if (kCallEmergencyAt < left) plan.call_emergency = printed(left - kCallEmergencyAt);
    // Less than a quarter of an hour to wait is none.
    if (!timeline->leave_by || printed(*timeline->leave_by) == 0) return;
    plan.leave_by = printed(*timeline->leave_by);
    if (printed(left / 2) < *plan.leave_by) plan.half = printed(left / 2);
    if (kCallProviderAt < left && printed(left - kCallProviderAt) < *plan.leave_by)
        plan.call_provider = printed(left - kCallProviderAt);
}

}  // namespace

OutagePlan outage_plan(const Household& home) {
    OutagePlan plan;
    add_batteries(plan, home);
    add_spares(plan, home);
    add_oxygen(plan, home);
    if (home.outage.power && home.profile.evacuation->travel_time)
        add_clock(plan, home.outage, *home.profile.evacuation->travel_time);
    return plan;
}

}  // namespace ventfolio
