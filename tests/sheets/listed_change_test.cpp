#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "packet/print_home_sheets.hpp"
#include "profile/read_profile.hpp"
#include "sheets/listed_change.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

const Printer& printer() {
    static const Printer printer{stationery().words, stationery().region};
    return printer;
}

struct Changes {
    std::vector<ListedChange> edited;
    std::vector<ListedChange> derived;
};

Changes between(const Profile& was, const Profile& now) {
    const Household before{was, demo_day()};
    const Household after{now, demo_day()};
    return {edited_changes(before, after, printer()), derived_changes(before, after, printer())};
}

Changes with_edits(std::string_view home, std::string_view edits) {
    return between(read_profile(demo_profile(home)).profile, read_profile(edited_profile(home, edits)).profile);
}

std::vector<std::string> lines(const std::vector<ListedChange>& changes) {
    std::vector<std::string> all;
    for (const ListedChange& change : changes) all.push_back(in_one_line(change, printer()));
    return all;
}

}  // namespace

TEST_CASE("between two revisions each edited field stands in the words of the paper") {
    const Changes changes = between(read_profile(demo_profile("adult-tracheostomy")).profile,
                                    read_profile(demo_profile("adult-tracheostomy-revision-2")).profile);
    // Source: the two files, side by side.
    const std::vector<std::string> expected{
        "Revision: was R1, now R2",
        "Revision that this one replaces: was not recorded, now R1",
        "Date of the order: was 9 January 2026, now 13 March 2026",
        "In force from: was 12 January 2026, 10 AM, now 16 March 2026, 2 PM",
        "Entered on: was 10 January 2026, now 13 March 2026",
        "Second check on: was 11 January 2026, now 14 March 2026",
        "Review by: was 12 July 2026, now 16 September 2026",
        "Reason for the change: was not recorded, now night carbon dioxide 56 mmHg on 10 March and morning headaches",
        "Check after the change: was not recorded, now carbon dioxide at night",
        "Check after the change, due: was not recorded, now 30 March 2026",
        "Neck tube, last changed: was 26 January 2026, now 26 February 2026",
        "Holds revision, Unit A, slot 1: was R1, now R2",
        "Holds revision, Unit B, slot 2: was R1, now R2",
        "Last changed in revision, bed: was R1, now R2",
        "Pressure of one breath, bed: was 16 cmH2O above baseline, now 18 cmH2O above baseline",
        "Peak pressure, total, bed: was 21 cmH2O, now 23 cmH2O",
        "Breaths per minute, bed: was 14, now 16",
        "Expected volume of one breath, bed: was 440 to 520 mL, now 490 to 570 mL",
        "Expected minute volume, bed: was 6.2 to 8 L/min, now 7.8 to 9.3 L/min",
        "Expected peak pressure, total, bed: was 21 cmH2O, now 23 cmH2O",
        "Expected breaths per minute, bed: was 14 to 16, now 16 to 18",
        "Expected values measured on, bed: was 12 January 2026, now 16 March 2026",
        "High-pressure alarm, bed: was 31 cmH2O, now 33 cmH2O",
        "Low-volume alarm, bed: was 300 mL, now 320 mL",
        "Low minute volume alarm, bed: was 4.5 L/min, now 5.5 L/min",
        "Last done, Change the hose filters at the machines: was 30 January 2026, now 13 March 2026",
        "Last done, Test the alarms: was 28 January 2026, now 11 March 2026",
        "Last done, Change the hose sets: was 11 January 2026, now 11 March 2026",
    };
    CHECK(lines(changes.edited) == expected);
}

TEST_CASE("between two revisions each number that follows stands beside them") {
    const Changes changes = between(read_profile(demo_profile("adult-tracheostomy")).profile,
                                    read_profile(demo_profile("adult-tracheostomy-revision-2")).profile);
    // Source: arithmetic from the two files, in the comments. Weight 50 + 0.91 x (170 - 152.4) = 66.0 kg.
    const std::vector<std::string> expected{
        "One breath for the weight, bed: was 7.3 mL/kg, now 8 mL/kg",                  // 480 / 66, 530 / 66
        "Breath-out time, bed: was 3.1 seconds, now 2.6 seconds",                      // 60/14 - 1.2, 60/16 - 1.2
        "Breath in to breath out, bed: was 1:2.6, now 1:2.1",                          // 3.086/1.2, 2.55/1.2
        "Minute volume by the settings, bed: was 6.7 L/min, now 8.5 L/min",            // 14 x 0.48, 16 x 0.53
        "Low-pressure alarm, below the peak, bed: was 9 cmH2O, now 11 cmH2O",          // 21 - 12, 23 - 12
        "Low-volume alarm, share of the usual volume, bed: was 62.5 %, now 60.4 %",    // 300/480, 320/530
        "Low minute volume alarm, share of the usual, bed: was 63.4 %, now 64.3 %",    // 4.5/7.1, 5.5/8.55
        "Next change of the neck tube: was 25 February 2026, now 28 March 2026",       // 30 days on
        "Time on batteries, Unit A: was 12 h 0 min, now 10 h 30 min",                  // 910 min x 0.8, x 0.7
        "Time on batteries, Unit B: was 5 h 45 min, now 5 h 0 min",                    // 440 min x 0.8, x 0.7
        "Share of the tested time that counts, Unit A, built in: was 80 %, now 70 %",  // tested at R1
        "Share of the tested time that counts, Unit A, slide-in: was 80 %, now 70 %",  // the same
        "Share of the tested time that counts, large pack beside the bed: was 80 %, now 70 %",
        "Share of the tested time that counts, Unit B, built in: was 80 %, now 70 %",
        "Share of the tested time that counts, Unit B, slide-in: was 80 %, now 70 %",
        "Time left in an outage: was 12 h 0 min, now 10 h 30 min",
        "Leave by, after the power fails: was 9 h 15 min, now 7 h 45 min",  // less 2 x 25 + 120 min
    };
    CHECK(lines(changes.derived) == expected);
    for (const ListedChange& change : changes.derived) {
        CHECK(change.kind == ListedChange::Kind::derived);
        CHECK(change.path.starts_with("calc."));
        const bool of_bed = change.item.text() == "bed";
        CHECK(change.prescription == (of_bed ? "P1" : ""));
    }
}

TEST_CASE("a change is told as the edit reads, and what follows from it is told too") {
    struct Row {
        const char* what;
        const char* home;
        const char* edits;
        std::vector<std::string> edited;
        std::vector<std::string> derived;
    };
    // Source: the edit itself; arithmetic in the comments.
    const std::vector<Row> rows{
        {"nothing", "adult-tracheostomy", "", {}, {}},
        {"an alarm switched off",
         "adult-tracheostomy",
         "prescriptions.0.alarms.high_rate: off",
         {"High-rate alarm, bed: was 30 breaths per minute, now OFF"},
         {}},
        // A size E cylinder, 0.28 L/psi x (2,000 - 500 psi) = 420 L; leaving takes 2 x 25 + 120 min.
        {"more oxygen",
         "adult-tracheostomy",
         "prescriptions.0.oxygen.flow: 3 L/min",
         {"Oxygen, bed: was 1 L/min, now 3 L/min"},
         {"One cylinder lasts, reserve cylinders: was 7 h 0 min, now 2 h 15 min",
          "Oxygen without wall power: was 14 h 0 min, now 4 h 30 min",
          "Time left in an outage: was 12 h 0 min, now 4 h 30 min",
          "Leave by, after the power fails: was 9 h 15 min, now 1 h 45 min"}},
        {"a faster rate",
         "adult-tracheostomy",
         "prescriptions.0.rate: 20 breaths/min\nremove: prescriptions.0.expected",
         {"Breaths per minute, bed: was 14, now 20",
          "Expected volume of one breath, bed: was 440 to 520 mL, now not recorded",
          "Expected minute volume, bed: was 6.2 to 8 L/min, now not recorded",
          "Expected peak pressure, total, bed: was 21 cmH2O, now not recorded",
          "Expected leak, bed: was 28 to 36 L/min, now not recorded",
          "Expected breaths per minute, bed: was 14 to 16, now not recorded",
          "Expected values measured by, bed: was Odile Mbanefo, respiratory therapist, now not recorded",
          "Expected values measured on, bed: was 12 January 2026, now not recorded"},
         {"Breath-out time, bed: was 3.1 seconds, now 1.8 seconds",  // 60/20 - 1.2
          "Breath in to breath out, bed: was 1:2.6, now 1:1.5",
          "Time between squeezes of the bag: was 4 seconds, now 3 seconds",  // 60/20
          "One breath for the weight, bed: was 7.3 mL/kg, now not recorded",
          "Minute volume by the settings, bed: was 6.7 L/min, now not recorded",
          "Low-volume alarm, share of the usual volume, bed: was 62.5 %, now not recorded",
          "Low minute volume alarm, share of the usual, bed: was 63.4 %, now not recorded"}},
        {"a pressure by its reference",
         "adult-tracheostomy",
         "prescriptions.1.volume_assured.pressure_most: 24 cmH2O",
         {"Highest pressure of one breath, chair: was 22 cmH2O above baseline, now 24 cmH2O above baseline"},
         {"High-pressure alarm, above the peak, chair: was 10 cmH2O, now 8 cmH2O",    // 37 - (22 + 5), 37 - (24 + 5)
          "Low-pressure alarm, below the peak, chair: was 15 cmH2O, now 17 cmH2O"}},  // 27 - 12, 29 - 12
        {"a flag, and a choice",
         "adult-tracheostomy",
         "airway.neck_tube.fenestrated: true\nairway.neck_tube.inner_tube: reusable",
         {"Neck tube, inner tube: was thrown away after use, now washed and used again",
          "Neck tube, window in the tube: was no, now yes"},
         {}},
        {"none, unknown and not recorded",
         "adult-tracheostomy",
         "medicines: unknown\nremove: power.generator\nremote_alarm: none\npower.inverter: {waveform: pure_sine}",
         {"Second alarm, sounds in the: was hall outside the bedroom, now none",
          "Second alarm, tested on: was 15 December 2025, now none", "Medicines: was none, now unknown",
          "Generator: was none, now not recorded", "Inverter, waveform: was none, now pure sine"},
         {}},
        {"items by their own names",
         "adult-tracheostomy",
         "caregivers.1.phone: 555-0158\nbatteries.2.charge_time: 8 "
         "h\nprescriptions.1.circuit.filters.0.change_interval: 14 days",
         {"Filter changed every, chair, machine outlet: was 7 days, now 14 days",
          "Time to charge, large pack beside the bed: was 9 hours, now 8 hours",
          "Phone, Colm Darrow: was 555-0157, now 555-0158"},
         {}},
        {"a word in braces in somebody's text",
         "adult-tracheostomy",
         "caregivers.1.hours: \"{was} {now} {label}\"",
         {"Hours, Colm Darrow: was weekdays 9 AM to 5 PM, now {was} {now} {label}"},
         {}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const Changes changes = with_edits(row.home, row.edits);
        CHECK(lines(changes.edited) == row.edited);
        CHECK(lines(changes.derived) == row.derived);
    }
}

TEST_CASE("a change may stand where its field may, and knows its kind and its prescription") {
    struct Row {
        const char* edits;
        const char* path;
        ListedChange::Kind kind;
        const char* prescription;
        Audiences audiences;  // as declared beside the field
    };
    using Kind = ListedChange::Kind;
    constexpr Row rows[] = {
        {"prescriptions.1.rate: 15 breaths/min", "prescriptions.1.rate", Kind::setting, "P2",
         wall | folder | crew | wallet},
        {"prescriptions.1.mode_on_screen: Target", "prescriptions.1.mode_on_screen", Kind::setting, "P2",
         wall | folder | crew},
        {"prescriptions.0.alarms.disconnect: 20 s", "prescriptions.0.alarms.disconnect", Kind::alarm, "P1",
         wall | folder},
        {"prescriptions.0.expected.measured_by: Odile", "prescriptions.0.expected.measured_by", Kind::expected, "P1",
         folder},
        {"prescriptions.0.changed_in: R2", "prescriptions.0.changed_in", Kind::order, "P1", folder},
        {"orders.prescriber: Dr. Lin", "orders.prescriber", Kind::order, "", folder | crew | wallet | fire},
        {"prescriptions.0.circuit.bore: 15 mm", "prescriptions.0.circuit.bore", Kind::other, "P1", wall | folder},
        {"suction.pressure: 100 mmHg", "suction.pressure", Kind::other, "", wall | folder | crew},
        {"devices.0.asset_number: B-4", "devices.0.asset_number", Kind::other, "", nobody},
        {"home.entry.key_access: under the mat", "home.entry.key_access", Kind::other, "", nobody},
    };
    for (const Row& row : rows) {
        CAPTURE(row.edits);
        const std::vector<ListedChange> changes = with_edits("adult-tracheostomy", row.edits).edited;
        REQUIRE(changes.size() == 1);
        CHECK(changes[0].path == row.path);
        CHECK(changes[0].kind == row.kind);
        CHECK(changes[0].prescription == row.prescription);
        CHECK(changes[0].label.audiences == row.audiences);
        REQUIRE(changes[0].now);
        CHECK(changes[0].now->audiences == row.audiences);
        CHECK((changes[0].audiences() & ~row.audiences) == 0);
    }
    // The names of caregivers are for the folder alone, so what is told about one of them is too.
    const auto shift = with_edits("adult-tracheostomy", "caregivers.1.first_name: Colman").edited;
    REQUIRE(shift.size() == 1);
    CHECK(shift[0].item.audiences == folder);
    CHECK(shift[0].audiences() == folder);
}
