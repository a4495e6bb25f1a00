#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::string table_of(const std::vector<std::string>& parts) {
    std::string text = "| | Part | Do | You should |\n|---|---|---|---|\n";
    for (const std::string& part : parts)
        text += fmt::format("| ![A part](figure:{0}) | **Name {0}** size | Push on. | **Feel** it |\n", part);
    return text;
}

std::string sheet_of(const std::vector<std::string>& parts, const char* person = "lying") {
    return fmt::format("## {{.hookup person={}}}\n\nBuild it.\n\n{}", person, table_of(parts));
}

const Finding* finding_named(const LaidOut& out, std::string_view rule) {
    const auto found = std::ranges::find(out.findings, rule, &Finding::rule);
    return found == out.findings.end() ? nullptr : &*found;
}

const std::vector<std::vector<std::string>> kWorking{
    {"ventilator", "hose", "exhalation-port", "neck-tube"},
    {"wall-power", "ventilator", "air-filter", "outlet-filter", "short-hose", "humidifier", "heated-hose",
     "exhalation-port", "flexible-adapter", "concentrator", "oxygen-to-inlet", "neck-tube"},
    {"ventilator", "short-hose", "humidifier", "hose", "water-trap", "exhalation-valve", "pressure-line", "valve-line",
     "cylinder", "oxygen-to-outlet", "neck-tube"},
    {"ventilator", "short-hose", "humidifier", "hose", "water-trap", "y-piece", "return-hose", "return-trap",
     "return-filter", "in-line-suction", "liquid-oxygen", "oxygen-to-mask", "mask"},
    {"ventilator", "built-in-humidifier", "heated-hose", "vented-mask"},
    {"ventilator", "hose", "exhalation-port", "person-filter", "moisture-exchanger", "neck-tube"},
    {"ventilator", "hose", "mouthpiece"},
};

}  // namespace

TEST_CASE("a hook-up has each part's number on the drawing and in the table, and no text over another") {
    for (const std::vector<std::string>& parts : kWorking) {
        for (const char* person : {"lying", "seated", "chair"}) {
            for (const double scale : {1.0, 1.5}) {
                CAPTURE(parts.size());
                CAPTURE(person);
                CAPTURE(scale);
                const LaidOut out = laid_out(document_of(sheet_of(parts, person)), {Paper::letter, scale});
                for (const Finding& finding : out.findings) FAIL_CHECK(finding.message);
                CHECK_MESSAGE(misplaced(out.sheet).empty(), misplaced(out.sheet));
                std::map<std::string, std::size_t> seen;
                for (const std::string& word : body_words(out.sheet)) ++seen[word];
                for (std::size_t at = 1; at <= parts.size(); ++at) CHECK(seen[std::to_string(at)] == 2);
            }
        }
    }
}

TEST_CASE("the small lines are named at both ends in the words of their rows") {
    const LaidOut out = laid_out(document_of(sheet_of(
        {"ventilator", "hose", "exhalation-valve", "pressure-line", "valve-line", "flexible-adapter", "neck-tube"})));
    const std::vector<std::string> words = body_words(out.sheet);
    for (const char* name : {"pressure-", "valve-"})  // in the table and at both ends
        CHECK(std::ranges::count_if(words, [&](const std::string& word) { return word.starts_with(name); }) == 3);
}

TEST_CASE("parts that cannot work are not drawn but refused, with their row and its field") {
    const TemplateData::Object data{{"bore", value_of("circuit.bore", {{PrintedPart::Kind::word, "22 mm"}})}};
    const std::string markdown =
        "## {.hookup}\n\n| | Part | Do | You should |\n|---|---|---|---|\n"
        "| ![It](figure:ventilator) | **Unit** | On. | **See** it |\n"
        "| ![It](figure:heated-hose) | **Hose** | On. | **See** it |\n"
        "| ![It](figure:water-trap) | **Trap** {{bore}} | On. | **See** it |\n"
        "| ![It](figure:exhalation-port) | **Port** | On. | **See** it |\n"
        "| ![It](figure:neck-tube) | **Tube** | On. | **See** it |\n";
    const LaidOut out = laid_out(document_of(markdown, data));
    const Finding* finding = finding_named(out, "hookup-not-drawable");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::refuse);
    CHECK(finding->message.find("A heated hose takes no water trap.") != std::string::npos);
    CHECK(finding->marks.front().field == "circuit.bore");
    CHECK(finding->marks.front().place.line == 10);  // the text begins on the fourth line
    for (const PlacedPage& page : out.sheet.pages)
        for (const PlacedItem& item : page.items)
            CHECK_MESSAGE((item.kind != PlacedItem::Kind::path || item.path.filled), "a hose was drawn");
}

TEST_CASE("a row without a figure, an unknown part and a word beside a figure are refused") {
    struct Row {
        const char* from;
        const char* to;
        const char* rule;
    };
    constexpr Row kRows[] = {
        {"![A part](figure:hose)", "", "hookup-not-drawable"},
        {"figure:hose", "figure:teapot", "figure-unknown"},
        {"![A part](figure:hose)", "![A part](figure:hose) lost", "part-without-place"},
        {"| **Feel** it |\n", "| **Feel** it | lost |\n", "part-without-place"},
    };
    for (const Row& row : kRows) {
        CAPTURE(row.to);
        std::string markdown = sheet_of({"ventilator", "hose", "exhalation-port", "neck-tube"});
        const auto at = markdown.find(row.from);
        REQUIRE(at != markdown.npos);
        markdown.replace(at, std::string_view{row.from}.size(), row.to);
        if (std::string_view{row.to}.find("it | lost") != std::string_view::npos) {
            const auto head = markdown.find("|---|---|---|---|");
            markdown.replace(head, 17, "|---|---|---|---|---|");
            markdown.replace(markdown.find("| You should |"), 14, "| You should | |");
        }
        CHECK(finding_named(laid_out(document_of(markdown)), row.rule) != nullptr);
    }
}
