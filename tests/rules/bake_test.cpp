#include <doctest/doctest.h>

#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "units/oracle.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

/// A book of one rule that the build takes, with one thing replaced.
std::string rule_book_with(const std::string& from, const std::string& to) {
    const std::string book = R"(judges: reading
rules:
  - name: tab-in-file
    severity: refuse
    stops: [all]
    says: "The file holds a tab character."
    why: "Tabs stand in other columns for each reader."
    to_do: "Set the editor to write blanks."
    source: "common practice, no source"
    example:
      fires: "a:\tb\n"
      silent: "a: b\n"
)";
    CAPTURE(from);
    REQUIRE((from.empty() || book.find(from) != std::string::npos));
    return from.empty() ? book : with_replaced(book, from, to);
}

std::string calculator_book_with(const std::string& flag) {
    return fmt::format(R"(calculators:
  - name: cough-swing
    purpose: "The swing of a cough."
    formula: "swing = in"
    works: "{{in}}"
    source: "definition"
    fire: {}
    arguments:
      - {{name: in, takes: pressure, unit: cmH2O, from: 1, to: 70, help: pressure in}}
    results:
      - {{name: swing, label: swing, unit: cmH2O}}
    example: --in "40 cmH2O"
    prints: "swing: 40 cmH2O"
)",
                       flag);
}

/// What a baker of the build says about a book; "taken" when it takes it.
std::string baked(const std::string& baker, const std::string& shared, const std::string& book) {
    std::string folder = (std::filesystem::temp_directory_path() / "ventfolio-bake-XXXXXX").string();
    REQUIRE(::mkdtemp(folder.data()) != nullptr);
    std::ofstream{folder + "/book.yaml"} << book;
    std::ofstream{folder + "/thresholds.yaml"} << "thresholds: []\n";
    const std::string said = oracle::printed_by(fmt::format("{}/src/rules/{} {}/out {} {}/book.yaml 2>&1 && echo taken",
                                                            VENTFOLIO_BINARY_DIR, baker, folder,
                                                            with_replaced(shared, "FOLDER", folder), folder));
    std::filesystem::remove_all(folder);
    return said;
}

std::string baked_rules(const std::string& book) {
    return baked("ventfolio_bake_rules", VENTFOLIO_SOURCE_DIR "/src/rules/book/sheets.yaml FOLDER/thresholds.yaml",
                 book);
}

std::string baked_calculators(const std::string& book) {
    return baked("ventfolio_bake_calculators", VENTFOLIO_SOURCE_DIR "/src/rules/calculators/book/shared.yaml", book);
}

}  // namespace

TEST_CASE("the build refuses a rule without its texts, its source or its example, and says where") {
    CHECK(baked_rules(rule_book_with("", "")) == "taken");
    struct Row {
        const char* from;
        const char* to;
        const char* says;
    };
    constexpr Row rows[] = {
        {"    source: \"common practice, no source\"\n", "", "book.yaml:3:5: error: 'source' is missing"},
        {"    why: \"Tabs stand in other columns for each reader.\"\n", "", "book.yaml:3:5: error: 'why' is missing"},
        {"\"Set the editor to write blanks.\"", "\"\"", "book.yaml:8:12: error: 'to_do' must be a text"},
        {"    example:\n      fires: \"a:\\tb\\n\"\n      silent: \"a: b\\n\"\n", "",
         "book.yaml:3:5: error: 'tab-in-file' has no example"},
        {"      silent: \"a: b\\n\"\n", "", "error: an example needs 'silent'"},
        {"      fires: \"a:\\tb\\n\"\n", "", "error: an example needs 'fires'"},
        {"silent: \"a: b\\n\"", "silent: \"a:\\tb\\n\"", "error: what fires is also what must be silent"},
        {"\"a:\\tb\\n\"", "[{text: a, times: many}]", "error: 'times' is a whole number"},
        {"\"a:\\tb\\n\"", "[{bytes: E}]", "error: bytes are pairs of hexadecimal digits"},
        {"      fires", "      file: en/words.yaml\n      fires", "judges reading and cannot have such an example"},
        {"severity: refuse", "severity: warn", "error: 'tab-in-file': a refusal stops sheets, and nothing else does"},
    };
    for (const Row& row : rows) {
        const std::string said = baked_rules(rule_book_with(row.from, row.to));
        CHECK_MESSAGE(said.find(row.says) != std::string::npos, row.says << "\nis not in\n" << said);
    }
}

TEST_CASE("the build takes true and false for a flag, and no other word") {
    // YAML 1.2.2, section 10.3.2: yes, on and their like are words; so is a quoted true.
    CHECK(baked_calculators(calculator_book_with("true")) == "taken");
    CHECK(baked_calculators(calculator_book_with("false")) == "taken");
    for (const char* word : {"yes", "no", "True", "1", "~", "\"true\"", "[true]"}) {
        const std::string said = baked_calculators(calculator_book_with(word));
        CHECK_MESSAGE(said.find("book.yaml:7:11: error: 'fire' is true or false") != std::string::npos, word << "\n"
                                                                                                             << said);
    }
}
