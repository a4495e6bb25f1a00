#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr auto kWord = PrintedPart::Kind::word;

const Finding* finding_of(const LaidOut& out, std::string_view rule) {
    const auto found = std::ranges::find(out.findings, rule, &Finding::rule);
    return found == out.findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a word wider than its column is refused, with its field and by how much") {
    const std::string wide(70, 'm');
    for (const char* text :
         {"Before {{x}} after.", "| | |\n|---|---|\n| label | {{x}} |", "- {{x}}", "1. **{{x}}** then",
          "> [!WARNING]\n> {{x}}", "## Heading {{x}} {.act}\n\nText.", "## H {.strip}\n\n- fact {{x}}",
          "## H {.cells columns=3}\n\n| | |\n|---|---|\n| a | {{x}} |"}) {
        CAPTURE(std::string{text});
        const LaidOut out = laid_out(document_of(text, {{"x", value_of("contacts.family.name", {{kWord, wide}})}}));
        const Finding* finding = finding_of(out, "word-wider-than-column");
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::refuse);
        CHECK(finding->marks.front().field == "contacts.family.name");
        CHECK(finding->marks.front().file == "trial.md");
        CHECK(finding->marks.front().place.line >= 4);
        CHECK(finding->message.find("contacts.family.name") != std::string::npos);
        CHECK(finding->message.find(" mm wider than its column") != std::string::npos);
    }
    const LaidOut own = laid_out(document_of("A template's own " + wide + " is named by its line."));
    const Finding* finding = finding_of(own, "word-wider-than-column");
    REQUIRE(finding != nullptr);
    CHECK(finding->message.find("a word of the template") != std::string::npos);
    CHECK(finding->marks.front().place.line == 4);
}

TEST_CASE("a sheet over its page budget is refused, with the first field that does not fit and by how much") {
    std::string text = "## Steps\n\n";
    TemplateData::Object data;
    for (int item = 0; item < 60; ++item) {
        text += fmt::format("- row {{{{x{}}}}}\n", item);
        data[fmt::format("x{}", item)] = value_of(fmt::format("field.{}", item), {{kWord, "value"}});
    }
    const LaidOut free = laid_out(document_of(text, data));
    CHECK(free.findings.empty());
    REQUIRE(free.sheet.pages.size() == 2);
    const LaidOut fits = laid_out(document_of(text, data, "pages: 2\n"));
    CHECK(fits.findings.empty());
    const LaidOut over = laid_out(document_of(text, data, "pages: 1\n"));
    const Finding* finding = finding_of(over, "sheet-over-page-budget");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::refuse);
    // The field is that of the first row on the second page.
    std::string first;
    for (const PlacedItem& item : over.sheet.pages[1].items)
        if (first.empty() && item.origin.field.starts_with("field.")) first = item.origin.field;
    CHECK(finding->marks.front().field == first);
    CHECK(finding->message.find(first) != std::string::npos);
    CHECK(finding->message.find(" mm do not fit") != std::string::npos);
    CHECK(finding->message.find("needs 2 pages and may have 1") != std::string::npos);
    // Nothing is dropped all the same: the sheet is whole, and refused.
    CHECK(body_words(over.sheet).size() == body_words(free.sheet).size());
}

TEST_CASE("a part that no page can hold is refused and named") {
    std::string text = "## Box {.act}\n\n";
    std::string words;
    for (int word = 0; word < 4000; ++word) words += "word ";
    const LaidOut out =
        laid_out(document_of(text + "One {{x}} " + words, {{"x", value_of("home.address", {{kWord, "y"}})}}));
    const Finding* finding = finding_of(out, "part-taller-than-page");
    REQUIRE(finding != nullptr);
    CHECK(finding->marks.front().field == "home.address");
    CHECK(finding->message.find(" mm taller than a whole page") != std::string::npos);
}

TEST_CASE("a character that the fonts do not have is named with its field or its line") {
    const LaidOut value =
        laid_out(document_of("Name {{x}}.", {{"x", value_of("person.preferred_name", {{kWord, "\U0001F600"}})}}));
    const Finding* finding = finding_of(value, "character-not-in-font");
    REQUIRE(finding != nullptr);
    CHECK(finding->message.find("U+1F600") != std::string::npos);
    CHECK(finding->marks.front().field == "person.preferred_name");
    const LaidOut own = laid_out(document_of("## A\n\nText.\n\nArrow \u2192 here."));
    REQUIRE(finding_of(own, "character-not-in-font") != nullptr);
    CHECK(finding_of(own, "character-not-in-font")->marks.front().place.line == 8);
    CHECK(finding_of(own, "character-not-in-font")->message.find("U+2192") != std::string::npos);
}

TEST_CASE("text in other alphabets is set, or refused with the reason") {
    struct Row {
        const char* text;
        const char* rule;  ///< empty: it can be set
        const char* told;
        const char* source;
    };
    const Row rows[] = {
        {"Дом и свет", "", "", "der: Cyrillic is in the faces"},
        {"Ωμέγα και ήλιος", "", "", "der: Greek is in the faces"},
        {"Nguyễn Thị Hường, ế ộ ẵ", "", "", "der: Vietnamese; tests/pdf prove the accents by ink"},
        {"שלום", "script-cannot-be-set",
         "The letter U+05E9 \"ש\" in person.preferred_name runs from right to left (script Hebr)",
         "pub: Unicode, Bidi_Class R; ISO 15924"},
        {"سلام", "script-cannot-be-set", "runs from right to left (script Arab)", "pub: Unicode, Bidi_Class AL"},
        {"नमस्ते", "script-cannot-be-set", "changes its shape beside other letters (script Deva)",
         "pub: Unicode Standard, chapter 12"},
        {"\U0001F600", "character-not-in-font", "The sign U+1F600", "pub: Unicode, general category So"},
        {"漢", "character-not-in-font", "The letter U+6F22", "pub: Unicode, general category Lo"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.text});
        const LaidOut out =
            laid_out(document_of("Name {{x}}.", {{"x", value_of("person.preferred_name", {{kWord, row.text}})}}));
        if (*row.rule == '\0') {
            CHECK(finding_of(out, "character-not-in-font") == nullptr);
            CHECK(finding_of(out, "script-cannot-be-set") == nullptr);
            continue;
        }
        const Finding* finding = finding_of(out, row.rule);
        REQUIRE(finding != nullptr);
        CHECK(finding->marks.front().field == "person.preferred_name");
        CHECK_MESSAGE(finding->message.find(row.told) != std::string::npos, finding->message);
    }
}
