#include "rules/outage_plan.hpp"

#include <doctest/doctest.h>

#include "edited_home.hpp"
#include "rules/thresholds.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;

namespace {

/// A home with edits and its plan, which points into the home.
struct Planned {
    explicit Planned(std::string_view edits)
        : judged{judged_home("adult-tracheostomy", edits)},
          home{judged.read.profile, *Date::parse("2026-02-03")},
          plan{outage_plan(home)} {}

    ventfolio::testing::Judged judged;
    Household home;
    OutagePlan plan;
};

}  // namespace

TEST_CASE("the shares of a tested battery time cover the loss that was measured after a faster rate") {
    // 10 to 20 breaths/min cut battery life by 18 -/+ 11 percent: Falaize and others, Respir Care, 2013 (abstract).
    CHECK(threshold::kBatteryDeratingLowered <= 1 - (0.18 + 0.11));
    CHECK(threshold::kBatteryDerating <= 1 - 0.18);
}

// Worked out by hand from the times of the home: four fifths of 480, 210 and 220 min, the easiest to change first; 728
// min of power, 25 min of travel. Plans are printed in quarters of an hour, downwards; times to call: common practice,
// no source.
TEST_CASE("a plan for an outage uses batteries one after the other, in quarters of an hour") {
    const Planned plan_home{""};
    const OutagePlan& plan = plan_home.plan;
    REQUIRE(plan.batteries.size() == 3);
    CHECK(plan.batteries[0].facts->battery->label.is("large pack beside the bed"));
    CHECK(plan.batteries[1].facts->battery->label.is("Unit A, slide-in"));
    CHECK(plan.batteries[2].facts->battery->label.is("Unit A, built in"));
    CHECK(plan.batteries[0].from == 0);
    CHECK(plan.batteries[0].to == 375);  // 384
    CHECK(plan.batteries[1].from == 375);
    CHECK(plan.batteries[1].to == 540);  // 384 + 168
    CHECK(plan.batteries[2].to == 720);  // 384 + 168 + 176
    CHECK(plan.not_counted.empty());
    REQUIRE(plan.spares.size() == 1);
    CHECK(plan.spares[0].time == 345);  // four fifths of 240 and 200 min are 352
    CHECK(Planned{"remove: batteries.2.tested_time"}.plan.not_counted.size() == 1);
}

TEST_CASE("the first unit is the one at the bed where none is said to be") {
    CHECK(Planned{"remove: devices.0.at_bed"}.plan.batteries.size() == 3);
    // A cylinder without a number is one.
    const Planned plan_home{"remove: oxygen.sources.1.number"};
    REQUIRE(plan_home.plan.oxygen.size() == 1);
    CHECK(plan_home.plan.oxygen[0].first == 1);
    CHECK(plan_home.plan.oxygen[0].last == 1);
    CHECK(plan_home.plan.oxygen[0].from == 0);
}

TEST_CASE("a plan for an outage says when to call and when to leave") {
    const Planned plan_home{""};
    const OutagePlan& plan = plan_home.plan;
    CHECK(plan.time_left == 720);
    CHECK(plan.half == 360);            // 364
    CHECK(plan.call_provider == 480);   // 728 - 240
    CHECK(plan.call_emergency == 660);  // 728 - 60
    CHECK(plan.leave_by == 555);        // 728 - (2 x 25 + 120) = 558
    CHECK_FALSE(plan.oxygen_ends_first);
    // So long a way that leaving comes before half of the time is over, and before the provider is called: 728 - 390.
    const Planned far_home{"evacuation.travel_time: 135 min"};
    const OutagePlan& far = far_home.plan;
    CHECK(far.leave_by == 330);  // 338
    CHECK_FALSE(far.half);
    CHECK_FALSE(far.call_provider);
    // 728 - 2 x 300 - 120 = 8: less than a quarter of an hour to wait is none.
    CHECK_FALSE(Planned{"evacuation.travel_time: 300 min"}.plan.leave_by);
    CHECK(Planned{"evacuation.travel_time: 296 min"}.plan.leave_by == 15);  // 16
}

TEST_CASE("a plan for an outage has a line for each of three cylinders, and one for more") {
    // 1500 psi of 0.28 L/psi at 1 L/min: 420 min each (handbook factor of size E).
    const Planned three_home{"oxygen.sources.1.number: 3 pieces"};
    const OutagePlan& three = three_home.plan;
    REQUIRE(three.oxygen.size() == 3);
    for (std::size_t at = 0; at < 3; ++at) {
        CAPTURE(at);
        CHECK(three.oxygen[at].first == static_cast<int>(at) + 1);
        CHECK(three.oxygen[at].last == static_cast<int>(at) + 1);
        CHECK(three.oxygen[at].each == 420);
        CHECK(three.oxygen[at].from == static_cast<int>(at) * 420);
        CHECK(three.oxygen[at].to == static_cast<int>(at + 1) * 420);
    }
    const Planned four_home{"oxygen.sources.1.number: 4 pieces"};
    const OutagePlan& four = four_home.plan;
    REQUIRE(four.oxygen.size() == 1);
    CHECK(four.oxygen[0].first == 1);
    CHECK(four.oxygen[0].last == 4);
    CHECK(four.oxygen[0].to == 4 * 420);
}

TEST_CASE("oxygen that ends first ends the plan") {
    // One cylinder: 420 min. A call at the last hour: 360 min; leaving: 420 - 170 = 250 min.
    const Planned plan_home{"oxygen.sources.1.number: 1 piece"};
    const OutagePlan& plan = plan_home.plan;
    CHECK(plan.oxygen_ends_first);
    CHECK(plan.time_left == 420);
    CHECK(plan.call_emergency == 360);
    CHECK(plan.leave_by == 240);
    CHECK(plan.half == 210);
    CHECK(plan.call_provider == 180);
}

TEST_CASE("a plan counts the share of a tested time that the profile asks for") {
    // der: 480, 690 and 910 min in sum, half of each
    const Planned half{"power.battery_derating: 50 %"};
    CHECK(half.home.outage.power->in(unit::min) == doctest::Approx(455));
    CHECK(half.plan.batteries[0].to == 240);
    CHECK(half.plan.batteries[2].to == 450);
}

TEST_CASE("oxygen lasts at the highest flow that is ordered") {
    const auto minutes = [](const std::string& edits) { return Planned{edits}.home.outage.oxygen->in(unit::min); };
    const auto flows = [](const char* bed, const char* chair) {
        return std::string{"prescriptions.0.oxygen.flow: "} + bed + "\nprescriptions.1.oxygen.flow: " + chair + "\n";
    };
    // 1500 psi of 0.28 L/psi are 420 L a cylinder (handbook factor of size E); there are two.
    CHECK(minutes("") == doctest::Approx(840));
    CHECK(minutes(flows("1 L/min", "2 L/min")) == doctest::Approx(420));
    CHECK(minutes(flows("2 L/min", "1 L/min")) == doctest::Approx(420));
    CHECK(minutes("remove: oxygen.sources.1.number") == doctest::Approx(420));
    const char* kLiquid = "oxygen.sources: [{kind: liquid, label: tank, contents: 1000 L, location: hall}]\n";
    CHECK(minutes(kLiquid + flows("2 L/min", "1 L/min")) == doctest::Approx(500));
    const Planned home{kLiquid};
    CHECK_FALSE(time_of(home.home.profile.oxygen->sources[0], Flow{}));
}

TEST_CASE("a source that cannot carry its load is no source") {
    // Three batteries of the unit at the bed, and the vehicle.
    const auto count = [](const char* edits) { return Planned{edits}.home.outage.sources_at_bed; };
    CHECK(count("") == 4);
    CHECK(count("power.vehicle: none") == 3);
    CHECK(count("power.vehicle.power: 97 W") == 3);  // 8.1 A of 10 A for hours
    CHECK(count("power.generator: {place: outdoors, distance: 7 m, power: 2200 W}") == 5);
    CHECK(count("power.generator: {place: garage, distance: 7 m, power: 2200 W}") == 4);
    CHECK(count("loads.5.on_generator: true\npower.generator: {place: outdoors, distance: 7 m, power: 312 W}") == 4);
    CHECK(count("loads.5.on_generator: true\npower.generator: {place: outdoors, distance: 7 m, power: 313 W}") == 5);
}

TEST_CASE("a time to call that has come already is not on the plan") {
    const auto plan = [](int minutes) {
        return Planned{
            "power.battery_derating: 100 %\nbatteries: [{label: x, kind: internal, unit: Unit A, tested_time: " +
            std::to_string(minutes) + " min}]"}
            .plan;
    };
    // Calls with 60 and 240 min left, leaving with 2 x 25 + 120 = 170 min left: common practice, no source.
    CHECK_FALSE(plan(60).call_emergency);
    CHECK(plan(75).call_emergency == 15);
    CHECK(plan(240).leave_by == 60);
    CHECK_FALSE(plan(240).call_provider);
    CHECK(plan(255).call_provider == 15);
    CHECK_FALSE(plan(340).half);       // 170, the time to leave
    CHECK(plan(400).half == 195);      // 200
    CHECK(plan(400).leave_by == 225);  // 230
}

TEST_CASE("a unit without a battery is no spare") {
    CHECK(Planned{""}.plan.spares.size() == 1);
    CHECK(Planned{"remove: batteries.4\nremove: batteries.3"}.plan.spares.empty());
}
