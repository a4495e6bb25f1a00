#include <doctest/doctest.h>

#include "edited_home.hpp"
#include "rules/rule_book.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;
using ventfolio::testing::summary;

TEST_CASE("every rule of the profile fires on its example and not on the near edit") {
    for (const RuleText& rule : rule_book()) {
        if (rule.example.home.empty() || !rule.example.sheet.empty()) continue;
        CAPTURE(std::string{rule.name});
        const auto fired = judged_home(rule.example.home, rule.example.fires, rule.example.on);
        const Finding* finding = fired.finding(rule.name);
        CAPTURE(summary(fired.findings));
        CHECK_MESSAGE(finding != nullptr, "does not fire: " << std::string{rule.example.fires});
        if (finding != nullptr) {
            CHECK(finding->severity == rule.severity);
            CHECK_MESSAGE(finding->message.find_first_of("{}") == std::string::npos, finding->message);
            CHECK_MESSAGE(finding->message.find("not recorded") == std::string::npos, finding->message);
            REQUIRE(!finding->marks.empty());
            CHECK(finding->marks.front().place.known());
            CHECK(!finding->marks.front().field.empty());
        }
        const auto silent = judged_home(rule.example.home, rule.example.silent, rule.example.on);
        CHECK_MESSAGE(!silent.reports(rule.name),
                      "fires too: " << std::string{rule.example.silent} << summary(silent.findings));
    }
}

TEST_CASE("an example that is not about reading is a profile that can be read") {
    for (const RuleText& rule : rule_book()) {
        if (rule.example.home.empty() || rule.judges == Judges::reading || !rule.example.sheet.empty()) continue;
        for (const std::string_view edits : {rule.example.fires, rule.example.silent}) {
            const auto judged = judged_home(rule.example.home, edits, rule.example.on);
            CAPTURE(std::string{rule.name});
            CAPTURE(std::string{edits});
            for (const Finding& finding : judged.read.findings)
                CHECK_MESSAGE(finding.severity != Severity::refuse, finding.rule << ": " << finding.message);
        }
    }
}
