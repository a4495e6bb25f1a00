#include <doctest/doctest.h>
#include <fmt/format.h>

#include "packet/print_home_sheets.hpp"
#include "profile/read_profile.hpp"
#include "sheets/home_data.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// The template data of a demo home with edits, asked by dotted names.
class Data {
  public:
    Data(std::string_view home, std::string_view edits)
        : profile_{read_profile(edits.empty() ? demo_profile(home) : edited_profile(home, edits)).profile},
          household_{profile_, demo_day()},
          data_{home_data(household_, {stationery().words, stationery().region}, {})} {}

    /// "yes", "no", "missing", or the text with blanks.
    std::string said(const std::string& name) const {
        const TemplateData* at = &data_;
        for (const std::string& step : split(name, '.')) {
            if (const TemplateData::Items* items = at->items()) {
                at = &items->at(std::stoul(step));
                continue;
            }
            REQUIRE_MESSAGE(at->object() != nullptr, name);
            const auto found = at->object()->find(step);
            REQUIRE_MESSAGE(found != at->object()->end(), name << ": " << step);
            at = &found->second;
        }
        if (at->missing()) return "missing";
        if (at->flag()) return *at->flag() ? "yes" : "no";
        if (at->items()) return fmt::format("{} items", at->items()->size());
        REQUIRE_MESSAGE(at->value() != nullptr, name);
        return plain_blanks(at->value()->text());
    }

  private:
    Profile profile_;
    Household household_;
    TemplateData data_;
};

struct Row {
    const char* home;
    const char* edits;
    const char* name;
    const char* expected;
    const char* source;
};

void check_rows(std::span<const Row> rows) {
    for (const Row& row : rows) {
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.edits});
        CAPTURE(std::string{row.name});
        CAPTURE(std::string{row.source});
        CHECK(Data(row.home, row.edits).said(row.name) == std::string{row.expected});
    }
}

constexpr const char* kAdult = "adult-tracheostomy";
constexpr const char* kChild = "child-tracheostomy";
constexpr const char* kMask = "adult-mask";

}  // namespace

TEST_CASE("each pressure can be read both ways: total, and above baseline") {
    // Peak is pressure above baseline plus baseline: definition.
    const Row rows[] = {
        {kAdult, "", "prescriptions.0.peak", "21 cmH2O", "16 + 5"},
        {kAdult, "", "prescriptions.0.support", "16 cmH2O", "as ordered"},
        {kAdult, "prescriptions.0.inspiratory_pressure: 16.5 cmH2O", "prescriptions.0.peak", "21.5 cmH2O", "16.5 + 5"},
        {kAdult, "prescriptions.0.inspiratory_pressure: 0.1 cmH2O\nprescriptions.0.baseline_pressure: 0.2 cmH2O",
         "prescriptions.0.peak", "0.3 cmH2O", "0.1 + 0.2 must not read 0.30000000000000004"},
        {kAdult, "prescriptions.0.pressure_reference: total\nprescriptions.0.inspiratory_pressure: 21 cmH2O",
         "prescriptions.0.peak", "21 cmH2O", "as ordered"},
        {kAdult, "prescriptions.0.pressure_reference: total\nprescriptions.0.inspiratory_pressure: 21 cmH2O",
         "prescriptions.0.support", "16 cmH2O", "21 less 5"},
        {kAdult, "", "prescriptions.1.pressure_range", "14 to 22 cmH2O", "as ordered"},
        {kAdult, "", "prescriptions.1.peak_range", "19 to 27 cmH2O", "14 + 5 to 22 + 5"},
        {kAdult, "", "prescriptions.1.peak", "missing", "a range has no single peak"},
        {kAdult, "", "prescriptions.1.any_peak", "19 to 27 cmH2O", "the same under one name"},
        {kAdult, "remove: prescriptions.0.baseline_pressure", "prescriptions.0.peak", "missing",
         "no sum of one number"},
        {kAdult, "prescriptions.0.baseline_pressure: 5 hPa", "prescriptions.0.peak", "missing",
         "settings are never converted on paper"},
    };
    check_rows(rows);
}

TEST_CASE("the bag is squeezed at the pace of the order, within what is taught for the age") {
    const Row rows[] = {
        {kAdult, "", "squeeze", "4 seconds", "der: 60 / 14 = 4.3, to whole seconds"},
        {kAdult, "prescriptions.0.rate: 10 breaths/min\nprescriptions.1.rate: 10 breaths/min", "squeeze", "6 seconds",
         "pub: adult every 6 s, AHA 2020 (training copies)"},
        {kAdult, "prescriptions.0.rate: 10 breaths/min", "squeeze", "4 seconds", "the faster of both: 14"},
        {kAdult, "prescriptions.0.rate: 40 breaths/min", "squeeze", "3 seconds", "der: kept from becoming too fast"},
        {kChild, "", "squeeze", "3 seconds", "pub: 20 a minute is every 3 s, AHA 2020 (training copies)"},
        {kChild, "prescriptions.0.rate: 30 breaths/min", "squeeze", "2 seconds", "pub: 30 a minute is every 2 s"},
    };
    check_rows(rows);
}

TEST_CASE("paper promises half the free minutes, five at most") {
    // Common practice, no source.
    const std::string minutes = "dependence.unaided_awake: {kind: minutes, time: ";
    const auto with = [&](const char* time) { return minutes + time + ", tested_on: 2025-12-18}"; };
    struct Case {
        std::string edits;
        const char* minutes;
        const char* none;
        const char* hours;
        const char* time;
    };
    const Case cases[] = {
        {with("7 min"), "yes", "no", "no", "3 minutes"},
        {with("30 min"), "yes", "no", "no", "5 minutes"},
        {with("2 min"), "yes", "no", "no", "1 minute"},
        {with("1 min"), "no", "yes", "no", "missing"},
        {with("10 min"), "yes", "no", "no", "5 minutes"},
        {"dependence.unaided_awake: none", "no", "yes", "no", "missing"},
        {"dependence.unaided_awake: unknown", "no", "yes", "no", "missing"},
        {"remove: dependence.unaided_awake", "no", "yes", "no", "missing"},
        {"dependence.unaided_awake: {kind: hours, time: 10 h, tested_on: 2025-12-18}", "no", "no", "yes", "missing"},
    };
    for (const Case& row : cases) {
        CAPTURE(row.edits);
        const Data data{kMask, row.edits};
        CHECK(data.said("awake_minutes") == row.minutes);
        CHECK(data.said("awake_none") == row.none);
        CHECK(data.said("awake_hours") == row.hours);
        CHECK(data.said("alone_awake") == row.time);
    }
}

TEST_CASE("the setting check accepts what was measured at set-up, or the usual tolerance of one number") {
    // Tolerances: common practice, no source. 10 % of a pressure, 2 cmH2O at least; 1 breath; 15 % of a minute volume.
    const Row rows[] = {
        {kAdult, "", "prescriptions.0.accepted_volume", "440 to 520 mL", "as measured"},
        {kAdult, "", "prescriptions.0.accepted_peak", "19 to 23 cmH2O", "der: 21 -/+ 2.1, to whole ones as 21 is"},
        {kAdult, "", "prescriptions.0.accepted_minute_volume", "6.2 to 8 L/min", "as measured"},
        {kAdult, "", "prescriptions.0.accepted_rate", "14 to 16 breaths per minute", "as measured"},
        {kAdult, "", "prescriptions.0.accepted_rate_brief", "14 to 16 per minute", "as measured"},
        {kAdult, "", "prescriptions.0.accepted_leak", "28 to 36 L/min", "as measured"},
        {kAdult, "prescriptions.0.expected.tidal_volume: {from: 450 mL, to: 450 mL}", "prescriptions.0.accepted_volume",
         "405 to 495 mL", "der: 450 -/+ 45"},
        {kAdult, "prescriptions.0.expected.total_rate: {from: 14 breaths/min, to: 14 breaths/min}",
         "prescriptions.0.accepted_rate", "13 to 15 breaths per minute", "der: 14 -/+ 1"},
        {kAdult, "remove: prescriptions.0.expected.leak", "prescriptions.0.accepted_leak", "missing", "not measured"},
    };
    check_rows(rows);
}

TEST_CASE("each card names the unit that holds its prescription, and the one that steps in") {
    const Row rows[] = {
        {kAdult, "", "prescriptions.0.unit", "Unit A", "at the bed"},
        {kAdult, "", "prescriptions.0.slot", "1", "its only slot"},
        {kAdult, "", "prescriptions.0.spare_units", "1 items", "the chair's unit has it in slot 2"},
        {kAdult, "", "prescriptions.0.spare_units.0.unit", "Unit B", "the same"},
        {kAdult, "", "prescriptions.0.spare_units.0.slot", "2", "the same"},
        {kAdult, "", "prescriptions.1.unit", "Unit B", "on the chair"},
        {kAdult, "", "prescriptions.1.slot", "1", "the same"},
        {kAdult, "", "prescriptions.1.spare_units", "0 items", "no other unit holds it"},
        {kAdult, "", "prescriptions.0.others", "1 items", "the chair's card"},
        {kAdult, "", "prescriptions.0.others.0.tag", "CHAIR", "the same"},
        {kAdult, "", "prescriptions.0.tag", "BED", "place in capitals"},
        {kAdult, "", "prescriptions.0.used", "8 PM to 9 AM", "as written"},
        {kAdult, "", "prescriptions.0.sleeping", "yes", "state: both"},
        {kAdult, "", "prescriptions.1.sleeping", "no", "state: awake"},
        {kAdult, "remove: devices.0.slots", "prescriptions.0.unit", "Unit B", "the only one left"},
    };
    check_rows(rows);
}

TEST_CASE("the way of air, the opening and the valve lead the rescue steps") {
    const Row rows[] = {
        {kAdult, "", "mouth_open", "yes", "difficult is still open"},
        {kAdult, "airway.upper: blocked", "mouth_blocked", "yes", "neck only"},
        {kAdult, "airway.upper: laryngectomy", "mouth_blocked", "yes", "neck only"},
        {kAdult, "airway.upper: laryngectomy", "mouth_open", "no", "no breath by mouth"},
        {kAdult, "airway.upper: unknown", "mouth_unknown", "yes", "neither may be promised"},
        {kAdult, "airway.upper: unknown", "mouth_open", "no", "the same"},
        {kAdult, "", "opening_healed", "yes", "made 2021"},
        {kAdult, "airway.neck_tube.opening_made_on: 2026-02-01", "opening_fresh", "yes", "two days old"},
        {kAdult, "airway.neck_tube.opening_healed: false", "opening_fresh", "yes", "said so"},
        {kAdult, "remove: airway.neck_tube.opening_healed", "opening_fresh", "yes", "nobody said that it healed"},
        {kAdult, "", "valve_or_cap", "no", "neither is allowed"},
        {kMask, "", "uses_neck_tube", "no", "mask and mouthpiece"},
        {kMask, "", "mouth_open", "yes", "no neck tube"},
        {kMask, "", "uses_mask", "yes", "at night"},
        {kAdult, "", "small_tube", "no", "8.0 mm"},
        {kChild, "", "small_tube", "yes", "4.0 mm"},
        {kAdult, "", "age", "47 years", "der: 11 February 1978 to 3 February 2026"},
        {kAdult, "", "is_child", "no", "47 years"},
        {kChild, "", "is_child", "yes", "under 18"},
        {kAdult, "", "bag_oxygen", "8 liters per minute", "as ordered"},
        {kAdult, "emergency_equipment.oxygen_for_bag: false", "bag_oxygen", "missing", "no oxygen for the bag"},
        {kAdult, "", "has_backup", "yes", "Unit B"},
        {kAdult, "", "backup_label", "Unit B", "the same"},
        {kChild, "", "has_backup", "no", "one unit"},
    };
    check_rows(rows);
}

TEST_CASE("a calculated value may stand only where all that it is made from may") {
    const ReadResult read = read_profile(demo_profile(kAdult));
    const Household household{read.profile, demo_day()};
    const TemplateData data = home_data(household, {stationery().words, stationery().region}, {});
    const TemplateData& age = data.object()->at("age");
    REQUIRE(age.value() != nullptr);
    CHECK((age.value()->audiences & wall) == 0);  // the birth date may not hang on the wall, nor may the age
    CHECK((age.value()->audiences & utility) == 0);
    CHECK((age.value()->audiences & crew) != 0);
    CHECK(age.value()->field == "calc.age");
}
