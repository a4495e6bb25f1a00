#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "edited_home.hpp"
#include "rules/explain.hpp"
#include "rules/field_index.hpp"
#include "rules/masking.hpp"
#include "rules/report_json.hpp"
#include "rules/report_text.hpp"

using namespace ventfolio;
using ventfolio::testing::Judged;
using ventfolio::testing::judged_home;

namespace {

Judged three_faults() {
    return judged_home("adult-tracheostomy",
                       "prescriptions.0.alarms.high_pressure: 20 cmH2O\n"
                       "person.weight_date: 2026-03-01\n"
                       "airway.neck_tube.spare_same.size: 7.5 mm\n"
                       "devices.1.on_chair: false\n");
}

}  // namespace

TEST_CASE("findings read like a good compiler's messages") {
    const Judged judged = three_faults();
    CHECK(
        report_text(judged.findings, {&judged.source, 1}) ==
        R"(adult-tracheostomy.yaml:24:16: refuse: The date of the weight says 2026-03-01. That cannot be: born 1978-02-11, printing for 2026-02-03. [impossible-date]
   24 |   weight_date: 2026-03-01
      |                ^~~~~~~~~~ after the print date
   22 |   birth_date: 1978-02-11
      |               ^~~~~~~~~~
  why:    A date that cannot be puts the wrong age, the wrong due date or the wrong person on paper.
  do:     Correct the date, or the print date.
  source: common practice, no source
adult-tracheostomy.yaml:70:13: refuse: The tube in place is 8.0 mm; the "same size" spare is 7.5 mm. [same-size-spare-differs]
   70 |       size: 7.5 mm
      |             ^~~~~~ another size
   51 |     inner_diameter: 8.0 mm
      |                     ^~~~~~ the tube in place
  why:    The steps for a lost tube send a hand to a box that holds another size.
  do:     Look at both boxes and correct the size.
  source: common practice, no source
adult-tracheostomy.yaml:195:22: refuse: P1: the high-pressure alarm 20 cmH2O is not above the pressure the machine may use, 21 cmH2O. [high-pressure-alarm-below-peak]
  195 |       high_pressure: 20 cmH2O
      |                      ^~~~~~~~ not above 21 cmH2O
  why:    Such an alarm sounds at every breath, or cuts each breath short.
  do:     Ask for a new limit.
  source: follows from the definition; 10 cmH2O above peak: respiratory care textbooks
3 refuse
)");
}

TEST_CASE("away from a terminal the values of fields that may not hang on a wall are masked") {
    const Judged judged = three_faults();
    ReportStyle style;
    style.mask = audiences_of;
    style.texts = false;
    CHECK(
        report_text(judged.findings, {&judged.source, 1}, style) ==
        R"(adult-tracheostomy.yaml:24:16: refuse: The date of the weight says **********. That cannot be: born **********, printing for 2026-02-03. [impossible-date]
   24 |   weight_date: **********
      |                ^~~~~~~~~~ after the print date
   22 |   birth_date: **********
      |               ^~~~~~~~~~
adult-tracheostomy.yaml:70:13: refuse: The tube in place is 8.0 mm; the "same size" spare is 7.5 mm. [same-size-spare-differs]
   70 |       size: 7.5 mm
      |             ^~~~~~ another size
   51 |     inner_diameter: 8.0 mm
      |                     ^~~~~~ the tube in place
adult-tracheostomy.yaml:195:22: refuse: P1: the high-pressure alarm 20 cmH2O is not above the pressure the machine may use, 21 cmH2O. [high-pressure-alarm-below-peak]
  195 |       high_pressure: 20 cmH2O
      |                      ^~~~~~~~ not above 21 cmH2O
3 refuse
)");
}

TEST_CASE("a key that is not written is named where the caret can only show what is around it") {
    struct Row {
        const char* edits;
        const char* rule;
        const char* label;
    };
    constexpr Row rows[] = {
        {"remove: prescriptions.1.rate", "setting-missing-for-mode", "needed here: rate"},
        {"remove: prescriptions.1.alarms.low_minute_volume", "setting-missing-for-mode",
         "needed here: alarms.low_minute_volume"},
        {"remove: suction.depth", "suction-depth-missing", "no depth is recorded: suction.depth"},
        {"remove: suction", "suction-depth-missing", "no depth is recorded: suction.depth"},
        {"remove: airway.upper", "upper-airway-unknown", "not written: airway.upper"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        const Judged judged = judged_home("adult-tracheostomy", row.edits);
        const Finding* finding = judged.finding(row.rule);
        CAPTURE(ventfolio::testing::summary(judged.findings));
        REQUIRE(finding != nullptr);
        CHECK(finding->marks[0].label == row.label);
    }
    // At the top of the file there is nothing to quote from; the words stay.
    const Judged judged = judged_home("adult-tracheostomy", "remove: suction");
    ReportStyle style;
    style.mask = audiences_of;
    CHECK(report_text(judged.findings, {&judged.source, 1}, style).find("no depth is recorded: suction.depth\n") !=
          std::string::npos);
}

TEST_CASE("a key is no value: a message that uses its word stays readable") {
    const Judged judged = judged_home("adult-tracheostomy", "prescriptions.0.when_used: [{hours: 8 PM to 7 AM}]");
    ReportStyle style;
    style.mask = audiences_of;
    CHECK(report_text(judged.findings, {&judged.source, 1}, style).find("The prescriptions cover 22 h") !=
          std::string::npos);
}

TEST_CASE("carets stand below what the reader sees, whatever the letters") {
    Finding finding;
    finding.rule = "impossible-date";
    finding.message = "x";
    const SourceText source{"a.yaml", "name: \u00C5\u4E2D\x1b[31m x\n"};  // one cell, two cells, an escape
    finding.marks = {{"a.yaml", source.place(11, 12), "", "here"}};
    ReportStyle style;
    style.texts = false;
    CHECK(report_text({&finding, 1}, {&source, 1}, style) ==
          "a.yaml:1:10: refuse: x [impossible-date]\n"
          "    1 | name: \u00C5\u4E2D?[31m x\n"
          "      |          ^ here\n"
          "1 refuse\n");
}

TEST_CASE("letters that move the cursor or turn the direction are shown as a question mark") {
    // The Unicode Standard: C0 and C1 controls, direction marks and embeddings, line and paragraph separators,
    // isolates.
    struct Row {
        const char* letter;
        bool shown;
    };
    constexpr Row rows[] = {
        {"\x1f", false},   {"\x20", true},    {"\x7e", true},    {"\x7f", false},   {"\u0080", false},
        {"\u009f", false}, {"\u00a0", true},  {"\u200d", true},  {"\u200e", false}, {"\u200f", false},
        {"\u2010", true},  {"\u2027", true},  {"\u2028", false}, {"\u202e", false}, {"\u202f", true},
        {"\u2065", true},  {"\u2066", false}, {"\u2069", false}, {"\u206a", true},
    };
    ReportStyle style;
    style.texts = false;
    for (const Row& row : rows) {
        CAPTURE(std::string{row.letter});
        const SourceText source{"a.yaml", "name: a" + std::string{row.letter} + "b\n"};
        Finding finding;
        finding.rule = "impossible-date";
        finding.message = "x";
        finding.marks = {{"a.yaml", source.place(6, 7), "", ""}};
        const std::string shown = "name: a" + std::string{row.shown ? row.letter : "?"} + "b\n";
        const std::string text = report_text({&finding, 1}, {&source, 1}, style);
        CHECK_MESSAGE(text.find(shown) != std::string::npos, text);
    }
}

TEST_CASE("of a long line 160 letters are quoted, from 60 before the place") {
    const auto quoted = [](std::size_t letters, std::size_t at, std::size_t end) {
        const SourceText source{"a.yaml", std::string(at, 'a') + std::string(letters - at, 'b') + "\n"};
        Finding finding;
        finding.rule = "impossible-date";
        finding.message = "x";
        finding.marks = {{"a.yaml", source.place(at, end), "", ""}};
        ReportStyle style;
        style.texts = false;
        return report_text({&finding, 1}, {&source, 1}, style);
    };
    const auto block = [](std::size_t before, std::size_t after, std::size_t marked) {
        return " | " + std::string(before, 'a') + std::string(after, 'b') + "\n      | " + std::string(before, ' ') +
               "^" + std::string(marked - 1, '~') + "\n";
    };
    struct Row {
        std::size_t letters, at, end;
        std::size_t before, after, marked;
    };
    constexpr Row rows[] = {
        {160, 100, 101, 100, 60, 1},                                   // fits whole
        {161, 60, 61, 60, 100, 1},                                     // the place is near enough to the front
        {161, 61, 62, 60, 100, 1},                                     // one letter is left out in front
        {300, 200, 210, 60, 100, 10},                                  // both ends are left out
        {300, 200, 300, 60, 100, 100}, {400, 200, 400, 60, 100, 100},  // the mark ends with the quote
    };
    for (const Row& row : rows) {
        CAPTURE(row.letters);
        CAPTURE(row.at);
        const std::string text = quoted(row.letters, row.at, row.end);
        CHECK_MESSAGE(text.find(block(row.before, row.after, row.marked)) != std::string::npos, text);
    }
}

TEST_CASE("a private value is masked in the message whether it stands in quotes or not") {
    for (const char* date : {"1978-02-11", "\"1978-02-11\""}) {
        CAPTURE(std::string{date});
        const Judged judged = judged_home("adult-tracheostomy",
                                          std::string{"person.weight_date: 2026-03-01\nperson.birth_date: "} + date);
        ReportStyle style;
        style.mask = audiences_of;
        const std::string text = report_text(judged.findings, {&judged.source, 1}, style);
        CHECK_MESSAGE(text.find("born **********, printing") != std::string::npos, text);
    }
}

TEST_CASE("a private value of three letters is masked, a shorter one would mask half of the words") {
    const auto masked = [](const std::string& name) {
        const SourceText source{"a.yaml", "name: " + name + "\n"};
        Finding finding;
        finding.marks = {{"a.yaml", source.place(6, 6 + name.size()), "person.preferred_name", ""}};
        return without_private_values("Call Ann Al today", finding, {&source, 1},
                                      [](std::string_view) { return Audiences{}; });
    };
    CHECK(masked("Ann") == "Call *** Al today");
    CHECK(masked("\"Ann\"") == "Call *** Al today");
    CHECK(masked("Al") == "Call Ann Al today");
}

TEST_CASE("a line is quoted up to what is no text, and masked from its first letter to the next after the mark") {
    const auto quoted = [](const SourceText& source, std::size_t from, std::size_t to, const char* field,
                           Audiences on) {
        Finding finding;
        finding.rule = "impossible-date";
        finding.message = "x";
        finding.marks = {{source.name, source.place(from, to), field, ""}};
        ReportStyle style;
        style.texts = false;
        style.mask = [on](std::string_view) { return on; };
        const std::string text = report_text({&finding, 1}, {&source, 1}, style);
        const auto begin = text.find(" | ") + 3;
        return text.substr(begin, text.find("\n1 ") - begin);
    };
    CHECK(quoted({"a.yaml", "n: ab\xff\n"}, 0, 1, "n", wall) == "n: **\n      | ^");
    CHECK(quoted({"a.yaml", "n: \xff\xff\n"}, 3, 5, "n", wall) == "n: \n      |    ^");
    CHECK(quoted({"a.yaml", "Ann\n"}, 0, 1, "", wall) == "***\n      | ^");
    CHECK(quoted({"a.yaml", "a: xyz\n"}, 3, 4, "a", wall) == "a: x**\n      |    ^");
    CHECK(quoted({"a.yaml", "a: xyz\n"}, 3, 4, "a", Audiences{}) == "a: ***\n      |    ^");
}

TEST_CASE("a mark in another file says in which") {
    const SourceText sources[] = {{"a.yaml", "a: x\n"}, {"b.yaml", "b: y\n"}};
    Finding finding;
    finding.rule = "impossible-date";
    finding.message = "x";
    finding.marks = {{"a.yaml", sources[0].place(3, 4), "", ""}, {"b.yaml", sources[1].place(3, 4), "", ""}};
    ReportStyle style;
    style.texts = false;
    CHECK(report_text({&finding, 1}, sources, style) ==
          "a.yaml:1:4: refuse: x [impossible-date]\n"
          "    1 | a: x\n      |    ^\n"
          "   in b.yaml\n"
          "    1 | b: y\n      |    ^\n"
          "1 refuse\n");
}

TEST_CASE("colour is only there when told to be") {
    const Judged judged = three_faults();
    CHECK(report_text(judged.findings, {&judged.source, 1}).find('\x1b') == std::string::npos);
    ReportStyle style;
    style.colour = true;
    CHECK(report_text(judged.findings, {&judged.source, 1}, style).find("\x1b[31mrefuse\x1b[0m: ") !=
          std::string::npos);
}

TEST_CASE("the summary counts each severity, and how many are accepted") {
    CHECK(summary_line({}) == "no findings");
    CHECK(summary_line(judged_home("child-tracheostomy", "").findings) == "1 acknowledge (1 accepted), 1 note");
    CHECK(summary_line(three_faults().findings) == "3 refuse");
}

TEST_CASE("the same findings as data") {
    const auto json = report_json(three_faults().findings);
    CHECK(json["counts"]["refuse"] == 3);
    const auto& last = json["findings"][2];
    CHECK(last["rule"] == "high-pressure-alarm-below-peak");
    CHECK(last["severity"] == "refuse");
    CHECK(last["marks"][0]["line"] == 195);
    CHECK(last["marks"][0]["column"] == 22);
    CHECK(last["marks"][0]["field"] == "prescriptions.0.alarms.high_pressure");
    CHECK(last["numbers"]["top"] == "21 cmH2O");
    CHECK(last["stops"].size() == 5);
    CHECK(last["to_do"] == "Ask for a new limit.");
}

TEST_CASE("explain shows why, formula, source, thresholds and the example that the tests run") {
    CHECK(explain_rule("high-pressure-alarm-margin-unusual") ==
          R"(high-pressure-alarm-margin-unusual (warn)
  effect:   prints; stands on the verification sheet
  says:     {rx}: the high-pressure alarm {alarm} is {margin} above the peak of {top}.
  why:      Too close and it cries at every cough; too far and a blocked tube stays unheard.
  formula:  margin = alarm - top
  do:       Check the limit; 5 to 15 above is common.
  source:   10 to 15 cmH2O above peak: respiratory care textbooks; limits common practice, no source
    high_pressure_margin_least = 5 cmH2O (common practice, no source)
    high_pressure_margin_most = 20 cmH2O (common practice, no source)
    high_pressure_alarm_highest = 60 cmH2O (common practice, no source)
  example:  profiles/adult-tracheostomy.yaml on 2026-02-03 reports it with
      prescriptions.0.alarms.high_pressure: 25 cmH2O
    and does not with
      prescriptions.0.alarms.high_pressure: 26 cmH2O
A rule says what disagrees with what; it never decides treatment. The prescriber's orders, the
device's instructions and local protocol come first.
)");
}

TEST_CASE("explain says what a rule stops") {
    const auto effect = [](std::string_view rule) {
        const std::string text = explain_rule(rule).value_or("");
        const auto from = text.find("effect:");
        return text.substr(from, text.find('\n', from) - from);
    };
    CHECK(effect("tab-in-file") == "effect:   no sheet is made");
    CHECK(effect("tap-water-in-humidifier") == "effect:   not made: care-schedule, supplies");
}
