#include <fmt/format.h>
#include <algorithm>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

std::string least_free_time(const Household& home) {
    const Dependence& dependence = *home.profile.dependence;
    if (dependence.unaided_awake.is_none() || dependence.unaided_asleep.is_none()) return "no time";
    const bool asleep = home.dependent_asleep || !home.dependent_awake;
    return shown_free_time(asleep ? dependence.unaided_asleep : dependence.unaided_awake);
}

std::string why_bag_does_not_fit(const BreathingBag& bag, const Household& home) {
    const auto& weight = home.profile.person->weight;
    if (weight && bag.size) {
        const bool wrong = (*bag.size == BagSize::infant && above(*weight, threshold::kBagInfantWeightMost)) ||
                           (*bag.size == BagSize::child && (below(*weight, threshold::kBagChildWeightLeast) ||
                                                            above(*weight, threshold::kBagChildWeightMost))) ||
                           (*bag.size == BagSize::adult && below(*weight, threshold::kBagAdultWeightLeast));
        if (wrong) return written(weight);
    }
    if (home.neck_tube != nullptr && bag.tube_connector.is(false)) return "a neck tube: it has no tube connector";
    const auto& upper = home.profile.airway->upper;
    const bool by_mouth =
        home.neck_tube == nullptr || upper.is(UpperAirway::open) || upper.is(UpperAirway::open_but_difficult);
    return by_mouth && bag.face_mask.is(false) ? "breaths by mouth: it has no face mask" : std::string{};
}

struct RoleContact {
    const Group<Contact>* contact;
    std::string_view role;
};

const Group<Contact>* contact_of(const Contacts& contacts, ContactRole role) {
    switch (role) {
        case ContactRole::emergency:
            return &contacts.emergency;
        case ContactRole::equipment_provider:
            return &contacts.equipment_provider;
        case ContactRole::prescriber_on_call:
            return &contacts.prescriber_on_call;
        case ContactRole::clinic:
            return &contacts.clinic;
        case ContactRole::primary_care:
            return &contacts.primary_care;
        case ContactRole::home_nursing:
            return &contacts.home_nursing;
        case ContactRole::hospital:
            return &contacts.hospital;
        case ContactRole::pharmacy:
            return &contacts.pharmacy;
        case ContactRole::family:
            return &contacts.family;
        case ContactRole::nearby_helper:
            return &contacts.nearby_helper;
        case ContactRole::interpreter:
            return &contacts.interpreter;
        case ContactRole::poison_line:
            return &contacts.poison_line;
        case ContactRole::utility_company:
            return nullptr;
    }
    return nullptr;
}

void check_free_time(const Group<FreeBreathing>& free, std::string state, Report& report) {
    if (!free.given() || !free->kind || !free->time) return;
    const Duration limit = threshold::kFreeBreathingMinutesMost;
    const bool too_long = *free->kind == FreeTimeKind::minutes && above(*free->time, limit);
    const bool too_short = *free->kind == FreeTimeKind::hours && below(*free->time, limit);
    if (!too_long && !too_short) return;
    report.at(free->time)
        .also(free->kind)
        .with("first", fmt::format("{} it is called {}", state, written(free->kind)))
        .with("second", fmt::format("the time is {}", written(free->time)));
}

}  // namespace

namespace check {

void backup_ventilator_missing(const Household& home, Report& report) {
    const auto& hours = home.profile.dependence->hours_per_day;
    const bool long_hours = hours && at_or_above(*hours, threshold::kBackupHoursFrom);
    if (home.profile.devices.size() >= 2 || (!home.dependent && !long_hours)) return;
    report.at(home.profile.devices, "only one").with("free_time", least_free_time(home));
}

void breathing_bag_missing(const Household& home, Report& report) {
    if (home.neck_tube == nullptr && !home.dependent) return;
    const auto& bags = home.profile.emergency_equipment->breathing_bags;
    if (std::ranges::none_of(bags, [](const BreathingBag& bag) { return bag.at.is(BagPlace::bed); })) report.at(bags);
}

void breathing_bag_does_not_fit(const Household& home, Report& report) {
    for (const BreathingBag& bag : home.profile.emergency_equipment->breathing_bags) {
        const std::string reason = why_bag_does_not_fit(bag, home);
        if (reason.empty()) continue;
        report.at(bag.size, "does not suit")
            .with("size", bag.size)
            .with("place", written(bag.at))
            .with("reason", reason);
    }
}

void bag_pressure_valve_mismatch(const Household& home, Report& report) {
    const auto& ordered = home.profile.emergency_equipment->pressure_valve_ordered;
    if (!ordered) return;
    for (const BreathingBag& bag : home.profile.emergency_equipment->breathing_bags) {
        if (!bag.pressure_valve || *bag.pressure_valve == *ordered) continue;
        report.at(bag.pressure_valve)
            .also(ordered)
            .with("has", *bag.pressure_valve ? "has" : "lacks")
            .with("order", *ordered ? "there should be one" : "none");
    }
}

void emergency_numbers_missing(const Household& home, Report& report) {
    const Contacts& contacts = *home.profile.contacts;
    const RoleContact always[] = {{&contacts.emergency, "the emergency number"},
                                  {&contacts.equipment_provider, "the equipment provider"},
                                  {&contacts.prescriber_on_call, "the prescriber on call"}};
    for (const RoleContact& role : always) {
        // Where nothing is said of it, the emergency number is that of the region.
        if (role.contact == &contacts.emergency && contacts.emergency.state == FieldState::absent) continue;
        if (!(*role.contact)->phone) report.at((*role.contact)->phone).with("role", std::string{role.role});
    }
    for (const EscalationStep& step : home.profile.escalation) {
        if (!step.call) continue;
        const Group<Contact>* contact = contact_of(contacts, *step.call);
        const bool listed =
            std::ranges::any_of(always, [&](const RoleContact& role) { return role.contact == contact; });
        const bool number = contact ? (*contact)->phone.given() : home.profile.utility_company->outage_phone.given();
        if (!listed && !number) report.at(step.call, "no number for it").with("role", "the " + written(step.call));
    }
}

void too_few_trained_caregivers(const Household& home, Report& report) {
    if (!home.dependent && !(home.child && home.neck_tube != nullptr)) return;
    const auto count = std::ranges::count_if(home.profile.caregivers, [](const Caregiver& person) {
        return person.status.is(CaregiverStatus::independent);
    });
    if (count < 2) report.at(home.profile.caregivers).with("count", count == 0 ? "No caregiver is" : "1 caregiver is");
}

void dependent_person_left_alone(const Household& home, Report& report) {
    const Dependence& dependence = *home.profile.dependence;
    if (!home.dependent) return;
    const bool alone = dependence.left_alone.is(LeftAlone::alone_in_house);
    const bool out_of_hearing =
        dependence.left_alone.is(LeftAlone::in_same_house) && dependence.can_call_help.is(false);
    if (!alone && !out_of_hearing) return;
    report.at(dependence.left_alone)
        .also(dependence.can_call_help)
        .with("name", home.name())
        .with("left_alone", alone ? "alone in the house" : "out of sight without a way to call");
}

void caregiver_training_expired(const Household& home, Report& report) {
    for (const Caregiver& person : home.profile.caregivers) {
        if (!person.status.is(CaregiverStatus::independent)) continue;
        const auto name = person.first_name ? written(person.first_name) : written(person.name);
        const auto& card = person.resuscitation_card_until;
        if (card && *card < home.on)
            report.at(card, "past").with("caregiver", name).with("what", "the resuscitation card").with("date", card);
        const auto& signed_off = person.last_signed_off;
        if (signed_off && signed_off->plus_months(threshold::kSignoffValid) < home.on)
            report.at(signed_off, "over a year ago")
                .with("caregiver", name)
                .with("what", "the sign-off")
                .with("date", signed_off->plus_months(threshold::kSignoffValid).iso());
    }
}

void dependence_contradicts_itself(const Household& home, Report& report) {
    const Dependence& dependence = *home.profile.dependence;
    check_free_time(dependence.unaided_awake, "awake", report);
    check_free_time(dependence.unaided_asleep, "asleep", report);
    if (!dependence.unaided_awake.is_none() || !dependence.unaided_asleep.is_none() || !dependence.hours_per_day)
        return;
    if (!below(*dependence.hours_per_day, threshold::kHoursLeastWhenNone)) return;
    report.at(dependence.hours_per_day)
        .also(dependence.unaided_awake)
        .also(dependence.unaided_asleep)
        .with("first", "there is none awake or asleep")
        .with("second", "the ventilator is used " + written(dependence.hours_per_day) + " a day");
}

void answer_signals_missing(const Household& home, Report& report) {
    const Communication& talk = *home.profile.communication;
    if (!home.profile.baseline->speech.is_none()) return;
    if (talk.signal_for_yes->how && talk.signal_for_no->how) return;
    report.at(home.profile.communication).also(home.profile.baseline->speech).with("name", home.name());
}

}  // namespace check
}  // namespace ventfolio
