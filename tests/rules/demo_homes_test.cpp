#include <doctest/doctest.h>

#include <algorithm>

#include "edited_home.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;
using ventfolio::testing::summary;

// What each invented home must show was worked out by hand, rule by rule, from the rules' own definitions.
TEST_CASE("the demo homes show the findings that they were written to show, and no others") {
    struct Row {
        const char* home;
        const char* on;
        std::vector<std::string> rules;
    };
    const Row rows[] = {
        {"adult-tracheostomy", "2026-02-03", {"backup-away-with-chair"}},
        {"adult-tracheostomy-revision-2", "2026-03-17", {"backup-away-with-chair", "battery-time-lowered"}},
        {"child-tracheostomy", "2026-02-03", {"backup-ventilator-missing", "catheter-above-half-tube"}},
        {"adult-mask", "2026-02-03", {"backup-away-with-chair"}},
        {"adult-long-names", "2026-02-03", {"backup-away-with-chair"}},
        {"toddler-dual-limb", "2026-02-03", {"backup-ventilator-missing", "catheter-above-half-tube"}},
        {"adult-mains-only", "2026-02-03", {"backup-away-with-chair", "too-few-power-sources"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.home);
        const auto judged = judged_home(row.home, "", row.on);
        CAPTURE(summary(judged.findings));
        CHECK(judged.rules() == row.rules);
    }
}

TEST_CASE("the change of settings lowers the time of all five batteries to 70 %") {
    const auto judged = judged_home("adult-tracheostomy-revision-2", "", "2026-03-17");
    CHECK(std::ranges::count(judged.findings, "battery-time-lowered", &Finding::rule) == 5);
    const Household home{judged.read.profile, *Date::parse("2026-03-17")};
    REQUIRE(home.outage.power);
    CHECK(home.outage.batteries[0].retest_by == Date::parse("2026-03-23"));  // orders began on 16 March
    // 910 min x 0.70 = 637 min; less 2 x 25 min and 120 min: 467 min (worked example of the home's design)
    CHECK((*home.outage.power).in(unit::min) == doctest::Approx(637));
    CHECK((*home.outage.time_left - *home.outage.leave_reserve).in(unit::min) == doctest::Approx(467));
}

TEST_CASE("an infant is younger than a year, and a child than 18") {
    // AHA: an infant is below 1 year (from memory); adult from the 18th birthday.
    struct Row {
        const char* born;
        bool infant;
        bool child;
    };
    constexpr Row rows[] = {{"2025-02-04", true, true},
                            {"2025-02-03", false, true},
                            {"2008-02-04", false, true},
                            {"2008-02-03", false, false}};
    for (const Row& row : rows) {
        CAPTURE(std::string{row.born});
        const auto judged = judged_home("child-tracheostomy", std::string{"person.birth_date: "} + row.born);
        const Household home{judged.read.profile, *Date::parse("2026-02-03")};
        CHECK(home.infant == row.infant);
        CHECK(home.child == row.child);
    }
}

TEST_CASE("numbers derived for the demo homes agree with the worked examples") {
    const auto adult = judged_home("adult-tracheostomy", "");
    const Household home{adult.read.profile, *Date::parse("2026-02-03")};
    CHECK((*home.reference_weight).in(unit::kg) == doctest::Approx(66.0).epsilon(0.001));
    const auto& bed = home.prescriptions[0];
    CHECK((*bed.top).in(unit::cmH2O) == doctest::Approx(21));
    CHECK((*bed.cycle).in(unit::s) == doctest::Approx(60.0 / 14));
    CHECK(*bed.usual_per_weight == doctest::Approx(7.3).epsilon(0.01));
    CHECK(bed.accepted_peak_pressure->low.in(unit::cmH2O) == doctest::Approx(18.9));  // 21 less 10 %
    CHECK((*home.prescriptions[1].top).in(unit::cmH2O) == doctest::Approx(27));
    CHECK((*home.prescriptions[1].bottom).in(unit::cmH2O) == doctest::Approx(19));
    CHECK((*home.outage.power).in(unit::min) == doctest::Approx(728));
    CHECK((*home.outage.oxygen).in(unit::min) == doctest::Approx(840));  // two cylinders of 420 min
    const auto mask = judged_home("adult-mask", "");
    const Household other{mask.read.profile, *Date::parse("2026-02-03")};
    CHECK((*other.reference_weight).in(unit::kg) == doctest::Approx(58.1).epsilon(0.001));  // 171 cm of arm span
    CHECK(*other.prescriptions[1].ordered_per_weight == doctest::Approx(15.5).epsilon(0.01));
    CHECK((*other.outage.power).in(unit::min) == doctest::Approx(400));
}

TEST_CASE("an open acknowledge or a missing second name marks every page, and an acceptance lifts only the first") {
    const auto on = *Date::parse("2026-02-03");
    const auto child = judged_home("child-tracheostomy", "");
    REQUIRE(child.finding("backup-ventilator-missing") != nullptr);
    CHECK(child.finding("backup-ventilator-missing")->accepted);
    CHECK(!not_yet_checked(child.findings, child.read.profile));
    const auto open = judged_home("child-tracheostomy", "person.languages.second_on_paper: Spanish");
    REQUIRE(open.finding("translation-not-reviewed") != nullptr);
    CHECK(!open.finding("translation-not-reviewed")->accepted);
    CHECK(not_yet_checked(open.findings, open.read.profile));
    const auto adult = judged_home("adult-tracheostomy", "");
    CHECK(!not_yet_checked(adult.findings, adult.read.profile));
    const auto draft =
        judged_home("adult-tracheostomy",
                    "remove: orders.second_check\n"
                    "accepted: [{rule: orders-not-double-checked, by: Dr. Imelda Quarrow, date: 2026-01-10, "
                    "reason: the second check is on Monday}]\n");
    CHECK(not_yet_checked(draft.findings, draft.read.profile));
    CHECK(stopped_sheets(adult.findings).empty());
    CHECK(stopped_sheets(judge(draft.read.profile, draft.source, on)).empty());
}
