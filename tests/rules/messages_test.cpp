#include <doctest/doctest.h>

#include <set>
#include <vector>

#include "edited_home.hpp"
#include "rules/judge.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;
using ventfolio::testing::summary;

namespace {

constexpr const char* kAdult = "adult-tracheostomy";
constexpr const char* kChild = "child-tracheostomy";

}  // namespace

// What a finding says is read aloud on the phone to those who can mend it. Numbers are worked out by hand from the home
// and the edits; reference weight 66.016 kg (predicted at 170 cm).
TEST_CASE("a finding says the numbers that its sum gives, with the digits that matter") {
    struct Row {
        const char* home;
        const char* edits;
        const char* rule;
        const char* says;
        const char* source;
    };
    constexpr Row rows[] = {
        {kAdult, "prescriptions.1.volume_assured.target_volume: 210 mL", "tidal-volume-per-weight-unusual",
         "210 mL is 3.2 mL/kg for 66 kg; 4 to 15 mL/kg is usual.", "210 / 66.016"},
        {kAdult, "person.height: 170.4 cm\nperson.weight: 20 kg", "weight-and-height-disagree",
         "20 kg with a height of 170 cm gives 6.9 kg per square metre.", "20 / 1.704 / 1.704 = 6.89"},
        {kAdult, "suction.catheter_size: 14 Fr", "catheter-above-half-tube",
         "The 14 Fr catheter takes 58 % of the tube; some guides stop at half (12 Fr).", "14 / 24; 12 / 24"},
        {kAdult, "suction.catheter_size: 10 Fr\nairway.neck_tube.inner_diameter: 2.5 mm", "catheter-will-not-pass",
         "A 10 Fr catheter is 3.3 mm wide and cannot pass a 2.5 mm tube.", "a French is a third of a millimetre"},
        {kChild, "prescriptions.0.rate: 10 breaths/min", "child-rate-below-band", "is low for a child of 2 years.",
         "born 2023-05-20, printed for 2026-02-03"},
        {kChild, "person.birth_date: 2025-02-03\nprescriptions.0.rate: 10 breaths/min", "child-rate-below-band",
         "is low for a child of 1 years.", "the first birthday"},
        {kChild, "person.birth_date: 2025-08-03\nprescriptions.0.rate: 10 breaths/min", "child-rate-below-band",
         "is low for a child of 6 months.", "half a year"},
        {kAdult, "caregivers.0.status: trainee\ncaregivers.1.status: trainee\ncaregivers.2.status: trainee",
         "too-few-trained-caregivers", "No caregiver is signed off alone", "counted"},
        {kAdult, "caregivers.0.status: trainee\ncaregivers.1.status: trainee", "too-few-trained-caregivers",
         "1 caregiver is signed off alone", "counted"},
        {kAdult,
         "loads.5.on_generator: true\nloads.5.power: 400.3 W\npower.generator: {place: outdoors, distance: 7 m, power: "
         "499 W}",
         "backup-supply-unsuitable", "The generator cannot carry 500 W: it gives 499 W.", "400.3 / 0.8 = 500.4"},
        {kAdult, "batteries: []\npower.vehicle: none", "too-few-power-sources", "There is no source of power",
         "counted"},
        {kAdult, "prescriptions.0.when_used: [{hours: 8 PM to 7:20 AM}]", "hours-without-prescription", "cover 22.3 h",
         "11 h and 11 h 20 min"},
        {kAdult, "prescriptions.0.inspiratory_pressure: 16.26 cmH2O\nprescriptions.0.alarms.high_pressure: 20 cmH2O",
         "high-pressure-alarm-below-peak", "may use, 21.3 cmH2O.", "16.26 + 5"},
        {kAdult, "prescriptions.1.volume_assured.target_volume: 240.4 mL", "moisture-exchanger-too-big",
         "50 mL of each 240 mL breath", "rounded"},
        {kAdult, "prescriptions.0.alarms.no_breath: 4 s", "no-breath-alarm-too-short", "4.29 s", "60 / 14 = 4.2857"},
        {kAdult, "suction.depth: 12.56 cm", "suction-depth-too-deep", "2.3 cm", "12.56 - 8.8 - 1.5 = 2.26"},
        {kChild, "prescriptions.0.inspiratory_time: 2.85 s", "breath-in-fills-whole-breath",
         "leaves 0.15 s of a 3 s breath", "60 / 20"},
        {kChild, "prescriptions.0.inspiratory_time: 3.2 s", "breath-in-fills-whole-breath",
         "leaves 0 s of a 3 s breath", "nothing is left"},
        {kAdult, "power.vehicle.power: 97 W", "backup-supply-unsuitable", "carry 8.1 A for hours", "97 / 12 = 8.08"},
        {kAdult, "devices.0.slots.0.prescription: P9", "unit-slot-conflict",
         "Unit A slot 1: no prescription is called P9.", "read"},
        {kAdult, "batteries: []", "too-few-power-sources", "There is 1 source of power", "counted: the vehicle"},
        {kAdult, "prescriptions.0.oxygen: {fraction: 60 %, flow: 1 L/min}", "oxygen-estimate-disagrees",
         "(estimate 23 % to 32 %)", "1 L/min of 90 % oxygen in 39.1 L/min, and of 96 % in 7.1 L/min without a leak"},
        {kAdult, "devices.1.label: Unit A", "unit-slot-conflict", "The units: two units are called Unit A.", "read"},
        {kChild, "prescriptions.0.circuit.small_lines.0.bore: 4.0 mm\nprescriptions.0.circuit.small_lines.1.bore: 4 mm",
         "small-lines-look-alike", "both small lines have 4.0 mm", "the first line as it is written"},
        {kAdult, "suction.pressure: 151 mmHg", "suction-pressure-above-band", "150 mmHg is the usual top for this age",
         "AARC, artificial airway suctioning, 2022: below 200 mmHg, usually to 150 mmHg (from memory)"},
        {kAdult,
         "prescriptions.1.expected.total_rate: {from: 13.23 breaths/min, to: 13.23 breaths/min}\n"
         "prescriptions.1.expected.minute_volume: {from: 4 L/min, to: 4 L/min}",
         "rate-and-volume-disagree", "13.2 breaths/min x 500 mL is 6.6 L/min, but 4 to 4 L/min is expected.",
         "13.23 x 0.5 = 6.615"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        CAPTURE(std::string{row.source});
        const auto judged = judged_home(row.home, row.edits);
        CAPTURE(summary(judged.findings));
        const Finding* finding = judged.finding(row.rule);
        REQUIRE(finding != nullptr);
        CHECK_MESSAGE(finding->message.find(row.says) != std::string::npos, finding->message);
    }
}

TEST_CASE("a finding points at both things that do not go together") {
    const auto fields = [](const char* home, const char* edits, const char* rule) {
        std::vector<std::string> out;
        const auto judged = judged_home(home, edits);
        CAPTURE(summary(judged.findings));
        const Finding* finding = judged.finding(rule);
        REQUIRE(finding != nullptr);
        for (const Mark& mark : finding->marks) out.push_back(mark.field);
        return out;
    };
    CHECK(fields(kChild, "prescriptions.0.circuit.small_lines.1.bore: 4 mm", "small-lines-look-alike") ==
          std::vector<std::string>{"prescriptions.0.circuit.small_lines.0.bore",
                                   "prescriptions.0.circuit.small_lines.1.bore"});
    CHECK(fields(kAdult, "prescriptions.0.changed_in: R2", "units-hold-different-revisions") ==
          std::vector<std::string>{"devices.0.slots.0.revision", "prescriptions.0.changed_in"});
    CHECK(fields(kAdult, "devices.1.slots.1.slot: 1", "unit-slot-conflict") ==
          std::vector<std::string>{"devices.1.slots.1.slot", "devices.1.slots.0.slot"});
}

TEST_CASE("a label says which way a number is off") {
    const auto label = [](const char* edits, const char* rule) {
        const auto judged = judged_home(kAdult, edits);
        const Finding* finding = judged.finding(rule);
        return finding == nullptr ? std::string{"no finding"} : finding->marks.front().label;
    };
    // The peak is 21 cmH2O; 5 to 20 above it: common practice, no source.
    CHECK(label("prescriptions.0.alarms.high_pressure: 25 cmH2O", "high-pressure-alarm-margin-unusual") ==
          "only 4 cmH2O above it");
    CHECK(label("prescriptions.0.alarms.high_pressure: 42 cmH2O", "high-pressure-alarm-margin-unusual") ==
          "21 cmH2O above it");
    // Ordered on 9 January, printed for 3 February 2026.
    CHECK(label("orders.effective_at: 2026-01-08 10:00 AM", "start-date-unusual") == "before the order");
    CHECK(label("orders.effective_at: 2026-03-08 10:00 AM", "start-date-unusual") == "long after the print date");
}

TEST_CASE("a rule stops its own sheets, and an unknown one all") {
    Finding finding;
    finding.severity = Severity::refuse;
    finding.rule = "tap-water-in-humidifier";
    CHECK(stopped_sheets({&finding, 1}) == std::set<std::string>{"care-schedule", "supplies"});
    finding.rule = "no-such-rule";
    CHECK(stopped_sheets({&finding, 1}).contains("bedside-card"));
    finding.severity = Severity::acknowledge;
    CHECK(stopped_sheets({&finding, 1}).empty());
}

TEST_CASE("findings of one place keep the order of the book, the gravest first") {
    const auto finding = [](const char* rule, Severity severity) {
        Finding made;
        made.rule = rule;
        made.severity = severity;
        return made;
    };
    std::vector<Finding> findings{finding("a", Severity::note), finding("b", Severity::warn),
                                  finding("c", Severity::refuse), finding("d", Severity::warn)};
    sort_by_place(findings);
    std::string order;
    for (const Finding& one : findings) order += one.rule;
    CHECK(order == "cbda");
}
