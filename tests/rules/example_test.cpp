#include <doctest/doctest.h>

#include "edited_home.hpp"
#include "rules/explain.hpp"
#include "rules/rule_book.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using ventfolio::testing::Judged;
using ventfolio::testing::judged;
using ventfolio::testing::judged_home;
using ventfolio::testing::judged_update;
using ventfolio::testing::summary;

namespace {

/// Examples of templates are tested where sheets are made.
bool is_of_profile(const RuleText& rule) {
    return rule.example.form == ExampleForm::edits || rule.example.form == ExampleForm::profile;
}

Judged judged_with(const RuleText& rule, ExampleFragment fragment) {
    const RuleExample& example = rule.example;
    const std::string text = written_out(fragment);
    if (example.form == ExampleForm::profile) return judged("home.yaml", text, example.on);
    if (rule.judges == Judges::update) return judged_update(example.home, text, example.on);
    return judged_home(example.home, text, example.on);
}

}  // namespace

TEST_CASE("every rule of the profile or of an update fires on its example and not on the near one") {
    for (const RuleText& rule : rule_book()) {
        if (!is_of_profile(rule)) continue;
        CAPTURE(std::string{rule.name});
        const Judged fired = judged_with(rule, rule.example.fires);
        const Finding* finding = fired.finding(rule.name);
        CHECK_MESSAGE(finding != nullptr, "does not fire: " << summary(fired.findings));
        if (finding != nullptr) {
            CHECK(finding->severity == rule.severity);
            CHECK_MESSAGE(finding->message.find_first_of("{}") == std::string::npos, finding->message);
            CHECK_MESSAGE(finding->message.find("not recorded") == std::string::npos, finding->message);
            REQUIRE(!finding->marks.empty());
            CHECK(finding->marks.front().place.known());
            // A fault of the file itself stands at no field.
            if (rule.example.form == ExampleForm::edits) CHECK(!finding->marks.front().field.empty());
        }
        const Judged silent = judged_with(rule, rule.example.silent);
        CHECK_MESSAGE(!silent.reports(rule.name), "fires too: " << summary(silent.findings));
    }
}

TEST_CASE("an example that is not about reading is a profile that can be read") {
    for (const RuleText& rule : rule_book()) {
        if (!is_of_profile(rule) || rule.judges == Judges::reading) continue;
        for (const ExampleFragment fragment : {rule.example.fires, rule.example.silent}) {
            const Judged home = judged_with(rule, fragment);
            CAPTURE(std::string{rule.name});
            CAPTURE(written_out(fragment));
            for (const Finding& finding : home.read.findings)
                CHECK_MESSAGE(finding.severity != Severity::refuse, finding.rule << ": " << finding.message);
        }
    }
}

TEST_CASE("no rule is without a case that fires it, a near one that does not, a source and an explanation") {
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        CHECK(!rule.source.empty());
        CHECK(!rule.why.empty());
        CHECK(!rule.to_do.empty());
        CHECK(explain_rule(rule.name));
        CHECK(!written_out(rule.example.fires).empty());
        CHECK(!written_out(rule.example.silent).empty());
        CHECK(written_out(rule.example.fires) != written_out(rule.example.silent));
    }
}

TEST_CASE("explain shows the very fragments that are tested, whatever is in them") {
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        const std::string text = explain_rule(rule.name).value_or("");
        for (const ExampleFragment fragment : {rule.example.fires, rule.example.silent}) {
            if (fragment.size() > 1 || fragment.front().times > 1) continue;
            for (const std::string& line : split(fragment.front().text, '\n'))
                if (line.find_first_not_of(" ~") != std::string::npos &&
                    line.find_first_of("\t\x7F\xE2\xEE\xEF\xF3") == std::string::npos)
                    CHECK_MESSAGE(text.find("      " + line + "\n") != std::string::npos, line);
        }
        for (const char c : text) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
    }
}

TEST_CASE("explain shows what does not print, and repeats as a count") {
    struct Row {
        const char* rule;
        const char* shown;
    };
    constexpr Row rows[] = {
        {"tab-in-file", "      <tab>preferred_name: Toby\n"},
        {"control-character-in-file", "        weight: <U+202E>16 kg\n"},
        {"text-not-utf8", "        preferred_name: Zo<byte EB>\n"},
        {"nested-too-deep", "      record_number: <32 times \"[\"><32 times \"]\">\n"},
        {"more-faults-than-listed", "      <501 times \"- &a Toby<line end>\">\n"},
        {"template-character-not-allowed", "      Look<tab>up.\n"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.rule);
        const std::string text = explain_rule(row.rule).value_or("");
        CHECK_MESSAGE(text.find(row.shown) != std::string::npos, text);
    }
    CHECK(explain_rule("tag-in-file").value_or("").ends_with(R"(
  example:  a profile reports it with this text
      person:
        preferred_name: !!str Toby
    and does not with
      person:
        preferred_name: "!!str Toby"
A rule says what disagrees with what; it never decides treatment. The prescriber's orders, the
device's instructions and local protocol come first.
)"));
}
