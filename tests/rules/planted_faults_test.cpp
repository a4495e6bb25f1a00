#include <doctest/doctest.h>

#include <algorithm>

#include "edited_home.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;
using ventfolio::testing::summary;

// Faults that a good checker must find: each was planted by hand in a demo home, beside the nearest order that is
// right.
TEST_CASE("twenty planted faults are found, and their near neighbours are not") {
    struct Row {
        const char* home;
        const char* fault;
        const char* rule;
        Severity severity;
        const char* near;
    };
    const Row rows[] = {
        {"adult-tracheostomy", "prescriptions.0.alarms.high_pressure: 20 cmH2O", "high-pressure-alarm-below-peak",
         Severity::refuse, "prescriptions.0.alarms.high_pressure: 26 cmH2O"},
        {"adult-tracheostomy", "prescriptions.0.alarms.low_pressure: 5 cmH2O", "low-pressure-alarm-below-baseline",
         Severity::refuse, "prescriptions.0.alarms.low_pressure: 6 cmH2O"},
        {"adult-tracheostomy", "remove: prescriptions.0.pressure_reference", "pressure-reference-missing",
         Severity::refuse, "prescriptions.0.pressure_reference: above_baseline"},
        // 5000 mL is refused while reading, as outside what can be typed; 2400 mL is the slip that gets this far.
        {"adult-tracheostomy", "prescriptions.1.volume_assured.target_volume: 2400 mL", "tidal-volume-impossible",
         Severity::refuse, "prescriptions.1.volume_assured.target_volume: 990 mL"},
        {"adult-tracheostomy", "prescriptions.1.volume_assured.target_volume: 5000 mL", "outside-typing-range",
         Severity::refuse, "prescriptions.1.volume_assured.target_volume: 990 mL"},
        {"adult-tracheostomy",
         "prescriptions.0.alarms.low_tidal_volume: off\nprescriptions.0.alarms.low_minute_volume: off",
         "blocked-tube-would-be-silent", Severity::refuse, "prescriptions.0.alarms.low_tidal_volume: off"},
        {"adult-mask", "prescriptions.0.alarms.disconnect: off\nprescriptions.0.alarms.low_minute_volume: off",
         "hose-off-would-be-silent", Severity::refuse, "prescriptions.0.alarms.disconnect: off"},
        {"adult-tracheostomy", "prescriptions.0.circuit.exhalation_port: none", "exhaled-air-cannot-leave",
         Severity::refuse, "prescriptions.0.circuit.exhalation_port.position: 30 cm from the neck tube"},
        {"adult-tracheostomy", "prescriptions.0.humidity.moisture_exchanger: {dead_space: 50 mL}",
         "heated-humidifier-with-moisture-exchanger", Severity::refuse,
         "prescriptions.1.humidity.moisture_exchanger.dead_space: 50 mL"},
        {"adult-tracheostomy", "oxygen.delivery: pulse", "pulse-oxygen-on-ventilator", Severity::refuse,
         "oxygen.delivery: continuous"},
        {"adult-tracheostomy", "airway.neck_tube.speaking_valve: {allowed: true, state: awake}",
         "speaking-valve-with-filled-cuff", Severity::refuse,
         "airway.neck_tube.speaking_valve: {allowed: true, state: awake, cuff_flat_first: true}\n"
         "airway.neck_tube.cuff_order.up: night_only"},
        {"child-tracheostomy", "airway.upper: laryngectomy", "mouth-route-contradiction", Severity::refuse,
         "airway.upper: open_but_difficult"},
        {"adult-mask", "prescriptions.0.mode: cpap", "continuous-pressure-for-dependent-person", Severity::refuse,
         "prescriptions.0.mode: st_bilevel"},
        {"adult-mask", "prescriptions.1.state: both", "mouthpiece-prescribed-for-sleep", Severity::refuse,
         "prescriptions.1.state: awake"},
        {"adult-tracheostomy", "orders.revision: R2\norders.supersedes: R1\ndevices.0.slots.0.revision: R2",
         "units-hold-different-revisions", Severity::refuse,
         "orders.revision: R2\norders.supersedes: R1\ndevices.0.slots.0.revision: R2\ndevices.1.slots.1.revision: R2"},
        {"adult-tracheostomy", "remove: devices.1.slots.1", "backup-unit-lacks-prescription", Severity::acknowledge,
         "devices.1.slots.0.slot: 2\ndevices.1.slots.1.slot: 1"},
        {"adult-tracheostomy", "emergency_equipment.breathing_bags: none", "breathing-bag-missing",
         Severity::acknowledge,
         "remove: emergency_equipment.breathing_bags.2\nremove: emergency_equipment.breathing_bags.1"},
        {"child-tracheostomy", "airway.neck_tube.spare_smaller.size: 4.0 mm", "smaller-spare-not-smaller",
         Severity::refuse, "airway.neck_tube.spare_smaller.size: 3.5 mm"},
        {"child-tracheostomy", "suction.pressure: 150 mmHg", "suction-pressure-dangerous", Severity::refuse,
         "suction.pressure: 120 mmHg"},
        {"child-tracheostomy", "monitors.oximeter: none", "small-tube-may-slip-silently", Severity::acknowledge,
         "monitors.oximeter.use: continuous_asleep"},
        {"adult-tracheostomy", "power.generator: {place: garage, power: 2200 W, distance: 7 m}",
         "generator-too-near-openings", Severity::refuse,
         "power.generator: {place: outdoors, power: 2200 W, distance: 6.1 m}"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.fault);
        const auto planted = judged_home(row.home, row.fault);
        CAPTURE(summary(planted.findings));
        REQUIRE(planted.finding(row.rule) != nullptr);
        CHECK(planted.finding(row.rule)->severity == row.severity);
        const auto near = judged_home(row.home, row.near);
        CHECK_MESSAGE(!near.reports(row.rule), row.near);
    }
}

TEST_CASE("an exchanger that is not made for so small a breath is found without its dead space") {
    const char* made_for =
        "remove: prescriptions.1.humidity.moisture_exchanger.dead_space\n"
        "prescriptions.1.humidity.moisture_exchanger.breath_range: ";
    const auto judged = judged_home("adult-tracheostomy", std::string{made_for} + "{from: 600 mL, to: 1500 mL}");
    CAPTURE(summary(judged.findings));
    const Finding* finding = judged.finding("moisture-exchanger-too-big");
    REQUIRE(finding != nullptr);
    CHECK(finding->marks.front().field == "prescriptions.1.humidity.moisture_exchanger.breath_range");
    CHECK(finding->message.find("an unknown part of each 500 mL breath") != std::string::npos);
    CHECK(!judged_home("adult-tracheostomy", std::string{made_for} + "{from: 500 mL, to: 1500 mL}")
               .reports("moisture-exchanger-too-big"));
}

TEST_CASE("an exchanger of the outage plan is judged where it takes over from a humidifier, and there alone") {
    // The outage plan has one exchanger for the home. Common practice, no source.
    const auto judged =
        judged_home("adult-tracheostomy", "humidity_plan.outage_swap.moisture_exchanger.dead_space: 90 mL");
    CAPTURE(summary(judged.findings));
    const Finding* finding = judged.finding("moisture-exchanger-too-big");
    REQUIRE(finding != nullptr);
    CHECK(finding->marks.front().field == "humidity_plan.outage_swap.moisture_exchanger.dead_space");
    CHECK(
        finding->message.find("P1: 90 mL of each 480 mL breath stays in the heat and moisture exchanger of the outage "
                              "plan") != std::string::npos);
    CHECK(std::ranges::count(judged.findings, "moisture-exchanger-too-big", &Finding::rule) == 1);
    CHECK(!judged_home("adult-tracheostomy", "humidity_plan.outage_swap: {kind: mist_collar}")
               .reports("moisture-exchanger-too-big"));
}

TEST_CASE("a rate of 0 for someone who needs every breath is a fault in each mode that has a rate") {
    // Assist/control gives the set rate whatever the person does; at 0 only breaths that the person starts are left.
    // Source: ISO 19223:2019, ventilation modes (from memory).
    for (const char* edits : {"prescriptions.0.rate: 0 breaths/min", "prescriptions.1.rate: 0 breaths/min"}) {
        const auto judged = judged_home("adult-tracheostomy", edits);
        CAPTURE(summary(judged.findings));
        const Finding* finding = judged.finding("backup-breaths-missing");
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::refuse);
    }
    CHECK(!judged_home("adult-tracheostomy", "prescriptions.0.rate: 12 breaths/min").reports("backup-breaths-missing"));
}
