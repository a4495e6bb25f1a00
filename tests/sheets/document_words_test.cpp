#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "calc/reading_grade.hpp"
#include "judged_fragment.hpp"
#include "packet/print_home_sheets.hpp"
#include "pdf/programs.hpp"
#include "sheets/checks/judged_document.hpp"
#include "sheets/checks/reading_counts.hpp"
#include "sheets/checks/syllables.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

bool fires(std::string_view rule, const Fragment& fragment) {
    const auto findings = judged_fragment(fragment);
    return std::ranges::find(findings, rule, &Finding::rule) != findings.end();
}

/// A document of one paragraph.
Document document_of(std::string text) {
    Inline piece;
    piece.text = std::move(text);
    piece.line = 1;
    Block paragraph;
    paragraph.inlines = {piece};
    Document document;
    document.sheet = document.name = "care-schedule";
    document.language = "en";
    document.template_file = "own/care-schedule.md";
    document.blocks = {paragraph};
    return document;
}

calc::TextCounts counts_of(const std::string& text) {
    const CheckedHome checked = check_home(demo_profile("adult-mask"), demo_day());
    const Household home{checked.profile, demo_day()};
    const Document document = document_of(text);
    return sheet_check::text_counts(sheet_check::JudgedDocument{document, wall, home, stationery().phrases}.sentences);
}

}  // namespace

TEST_CASE("misreadable numbers are refused, wherever they stand") {
    struct Row {
        std::string_view words;
        bool fires;
        const char* source;
    };
    constexpr const char* kList = "error-prone abbreviations list, Institute for Safe Medication Practices (as quoted)";
    constexpr const char* kBox = "tube sizes keep the zero: The Joint Commission (from memory)";
    const Row rows[] = {
        {"Give .5 mL.", true, kList},
        {"Give 0.5 mL.", false, kList},
        {"Give 5.0 mL.", true, kList},
        {"Give 5 mL.", false, kList},
        {"Give 12.50 mL.", true, kList},
        {"Give 12.05 mL.", false, kList},
        {"| a | Give 5.0 mL. |\n|---|---|\n| b | c |", true, kList},
        {"## Give 5.0 mL", true, kList},
        {"> [!WARNING]\n> Give 5.0 mL.", true, kList},
        {"The 8.0 mm tube.", false, kBox},
        {"The 8.0\u00A0mm tube.", false, kBox},
        {"Catheter 10.0 Fr.", false, kBox},
        {"Below <90.", true, kList},
        {"Rate \\>30.", true, kList},
        {"More than 30.", false, kList},
        {"Give 10mL.", true, "10mL was read as 100 mL: the same list"},
        {"Give 10 mL.", false, kList},
        {"Pressure 20cmH2O.", true, kList},
        {"CO2 and SpO2 and P1.", false, "no number, but a name"},
        {"Record DEMO-1.", false, "no number, but a name"},
        {"Call 555-0143.", false, "a telephone number"},
        {"On 12 Jan 2026 at 10:30 PM.", false, "a date and a time"},
        {"Chapter 1.10.2", false, "no decimal number"},
        {"It stopped. 5 minutes later it ran.", false, "a full stop"},
        {"Give 1,000 mL.", false, kList},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CAPTURE(row.source);
        CHECK(fires("misreadable-number", {.sheet = "care-schedule", .words = row.words}) == row.fires);
    }
}

TEST_CASE("a measured number stands with its unit, or in a row or table that names it") {
    struct Row {
        std::string_view words;
        bool fires;
    };
    const Row rows[] = {
        {"Cuff: {{airway.neck_tube.cuff_order.pressure_number}}.", true},
        {"Cuff: {{airway.neck_tube.cuff_order.pressure}}.", false},
        {"Cuff: {{airway.neck_tube.cuff_order.pressure_number}} cmH2O.", false},
        {"| Cuff, cmH2O | b |\n|---|---|\n| {{airway.neck_tube.cuff_order.pressure_number}} | c |", false},
        {"| Cuff | b |\n|---|---|\n| {{airway.neck_tube.cuff_order.pressure_number}} | c |", true},
        {"| Cuff | b |\n|---|---|\n| {{airway.neck_tube.cuff_order.pressure_number}} | cmH2O |", false},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CHECK(fires("misreadable-number", {.sheet = "care-schedule", .words = row.words}) == row.fires);
    }
}

TEST_CASE("free text of a profile is judged too, and a private one is not repeated") {
    const Fragment fragment{.edits = "home.entry.note: third door, about 5.0 m\n",
                            .sheet = "responder-sheet",
                            .audience = "crew",
                            .words = "Door: {{home.entry.note}}."};
    const auto findings = judged_fragment(fragment);
    const auto found = std::ranges::find(findings, "misreadable-number", &Finding::rule);
    REQUIRE(found != findings.end());
    CHECK(found->marks.front().field == "home.entry.note");
    CHECK(found->message == "\"{home.entry.note}\" can be misread as a number ten times as large.");
}

TEST_CASE("error-prone words are named with what to write") {
    struct Row {
        std::string_view words;
        std::string_view instead;  ///< empty: silent
    };
    const Row rows[] = {
        {"Suction q4h.", "every so many hours"},
        {"Give it QD.", "daily"},
        {"Pulse 80 bpm.", "breaths per minute or beats per minute"},
        {"Plug it into AC.", "wall power or assist/control"},
        {"Mode A/C.", "wall power or assist/control"},
        {"Vent the feeding tube.", "open the feeding tube to let air out"},
        {"Keep the vent hole open.", "exhalation port"},
        {"Check the sats.", "oxygen level"},
        {"Give 5 cc.", "mL"},
        {"Suction every 4 hours.", ""},
        {"Pulse 80 beats per minute.", ""},
        {"Plug it into the wall.", ""},
        {"Open the feeding tube to let air out.", ""},
        {"On Sat 14 March he sat up.", "oxygen level"},  // a plain word that is also an abbreviation: only a warning
        {"On Saturday.", ""},
        {"Screen says {{#prescriptions}}{{mode_on_screen}} {{/prescriptions}}.", ""},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        const auto findings = judged_fragment({.sheet = "care-schedule", .words = row.words});
        const auto found = std::ranges::find(findings, "error-prone-words", &Finding::rule);
        CHECK((found != findings.end()) == !row.instead.empty());
        if (found == findings.end()) continue;
        CHECK(found->severity == Severity::warn);
        const auto instead = std::ranges::find(found->numbers, "instead", &std::pair<std::string, std::string>::first);
        REQUIRE(instead != found->numbers.end());
        CHECK(instead->second == row.instead);
    }
}

TEST_CASE("words have the syllables that one hears") {
    // Counts from memory of spoken American English; the grade over whole texts is compared with another program below.
    struct Row {
        const char* word;
        int syllables;
    };
    const Row rows[] = {{"the", 1},      {"chest", 1},    {"take", 1},       {"takes", 1},    {"changed", 1},
                        {"table", 2},    {"machine", 2},  {"oxygen", 3},     {"pressure", 2}, {"breathing", 2},
                        {"suction", 2},  {"catheter", 3}, {"humidifier", 5}, {"alarm", 2},    {"battery", 3},
                        {"minutes", 2},  {"squeeze", 1},  {"emergency", 4},  {"needed", 2},   {"hours", 1},
                        {"provider", 3}, {"spare", 1},    {"valve", 1},      {"people", 2},   {"ventilator", 4},
                        {"catches", 2},  {"idea", 3},     {"via", 2},        {"area", 3},     {"I", 1}};
    for (const Row& row : rows) CHECK_MESSAGE(sheet_check::syllables(row.word) == row.syllables, std::string{row.word});
}

TEST_CASE("two texts have the grade that was worked out by hand") {
    // Flesch-Kincaid: 0.39 x words / sentences + 11.8 x syllables / words - 15.59 (Kincaid 1975, from memory).
    const calc::TextCounts plain = counts_of("If the chest does not rise, use the bag now.");
    CHECK(plain.words == 10);
    CHECK(plain.syllables == 10);
    CHECK(*calc::reading_grade(plain) == doctest::Approx(0.11).epsilon(0.01));
    const calc::TextCounts hard = counts_of(
        "Disconnect the patient from the ventilator and initiate manual ventilation utilizing the resuscitation bag.");
    CHECK(hard.words == 14);
    CHECK(std::abs(hard.syllables - 35) <= 1);
}

TEST_CASE("the grade agrees with that of GNU style") {
    // `style` of GNU diction counts in its own way; two counters differ by up to a grade on short sentences.
    const std::string texts[] = {
        "Look at the person first. Is the chest moving? Take the hose off. Put the breathing bag on the tube. Squeeze "
        "slowly and watch the chest rise. If it does not rise, call for help and turn this card over. Keep squeezing "
        "until help comes. Do not leave the room. Tell them the address and the door. Write down the time. When the "
        "person is calm and pink, put the hose back on the tube. Stay at the bed and watch for ten minutes. Call the "
        "provider and tell them what happened. Check that the alarm works again before you sit down. Charge the "
        "battery.",
        "The therapist visits the home every three months and checks the machine with the family. Before each visit, "
        "write down all alarms of the past week with the time and what helped. Batteries lose strength as they grow "
        "older, so the provider times them once a year on the settings that are used at home. If the power company "
        "announces an outage, charge every battery on the day before and move the spare machine beside the bed. A "
        "neighbor who knows the plan can carry equipment and answer the telephone. Keep the folder where visitors of "
        "the household can find it without asking, and replace old papers as soon as new ones arrive. After a change "
        "of "
        "the prescription, two people compare each number on the new card with the screen of the machine.",
    };
    for (const std::string& text : texts) {
        const trial::Scratch folder;
        folder.save("text", text + "\n");
        const trial::Ran ran = folder.run("style text");
        REQUIRE(ran.status == 0);
        const auto at = ran.out.find("Kincaid:");
        REQUIRE(at != std::string::npos);
        const double theirs = std::stod(ran.out.substr(at + 8));
        const double ours = *calc::reading_grade(counts_of(text));
        CAPTURE(ran.out);
        CHECK_MESSAGE(std::abs(ours - theirs) < 1.0, ours << " and " << theirs);
    }
}

TEST_CASE("a hard text is warned about on family sheets, a long sentence on emergency sheets") {
    std::string hard;
    for (int time = 0; time < 12; ++time)
        hard += "Caregivers document every significant deviation immediately and notify the responsible organization. ";
    std::string plain;
    for (int time = 0; time < 20; ++time) plain += "Look at the chest. Call for help now. ";
    const std::string_view twenty =
        "1. one two three four five six seven eight nine ten one two three four five six seven eight nine ten.";
    const std::string twenty_one = std::string{twenty.substr(0, twenty.size() - 1)} + " more.";
    struct Row {
        std::string_view sheet;
        std::string_view audience;
        std::string_view words;
        bool fires;
    };
    const Row rows[] = {
        {"care-schedule", "wall", hard, true},
        {"care-schedule", "folder", hard, true},
        {"care-schedule", "wall", plain, false},
        {"verification", "folder", hard, false},     // for the clinic
        {"notice-letters", "utility", hard, false},  // for an office
        {"care-schedule", "wall", "Caregivers document every significant deviation immediately.",
         false},  // too few words
    };
    const Row lengths[] = {
        {"bedside-card", "wall", twenty, false},
        {"bedside-card", "wall", twenty_one, true},
        {"responder-sheet", "crew", twenty_one, true},
        {"care-schedule", "wall", twenty_one, false},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.sheet});
        CAPTURE(std::string{row.words});
        CHECK(fires("family-text-hard-to-read", {.sheet = row.sheet, .audience = row.audience, .words = row.words}) ==
              row.fires);
    }
    for (const Row& row : lengths) {
        CAPTURE(std::string{row.sheet});
        CHECK(fires("emergency-sentence-too-long",
                    {.sheet = row.sheet, .audience = row.audience, .words = row.words}) == row.fires);
    }
}
