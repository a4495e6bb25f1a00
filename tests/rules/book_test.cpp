#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "rules/explain.hpp"
#include "rules/rule_book.hpp"

using namespace ventfolio;

TEST_CASE("rule names are unique and made of small words joined by hyphens") {
    std::set<std::string_view> names;
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        CHECK(names.insert(rule.name).second);
        CHECK(rule.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos);
        CHECK(rule.name.find('-') != std::string_view::npos);
        CHECK(find_rule(rule.name) == &rule);
    }
    CHECK(find_rule("no-such-rule") == nullptr);
}

TEST_CASE("every rule has all its texts, each a sentence") {
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        CHECK(rule.says.size() > 10);
        CHECK(rule.why.size() > 20);
        CHECK(rule.why.ends_with('.'));
        CHECK(rule.to_do.ends_with('.'));
        CHECK(rule.source.size() > 5);
        CHECK_MESSAGE(rule.source.find("(mem") == std::string_view::npos, rule.source);
        CHECK_MESSAGE(rule.source.find("(seen") == std::string_view::npos, rule.source);
    }
}

TEST_CASE("a rule that judges the profile has a check, and only a refusal stops sheets") {
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        CHECK((rule.check != nullptr) == (rule.judges == Judges::profile));
        CHECK((!rule.stops.empty() || rule.stops_judged_sheet) == (rule.severity == Severity::refuse));
    }
}

TEST_CASE("explain and list show every rule") {
    const std::string list = list_rules();
    for (const RuleText& rule : rule_book()) {
        CAPTURE(std::string{rule.name});
        const auto text = explain_rule(rule.name);
        REQUIRE(text);
        CHECK(text->starts_with(rule.name));
        CHECK(text->find("local protocol come first") != std::string::npos);
        CHECK(list.find(std::string{rule.name} + " ") != std::string::npos);
    }
    CHECK(!explain_rule("pulse-oxygen"));
    CHECK(nearest_rule("pulse-oxigen-on-ventilator") == "pulse-oxygen-on-ventilator");
}

namespace {

/// Small words joined by hyphens: the form of a rule's name.
bool looks_like_a_rule(std::string_view word) {
    const bool letters = word.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
    return letters && word.find('-') != std::string_view::npos && word.front() >= 'a' && word.back() != '-';
}

/// Quoted words of that form in the sources of a room that stand right behind one of the leads.
std::set<std::string> names_in(const std::string& room, const std::vector<std::string>& leads) {
    std::set<std::string> names;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator{std::string{VENTFOLIO_SOURCE_DIR} + "/src/" + room}) {
        if (entry.path().extension() != ".cpp") continue;
        std::ifstream file{entry.path()};
        const std::string text{std::istreambuf_iterator<char>{file}, {}};
        for (const std::string& lead : leads)
            for (auto at = text.find(lead); at != std::string::npos; at = text.find(lead, at + 1)) {
                const auto begin = at + lead.size();
                const std::string word = text.substr(begin, text.find('"', begin) - begin);
                if (!word.empty() && looks_like_a_rule(word)) names.insert(word);
            }
    }
    return names;
}

}  // namespace

TEST_CASE("every rule name that is reported outside the rule book's own checks stands in the book") {
    std::set<std::string> names;
    for (const char* room : {"profile", "markup"}) names.merge(names_in(room, {"\""}));
    for (const char* room : {"sheets", "layout"}) names.merge(names_in(room, {"refuse(\"", "warn(\"", "rule = \""}));
    names.erase("year-month-day");  // the form of a date, not a rule
    CHECK(names.size() > 70);
    for (const std::string& name : names) CHECK_MESSAGE(find_rule(name) != nullptr, name);
}
