#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "judged_fragment.hpp"
#include "packet/print_home_sheets.hpp"
#include "rules/explain.hpp"
#include "rules/rule_book.hpp"
#include "sheets/checks/checks.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr std::string_view kLaryngectomy = "airway.upper: laryngectomy\nremove: airway.neck_tube.speaking_valve\n";
constexpr std::string_view kBlocked = "airway.upper: blocked\nremove: airway.neck_tube.speaking_valve\n";
constexpr std::string_view kFresh = "airway.neck_tube.opening_made_on: 2026-01-25\n";
constexpr std::string_view kNotHealed = "airway.neck_tube.opening_healed: false\n";
constexpr std::string_view kOxygen = "oxygen: {use: as_needed, entry: device_inlet, delivery: continuous}\n";
constexpr std::string_view kNoOxygen = {};  // the home with a mask has none
constexpr std::string_view kAlarmOffByOrder =
    "prescriptions.0.alarms_off_by_order: [{alarm: low_minute_volume, by: Dr Tamsin Okoro, date: 2026-01-10}]\n";

struct Row {
    std::string_view words;
    bool fires;
    std::string_view home = "adult-tracheostomy";
    std::string_view edits = {};
    std::string_view sheet = "bedside-card";
    std::string_view audience = "wall";
};

bool fires(std::string_view rule, const Row& row) {
    const auto findings = judged_fragment({row.home, row.edits, row.sheet, row.audience, row.words});
    return std::ranges::find(findings, rule, &Finding::rule) != findings.end();
}

void check_rows(std::string_view rule, std::initializer_list<Row> rows) {
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.edits});
        CHECK(fires(rule, row) == row.fires);
    }
}

}  // namespace

TEST_CASE("every rule of finished sheets fires on its example and not on the near one") {
    std::size_t examples = 0;
    for (const RuleText& rule : rule_book()) {
        if (rule.judges != Judges::document) continue;
        CAPTURE(std::string{rule.name});
        const RuleExample& example = rule.example;
        ++examples;
        const auto judged = [&](ExampleFragment fragment) {
            const std::string words = written_out(fragment);
            return judged_fragment({example.home, example.edits, example.sheet, example.audience, words, example.on});
        };
        const auto findings = judged(example.fires);
        const auto found = std::ranges::find(findings, rule.name, &Finding::rule);
        REQUIRE_MESSAGE(found != findings.end(), rules_of(findings));
        CHECK(found->severity == rule.severity);
        CHECK_MESSAGE(found->message.find_first_of("{}") == std::string::npos, found->message);
        CHECK(found->marks.front().file == "own/" + std::string{example.sheet} + ".md");
        CHECK(found->marks.front().place.line >= kFirstLine);
        CHECK(!found->numbers.empty());
        CHECK(rules_of(judged(example.silent)) == "");
        const std::string text = explain_rule(rule.name).value_or("");
        CHECK(text.find("these words on " + std::string{example.sheet}) != std::string::npos);
    }
    CHECK(examples == 13);
}

TEST_CASE("a rule of finished sheets has one check, and a check has its rule") {
    std::set<std::string_view> checked;
    for (const auto& [name, check] : sheet_check::all_checks()) {
        CAPTURE(std::string{name});
        CHECK((check != nullptr));
        CHECK(checked.insert(name).second);
        REQUIRE(find_rule(name) != nullptr);
        CHECK(find_rule(name)->judges == Judges::document);
    }
    for (const RuleText& rule : rule_book())
        if (rule.judges == Judges::document) CHECK_MESSAGE(checked.contains(rule.name), std::string{rule.name});
}

// Steps. What is right and wrong in a step is common practice, no source, except where one stands.

TEST_CASE("no step tells anyone to leave an alarm off") {
    check_rows("alarm-off-as-instruction", {
                                               {"1. Leave the alarm off.", true},
                                               {"1. Turn the low pressure alarm off.", true},
                                               {"1. Switch off the high leak alarm.", true},
                                               {"1. Keep the alarm silenced.", true},
                                               {"1. Alarm off. Then look.", true},
                                               {"1. Silence the alarm from the kitchen.", true},
                                               {"1. Silence the alarm and go for help.", true},
                                               {"1. Disable the disconnect alarm.", true},
                                               {"1. Silence the alarm. Stay at the bed.", false},
                                               {"1. Silence the alarm while you stand at the bed.", false},
                                               {"1. Never leave an alarm off.", false},
                                               {"1. Do not turn an alarm off.", false},
                                               {"1. The alarm stays on, day and night.", false},
                                               {"1. Machine off: start with the alarm for low pressure.", false},
                                           });
}

TEST_CASE("an alarm that the prescriber wants off may be called off, and no other") {
    check_rows("alarm-off-as-instruction",
               {
                   {"1. Leave the low minute volume alarm off.", false, "adult-tracheostomy", kAlarmOffByOrder},
                   {"1. Leave the low volume alarm off.", true, "adult-tracheostomy", kAlarmOffByOrder},
                   {"1. Leave the low minute volume alarm off.", true},
               });
}

TEST_CASE("no mouth step where the mouth does not lead to the lungs") {
    // Source: McGrath and others, UK guideline for tracheostomy emergencies, Anaesthesia 2012: laryngectomy has its own
    // steps, with oxygen and breaths at the neck.
    check_rows(
        "mouth-step-without-mouth-route",
        {
            {"1. Cover the hole.", true, "adult-tracheostomy", kLaryngectomy},
            {"1. Cover the hole.", true, "adult-tracheostomy", kBlocked},
            {"1. Cover the hole.", false},
            {"1. Still out: **cover the hole. Bag by mouth and nose.**", true, "adult-tracheostomy", kBlocked},
            {"1. Bag over the face.", true, "adult-tracheostomy", kBlocked},
            {"1. Mouth-to-mouth, two breaths.", true, "adult-tracheostomy", kBlocked},
            {"1. Give breaths by mouth.", true, "adult-tracheostomy", kBlocked},
            {"1. Oxygen to the face.", true, "adult-tracheostomy", kBlocked},
            {"1. Oxygen to the face and to the neck.", false, "adult-tracheostomy", kBlocked},
            {"1. Small mask over the hole. Bag there only.", false, "adult-tracheostomy", kBlocked},
            {"1. Never cover the hole.", false, "adult-tracheostomy", kLaryngectomy},
            {"1. No breaths by mouth: it does not lead to the lungs.", false, "adult-tracheostomy", kBlocked},
            {"1. Suction the mouth. Wipe the nose.", false, "adult-tracheostomy", kBlocked},
            {"| Mouth route | none |\n|---|---|\n| Face | washed daily |", false, "adult-tracheostomy", kBlocked},
        });
}

TEST_CASE("no step puts a tube into a fresh opening") {
    check_rows("reinsertion-step-for-fresh-opening",
               {
                   {"1. Push the spare tube in.", true, "adult-tracheostomy", kFresh},
                   {"1. Push the spare tube in.", true, "adult-tracheostomy", kNotHealed},
                   {"1. Push the spare tube in.", false},
                   {"1. **Spare 8.0 mm in,** guide out at once.", true, "adult-tracheostomy", kFresh},
                   {"1. Change the tube now, as taught.", true, "adult-tracheostomy", kFresh},
                   {"1. Reinsert the tube.", true, "adult-tracheostomy", kFresh},
                   {"1. Put a new tube back.", true, "adult-tracheostomy", kFresh},
                   {"1. Do not push a tube in. Call now.", false, "adult-tracheostomy", kFresh},
                   {"1. Never put a tube back.", false, "adult-tracheostomy", kFresh},
                   {"1. Put a new inner tube in.", false, "adult-tracheostomy", kFresh},
                   {"1. Put the breathing bag on the tube.", false, "adult-tracheostomy", kFresh},
                   {"1. The surgeon will change the tube.", false, "adult-tracheostomy", kFresh},
                   // The fifteenth day: 14 days is no longer below 14.
                   {"1. Push the spare tube in.", false, "adult-tracheostomy",
                    "airway.neck_tube.opening_made_on: 2026-01-20\n"},
                   {"1. Push the spare tube in.", true, "adult-tracheostomy",
                    "airway.neck_tube.opening_made_on: 2026-01-21\n"},
               });
}

TEST_CASE("a step acts only on parts that the home has") {
    check_rows("step-does-not-fit-home",
               {
                   {"1. Fill the cuff.", true, "adult-mask"},
                   {"1. Check the cuff.", true, "child-tracheostomy"},
                   {"1. Fill the cuff.", false, "adult-tracheostomy"},
                   {"1. Cuff down. Squeeze gently.", true, "child-tracheostomy"},
                   {"1. Change the inner tube.", true, "child-tracheostomy"},
                   {"1. Change the inner tube.", false, "adult-tracheostomy"},
                   {"1. **Inner tube out,** new one in.", true, "child-tracheostomy"},
                   {"1. Suction the neck tube.", true, "adult-mask"},
                   {"1. Suction the neck tube.", false, "child-tracheostomy"},
                   {"1. Suction the mouth.", false, "adult-mask"},
                   {"1. Turn on the oxygen.", true, "adult-mask", kNoOxygen},
                   {"1. Turn on the oxygen.", false, "adult-tracheostomy"},
                   {"1. Look at the oxygen level.", false, "adult-mask", kNoOxygen},
                   {"1. Mask on, oxygen level checked.", false, "adult-mask", kNoOxygen},
                   {"1. Is the exhalation port open?", false, "adult-mask"},
                   {"1. Uncover the exhalation port.", true, "child-tracheostomy"},
                   {"1. Uncover the exhalation port.", false, "adult-tracheostomy"},
                   {"1. Plug in the small lines.", true, "adult-tracheostomy"},
                   {"1. Plug in the small lines.", false, "child-tracheostomy"},
                   {"1. Fit the HME.", true, "adult-mask"},
                   {"1. Fit the HME.", false, "adult-tracheostomy"},
                   {"1. Start the backup machine.", true, "child-tracheostomy"},
                   {"1. Start the backup machine.", false, "adult-tracheostomy"},
                   // A bare word is no step.
                   {"| Cuff | none |\n|---|---|\n| Inner tube | none |", false, "child-tracheostomy"},
                   {"1. No cuff, no inner tube, no oxygen at home.", false, "child-tracheostomy"},
               });
}

TEST_CASE("with weak muscles breaths and cough help come before oxygen") {
    check_rows("oxygen-before-breaths",
               {
                   {"1. Turn up the oxygen.", true},
                   {"1. Turn up the oxygen.\n2. Breathing bag.", true},
                   {"1. Breathing bag.\n2. Turn up the oxygen.", false},
                   {"1. Suction.\n2. Give more oxygen.", false},
                   {"1. Use the cough machine, then give oxygen.", false},
                   {"1. Give oxygen, then use the cough machine.", true},
                   // What stands below another heading is another ladder.
                   {"1. Breathing bag.\n\n## Low oxygen level\n\n1. Give oxygen.", true},
                   {"1. Breaths before oxygen.", false},
                   {"1. Do not turn up the oxygen first.", false},
                   {"1. Oxygen level below 90 %? Look at the probe.", false},
                   {"1. Give oxygen.", false, "child-tracheostomy", "diagnosis.why_ventilated: lung_disease\n"},
               });
}

TEST_CASE("no step raises oxygen that nobody ordered") {
    check_rows("oxygen-before-breaths",
               {
                   {"1. Breathing bag.\n2. Give oxygen.", true, "adult-mask", kNoOxygen},
                   {"1. Breathing bag.\n2. Give oxygen.", false, "adult-mask", kOxygen},
                   {"1. Breathing bag.\n2. Give oxygen if ordered.", false, "adult-mask", kNoOxygen},
               });
}

TEST_CASE("the maker's run time is never printed") {
    check_rows("rated-battery-time-printed", {
                                                 {"The battery is rated for 300 minutes.", true},
                                                 {"The maker says 5 hours.", true},
                                                 {"It lasts 5 hours, rated.", false},  // across a comma: two thoughts
                                                 {"Tested: 220 minutes.", false},
                                                 {"It ran for 220 minutes on 15 December.", false},
                                                 {"The inverter is rated 1,000 W.", false},
                                             });
}

TEST_CASE("the time between squeezes stays within the limits for the age") {
    // Source: American Heart Association 2020 (training copies): adult every 6 s; child and infant every 2 to 3 s. A
    // set rate may shorten an adult's to 3 s (common practice).
    check_rows("squeeze-interval-out-of-range", {
                                                    {"1. Squeeze every 6 seconds.", false},
                                                    {"1. Squeeze every 3 seconds.", false},
                                                    {"1. Squeeze every 7 seconds.", true},
                                                    {"1. Squeeze every 2 seconds.", true},
                                                    {"1. Squeeze slowly every 5 to 8 seconds.", true},
                                                    {"1. Squeeze the bag every 5-6 seconds.", false},
                                                    {"1. Squeeze every 3 seconds.", false, "child-tracheostomy"},
                                                    {"1. Squeeze every 2 to 3 seconds.", false, "child-tracheostomy"},
                                                    {"1. Squeeze every 4 seconds.", true, "child-tracheostomy"},
                                                    {"1. Squeeze every {{squeeze}}.", false, "child-tracheostomy"},
                                                    {"1. Squeeze every {{squeeze}}.", false},
                                                    {"1. Look every 10 seconds.", false},
                                                });
}

TEST_CASE("no sheet restates a treatment limit") {
    const std::string_view crew = "responder-sheet";
    check_rows("treatment-limit-restated",
               {
                   {"DNR order on file.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"Do not resuscitate.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"No CPR, please.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"Not for intubation.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"Comfort measures only.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"Full code.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"She does not want CPR.", true, "adult-tracheostomy", "", crew, "crew"},
                   {"A signed order exists. It decides about CPR, not this sheet.", false, "adult-tracheostomy", "",
                    crew, "crew"},
                   {"No limiting order is recorded.", false, "adult-tracheostomy", "", crew, "crew"},
                   {"No breathing and no movement? Start CPR as taught.", false},
                   {"No CPAP in place of this support.", false, "adult-tracheostomy", "", crew, "crew"},
                   // The profile's own free text.
                   {"Note: {{airway.upper_note}}.", true, "adult-tracheostomy", "airway.upper_note: do not intubate\n",
                    crew, "crew"},
                   {"Note: {{airway.upper_note}}.", false, "adult-tracheostomy",
                    "airway.upper_note: hard to intubate\n", crew, "crew"},
               });
}

TEST_CASE("no sheet gives away a code that opens the home") {
    check_rows("private-fact-in-wrong-place", {
                                                  {"The gate code is 4471.", true},
                                                  {"Key box by the door, code 4471.", true},
                                                  {"Keypad 4471, then the star.", true},
                                                  {"Door: ask dispatch for the code.", false},
                                                  {"Is this code in the folder index?", false},
                                                  {"The machine shows error code 211.", false},
                                                  {"Door on the left, room 211.", false},
                                                  {"Call 555-0143 at the door.", false},
                                                  {"{{home.entry.note}}", true, "adult-tracheostomy",
                                                   "home.entry.note: side door code 4471\n", "responder-sheet", "crew"},
                                              });
}
