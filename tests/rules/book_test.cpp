#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>

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

TEST_CASE("every rule name that the reader and the templates use stands in the book") {
    // Quoted small words joined by hyphens, less those that are not rule names.
    const std::set<std::string> other{"year-month-day", "use-by"};
    const std::regex quoted{"\"([a-z][a-z0-9]*(?:-[a-z0-9]+)+)\""};
    std::size_t found = 0;
    for (const char* room : {"profile", "markup"})
        for (const auto& entry :
             std::filesystem::directory_iterator{std::string{VENTFOLIO_SOURCE_DIR} + "/src/" + room}) {
            if (entry.path().extension() != ".cpp") continue;
            std::ifstream file{entry.path()};
            const std::string text{std::istreambuf_iterator<char>{file}, {}};
            for (std::sregex_iterator at{text.begin(), text.end(), quoted}, end; at != end; ++at) {
                const std::string name = (*at)[1];
                if (other.contains(name)) continue;
                CAPTURE(entry.path().string());
                CHECK_MESSAGE(find_rule(name) != nullptr, name);
                ++found;
            }
        }
    CHECK(found > 50);
}
