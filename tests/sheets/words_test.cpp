#include <doctest/doctest.h>
#include <fmt/format.h>

#include <set>

#include "packet/print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "profile/read_measure.hpp"
#include "sheets/printer.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

TEST_CASE("every choice, unit and role that a profile can hold has a word") {
    const WordBook& words = stationery().words;
    const Printer printer{words, stationery().region};
    std::size_t choices = 0;
    for (const DeclaredField& field : declared_fields_of<Profile>()) {
        CAPTURE(field.path);
        for (const std::string_view choice : field.choices) {
            ++choices;
            const std::string key{field.info.key};
            CAPTURE(std::string{choice});
            const bool known = words.find(fmt::format("choices.{}.{}", key, choice)).has_value() ||
                               words.find(fmt::format("choices.{}", choice)).has_value();
            REQUIRE(known);
            const std::string word = printer.choice(key, choice);
            CHECK(!word.empty());
            CHECK_MESSAGE(word.find('_') == std::string::npos, word);
        }
        if (field.dimension)
            for (const Unit& unit : accepted_units(field.info, *field.dimension))
                CHECK_MESSAGE(words.find(fmt::format("units.{}", unit.symbol)), std::string{unit.symbol});
        if (!field.info.ask.empty()) CHECK(words.find(fmt::format("roles.{}", field.info.ask)));
    }
    CHECK(choices > 150);
    CHECK(words.find("roles.clinic"));  // whom to ask when a field names nobody
}

TEST_CASE("no two choices of one field print the same") {
    const Printer printer{stationery().words, stationery().region};
    for (const DeclaredField& field : declared_fields_of<Profile>()) {
        std::set<std::string> seen;
        for (const std::string_view choice : field.choices)
            CHECK_MESSAGE(seen.insert(printer.choice(field.info.key, choice)).second,
                          field.path << ": " << std::string{choice});
    }
}

TEST_CASE("a word that is missing is named with its file, and a broken file with its line") {
    std::vector<Finding> findings;
    const WordBook book = WordBook::read({"words.yaml", "language: en\nunits: {s: seconds}\n"}, findings);
    CHECK(findings.empty());
    CHECK(book.language() == "en");
    CHECK(book.at("units.s") == "seconds");
    CHECK_THROWS_WITH_AS(static_cast<void>(book.at("units.h")), "words.yaml: the word `units.h` is missing",
                         MissingWord);
    for (const char* text : {"language: en\nunits: {s: [\n", "- a\n", "\tx: y\n"}) {
        findings.clear();
        static_cast<void>(WordBook::read({"words.yaml", text}, findings));
        CAPTURE(std::string{text});
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].severity == Severity::refuse);
        CHECK(findings[0].marks.front().file == "words.yaml");
        CHECK(findings[0].marks.front().place.line >= 1);
    }
}
