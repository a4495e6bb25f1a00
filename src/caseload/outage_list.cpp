#include "caseload/outage_list.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "calc/safe_minutes.hpp"
#include "units/print.hpp"

namespace ventfolio {
namespace {

constexpr int kStep = 15;  // min, as the outage plan rounds
constexpr std::size_t kMostCalls = 2;

std::optional<PlanMinutes> printed(const std::optional<Duration>& time) {
    return time ? std::optional{floor_minutes(*time, kStep)} : std::nullopt;
}

/// Somebody wrote down that no battery serves the unit at the bed: it stops at once.
bool stops_at_once(const Household& home, const OutagePlan& plan) {
    const auto& batteries = home.profile.batteries;
    if (batteries.is_none()) return true;
    return batteries.given() && home.unit_at_bed() != nullptr && plan.batteries.empty() && plan.not_counted.empty();
}

/// Oxygen flows on an order, and nobody wrote down when it is used.
bool may_need_oxygen(const Household& home) {
    return home.profile.oxygen->use.missing() && highest_oxygen_flow(home).has_value();
}

UnaidedTime unaided_time(const Group<FreeBreathing>& free) {
    if (!free.given()) return {};
    if (free->kind.is(FreeTimeKind::hours)) return {.hours = true};
    if (!free->kind.is(FreeTimeKind::minutes) || !free->time) return {};
    return {.minutes = calc::safe_free_minutes(*free->time).value_or(0)};
}

std::string or_empty(const Field<std::string>& text) { return text.or_else(""); }

void add_call(std::vector<HomeCall>& calls, HomeCall::Role role, const Field<std::string>& name,
              const Field<std::string>& phone) {
    if (!phone || calls.size() == kMostCalls) return;
    if (std::ranges::find(calls, *phone, &HomeCall::phone) != calls.end()) return;
    calls.push_back({role, or_empty(name), *phone});
}

std::vector<HomeCall> calls_of(const Profile& profile) {
    std::vector<HomeCall> calls;
    const auto& contacts = *profile.contacts;
    add_call(calls, HomeCall::Role::family, contacts.family->name, contacts.family->phone);
    const UtilityCompany& company = *profile.utility_company;
    add_call(calls, HomeCall::Role::contact, company.contact_name, company.contact_phone);
    for (const Caregiver& person : profile.caregivers)
        add_call(calls, HomeCall::Role::caregiver, person.name, person.phone);
    add_call(calls, HomeCall::Role::neighbor, contacts.nearby_helper->name, contacts.nearby_helper->phone);
    return calls;
}

HomeInOutage known_of(std::string file, const Profile& profile) {
    HomeInOutage home;
    home.file = std::move(file);
    home.record_number = or_empty(profile.record_number);
    home.person = or_empty(profile.person->legal_name);
    home.calls = calls_of(profile);
    return home;
}

int minutes_unaided(const HomeInOutage& home) {
    constexpr int kHours = 24 * 60;
    const auto minutes = [](const UnaidedTime& time) { return time.hours ? kHours : time.minutes; };
    return std::min(minutes(home.awake), minutes(home.asleep));
}

}  // namespace

std::string_view name_of(HomeCall::Role role) {
    constexpr std::array<std::string_view, 4> kNames{"family", "contact", "caregiver", "neighbor"};
    return kNames[static_cast<std::size_t>(role)];
}

std::string_view name_of(Standing standing) {
    constexpr std::array<std::string_view, 4> kNames{"not judged", "not known", "falls short", "lasts"};
    return kNames[static_cast<std::size_t>(standing)];
}

Standing HomeInOutage::standing(PlanMinutes needed) const {
    if (!not_judged.empty()) return Standing::not_judged;
    if (!time_left) return Standing::not_known;
    return *time_left < needed ? Standing::falls_short : Standing::lasts;
}

HomeInOutage home_in_outage(std::string file, const Household& home) {
    HomeInOutage one = known_of(std::move(file), home.profile);
    const OutagePlan plan = outage_plan(home);
    const bool at_once = stops_at_once(home, plan);
    one.power = at_once ? std::optional<PlanMinutes>{0} : printed(home.outage.power);
    one.oxygen = printed(home.outage.oxygen);
    one.oxygen_needed = home.outage.oxygen_needed || may_need_oxygen(home);
    one.leave_by = plan.leave_by;
    if (at_once)
        one.time_left = 0;
    else if (!one.oxygen_needed || one.oxygen)
        one.time_left = printed(home.outage.time_left);
    one.awake = unaided_time(home.profile.dependence->unaided_awake);
    one.asleep = unaided_time(home.profile.dependence->unaided_asleep);
    const auto& travel = home.profile.evacuation->travel_time;
    if (travel) one.travel = ceil_pieces((*travel).in(unit::min));
    // What rests on a time that is not known is no time to wait for.
    if (!one.time_left) one.leave_by.reset();
    return one;
}

HomeInOutage home_not_judged(std::string file, std::string reason, const Profile& profile) {
    HomeInOutage home = known_of(std::move(file), profile);
    home.not_judged = std::move(reason);
    return home;
}

HomeInOutage home_not_judged(std::string file, std::string reason) {
    HomeInOutage home;
    home.file = std::move(file);
    home.not_judged = std::move(reason);
    return home;
}

void sort_for_calls(std::vector<HomeInOutage>& homes, PlanMinutes needed) {
    const auto place = [&](const HomeInOutage& home) {
        return std::tuple{home.standing(needed), home.time_left.value_or(0), minutes_unaided(home),
                          std::string_view{home.record_number}, std::string_view{home.file}};
    };
    std::ranges::stable_sort(homes, {}, place);
}

}  // namespace ventfolio
