#include <algorithm>
#include <array>
#include <sstream>

#include "calc/body_mass_index.hpp"
#include "calc/predicted_weight.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/judge.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Published charts of predicted weight end here.
constexpr Length kHeightHighestForPrediction = Length::of(213, unit::cm);

/// A date of something done, and what it is the date of.
struct DoneDate {
    const Field<Date>* field;
    std::string_view what;
};

std::vector<DoneDate> dates_of_things_done(const Household& home) {
    const Profile& profile = home.profile;
    std::vector<DoneDate> dates{{&profile.person->weight_date, "The date of the weight"},
                                {&profile.remote_alarm->tested_on, "The test of the remote alarm"},
                                {&profile.directive->confirmed_on, "The confirmation of the signed order"}};
    if (home.neck_tube != nullptr) {
        dates.push_back({&home.neck_tube->opening_made_on, "The date of the opening in the neck"});
        dates.push_back({&home.neck_tube->last_changed, "The last change of the neck tube"});
    }
    for (const Battery& battery : profile.batteries) dates.push_back({&battery.tested_on, "The battery test"});
    for (const Caregiver& person : profile.caregivers) dates.push_back({&person.last_signed_off, "The sign-off"});
    for (const CareTask& task : profile.care_tasks) dates.push_back({&task.last_done, "The care task"});
    for (const BreathingBag& bag : profile.emergency_equipment->breathing_bags)
        dates.push_back({&bag.checked_on, "The check of the breathing bag"});
    return dates;
}

/// A name without titles, credentials, capitals and blanks.
std::string bare_name(std::string_view name) {
    constexpr std::array<std::string_view, 7> kTitles{"dr", "mr", "mrs", "ms", "prof", "nurse", "doctor"};
    std::istringstream words{with_replaced(lower_ascii(name.substr(0, name.find(','))), ".", " ")};
    std::string bare;
    for (std::string word; words >> word;)
        if (std::ranges::find(kTitles, word) == kTitles.end()) bare += word;
    return bare;
}

std::optional<Length> stature(const Person& person) {
    if (person.height) return *person.height;
    if (person.arm_span) return calc::height_from_arm_span(*person.arm_span);
    return std::nullopt;
}

int months_a_weight_stays_fresh(int years) {
    if (years < 2) return threshold::kWeightFreshUnderTwoYears;
    return years < 12 ? threshold::kWeightFreshTwoToElevenYears : threshold::kWeightFreshFromTwelveYears;
}

}  // namespace

bool double_checked(const Orders& orders) {
    const auto& first = orders.verified_by->name;
    const auto& second = orders.second_check->name;
    return first && second && bare_name(*first) != bare_name(*second) && !bare_name(*first).empty();
}

namespace check {

void impossible_date(const Household& home, Report& report) {
    const Field<Date>& birth = home.profile.person->birth_date;
    const auto cannot_be = [&](const Field<Date>& field, std::string_view what, std::string label) {
        auto finding = report.at(field, std::move(label));
        if (&field != &birth) finding.also(birth);
        finding.with("field", std::string{what})
            .with("date", field)
            .with("birth_date", birth)
            .with("on", home.on.iso());
    };
    if (birth && *birth > home.on)
        cannot_be(birth, "The date of birth", "after the print date");
    else if (birth && !home.age)
        cannot_be(birth, "The date of birth", "more than 120 years ago");
    for (const DoneDate& done : dates_of_things_done(home)) {
        if (!done.field->given()) continue;
        if (**done.field > home.on)
            cannot_be(*done.field, done.what, "after the print date");
        else if (birth && **done.field < *birth)
            cannot_be(*done.field, done.what, "before the birth");
    }
}

void orders_not_double_checked(const Household& home, Report& report) {
    const Orders& orders = *home.profile.orders;
    if (double_checked(orders)) return;
    report.at(home.profile.orders)
        .also(orders.verified_by)
        .also(orders.second_check)
        .with("verified_by", orders.verified_by->name)
        .with("second_check", orders.second_check->name);
}

void start_date_unusual(const Household& home, Report& report) {
    const Orders& orders = *home.profile.orders;
    if (!orders.effective_at || !orders.order_date) return;
    const Date start = orders.effective_at->date;
    if (start >= *orders.order_date && start <= home.on.plus_days(threshold::kStartAheadMost)) return;
    report.at(orders.effective_at, start < *orders.order_date ? "before the order" : "long after the print date")
        .also(orders.order_date)
        .with("effective_at", orders.effective_at)
        .with("order_date", orders.order_date)
        .with("on", home.on.iso());
}

void revision_out_of_order(const Household& home, Report& report) {
    const Orders& orders = *home.profile.orders;
    if (!orders.revision) return;
    const bool follows = orders.supersedes ? *orders.supersedes < *orders.revision : *orders.revision == Revision{};
    if (follows) return;
    auto finding = report.at(orders.revision).with("revision", orders.revision);
    finding.with("supersedes", orders.supersedes ? orders.supersedes->text() : "any earlier one: none is named");
    if (orders.supersedes) finding.also(orders.supersedes, "not before it");
}

void review_overdue(const Household& home, Report& report) {
    const Orders& orders = *home.profile.orders;
    const int months = home.child ? threshold::kReviewIntervalChild : threshold::kReviewIntervalAdult;
    if (orders.review_due) {
        if (*orders.review_due < home.on) report.at(orders.review_due, "past").with("date", orders.review_due);
    } else if (orders.order_date && orders.order_date->plus_months(months) < home.on) {
        report.at(orders.order_date, "no review date is recorded")
            .with("date", orders.order_date->plus_months(months).iso());
    }
}

void spoken_order_without_read_back(const Household& home, Report& report) {
    const Orders& orders = *home.profile.orders;
    if (!orders.method.is(OrderMethod::spoken) || (orders.read_back->by && orders.read_back->at)) return;
    report.at(orders.method, "no read-back").with("order_date", orders.order_date);
}

void weight_out_of_date(const Household& home, Report& report) {
    const Person& person = *home.profile.person;
    if (!person.weight || !person.weight_date || !home.age) return;
    if (person.weight_date->plus_months(months_a_weight_stays_fresh(home.age->years)) >= home.on) return;
    report.at(person.weight_date, "too long ago").with("weight", person.weight).with("weight_date", person.weight_date);
}

void weight_and_height_disagree(const Household& home, Report& report) {
    const Person& person = *home.profile.person;
    const auto height = stature(person);
    if (!person.weight || !height) return;
    const auto index = calc::body_mass_index(*person.weight, *height);
    if (!index) return;
    if (!below(index->value, threshold::kBodyMassIndexLowest) && !above(index->value, threshold::kBodyMassIndexHighest))
        return;
    const auto& stated = person.height ? person.height : person.arm_span;
    report.at(person.weight)
        .also(stated, person.height ? "" : "the height follows from it")
        .with("weight", person.weight)
        .with("height", shown(height->in(unit::cm), 0) + " cm")
        .with("index", shown(index->value, 1));
}

void height_unsuited_to_prediction(const Household& home, Report& report) {
    const Person& person = *home.profile.person;
    const Mobility& body = *home.profile.mobility;
    if (!home.age || home.child || person.reference_weight || !person.height) return;
    const bool outside = below(*person.height, threshold::kHeightLowestForPrediction) ||
                         above(*person.height, kHeightHighestForPrediction);
    const bool bent = body.spine_curve.is(true) || body.contractures.is(true) || body.amputation.is(true);
    if (!outside && (!bent || person.height_method)) return;
    auto finding = report.at(person.height, outside ? "outside 130 to 213 cm" : "how it was found is not recorded");
    finding.with("height", person.height);
    for (const Field<bool>* sign : {&body.spine_curve, &body.contractures, &body.amputation})
        if (!outside && sign->is(true)) finding.also(*sign);
}

void acceptance_older_than_order(const Household& home, Report& report) {
    const auto& ordered = home.profile.orders->order_date;
    for (const Acceptance& acceptance : home.profile.accepted) {
        if (!acceptance.date || !ordered || *acceptance.date >= *ordered) continue;
        report.at(acceptance.date, "before the order")
            .also(ordered)
            .with("by", acceptance.by)
            .with("rule", acceptance.rule)
            .with("date", acceptance.date)
            .with("order_date", ordered);
    }
}

}  // namespace check
}  // namespace ventfolio
