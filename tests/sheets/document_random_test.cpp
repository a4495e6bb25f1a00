#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "packet/print_home_sheets.hpp"
#include "sheets/document_checks.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Trees that no template would make, from words that the checks look for, broken letters and stray signs.
class RandomTree {
  public:
    explicit RandomTree(unsigned seed) : random_{seed} {}

    Document document() {
        Document document;
        document.sheet = pick({"bedside-card", "alarm-response", "verification", ""});
        document.name = document.sheet;
        document.language = pick({"en", "de", ""});
        document.template_file = "own/sheet.md";
        document.title = inlines();
        document.blocks = blocks(3);
        if (below(2) == 0) document.identifiers = {value(), value()};
        return document;
    }

  private:
    std::size_t below(std::size_t limit) { return std::uniform_int_distribution<std::size_t>{0, limit - 1}(random_); }
    std::string pick(std::vector<const char*> all) { return all[below(all.size())]; }

    std::string text() {
        std::string text;
        for (std::size_t word = below(9); word > 0; --word)
            text += pick({"cuff", "fill the",  "squeeze every",  "3",  ".5",  "5.0",     "<",  ">",    "10mL", "oxygen",
                          "tube", "in",        "\u00A0",         " ",  ".",   "?",       ",",  "-",    "'",    "bpm",
                          "Dr",   "alarm off", "door code 4471", "no", "CPR", "\u00B5g", "1.", "....", "q4h",  "A/C",
                          "\t",   "\u4E2D"}) +
                    (below(3) == 0 ? "" : " ");
        return text;
    }
    PrintedValue value() {
        PrintedValue value;
        value.field =
            pick({"", "calc.squeeze-interval", "batteries.0.rated_time", "home.address", "no.such.field",
                  "prescriptions.0.rate", "person.preferred_name", "..", "prescriptions.99999999999999999999.rate"});
        value.audiences = static_cast<Audiences>(below(256));
        for (std::size_t part = below(3); part > 0; --part)
            value.parts.push_back({static_cast<PrintedPart::Kind>(below(3)), text()});
        return value;
    }
    Inlines inlines() {
        Inlines all;
        for (std::size_t piece = below(5); piece > 0; --piece) {
            Inline one;
            one.kind = static_cast<Inline::Kind>(below(6));
            one.text = text();
            one.alternative = text();
            one.line = below(20);
            if (one.kind == Inline::Kind::value) one.value = value();
            all.push_back(std::move(one));
        }
        return all;
    }
    TableRow row() {
        TableRow row;
        row.line = below(20);
        for (std::size_t cell = below(4); cell > 0; --cell) row.cells.push_back({inlines()});
        return row;
    }
    std::vector<Block> blocks(int depth) {
        std::vector<Block> all;
        for (std::size_t block = below(4); block > 0; --block) {
            Block one;
            one.kind = static_cast<Block::Kind>(below(7));
            one.line = below(20);
            one.inlines = inlines();
            one.aside = inlines();
            one.head = row();
            for (std::size_t rows = below(4); rows > 0; --rows) one.rows.push_back(row());
            if (depth > 0) one.children = blocks(depth - 1);
            all.push_back(std::move(one));
        }
        return all;
    }

    std::mt19937 random_;
};

}  // namespace

TEST_CASE("no check stumbles over any tree, and every finding points into the template") {
    std::size_t found = 0;
    for (const char* name : kHomes) {
        const CheckedHome checked = check_home(demo_profile(name), demo_day());
        const Household home{checked.profile, demo_day()};
        for (unsigned seed = 0; seed < 400; ++seed) {
            const Document document = RandomTree{seed}.document();
            std::vector<Finding> findings;
            check_document(document, static_cast<Audience>(1U << (seed % 6)), home, stationery().phrases, findings);
            std::vector<Finding> again;
            check_document(document, static_cast<Audience>(1U << (seed % 6)), home, stationery().phrases, again);
            CHECK(findings.size() == again.size());
            for (const Finding& finding : findings) {
                CHECK(!finding.message.empty());
                CHECK(finding.marks.front().file == "own/sheet.md");
            }
            found += findings.size();
        }
    }
    CHECK(found > 1000);  // the words do reach the checks
}

TEST_CASE("an empty sheet and an empty home have no findings") {
    const Profile nothing;
    const Household home{nothing, demo_day()};
    std::vector<Finding> findings;
    check_document({}, wall, home, stationery().phrases, findings);
    CHECK(findings.empty());
}

TEST_CASE("a file of phrases that cannot be read, or lacks one, is said with its place") {
    struct Row {
        const char* text;
        const char* message;
    };
    const Row rows[] = {
        {"a: [", "cannot be read"},
        {"- a\n", "lacks a list"},
        {"language: en\nsaying: {}\n", "has no key `saying`"},
        {"language: en\nsayings: {alarm_off: {phrases: []}}\n", "has none for `alarm_off`"},
        {"language: en\nsayings: {alarm_off: {phrases: [leave alarm off]}}\n", "has none for `mouth_breaths`"},
        {"language: en\nforbids: {before: [do ...]}\n", "begins and ends with a word"},
        {"language: en\nerror_prone: [{words: bpm}]\n", "needs `words` and `instead`"},
        {"language: en\nerror_prone: [{words: QD, instead: daily, as_written: yes}]\n", "is true or false"},
    };
    for (const Row& row : rows) {
        std::vector<Finding> findings;
        PhraseBook::read({"own/phrases.yaml", row.text}, findings);
        REQUIRE(!findings.empty());
        const bool found = std::ranges::any_of(
            findings, [&](const Finding& one) { return one.message.find(row.message) != std::string::npos; });
        CHECK_MESSAGE(found, std::string{row.text});
        for (const Finding& finding : findings) {
            CHECK(finding.rule == "words-file-unreadable");
            CHECK(finding.marks.front().file == "own/phrases.yaml");
        }
    }
}
