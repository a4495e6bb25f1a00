#include "layout/structure.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using Kind = StructureElement::Kind;

namespace {

const char* name_of(Kind kind) {
    constexpr const char* kNames[] = {"sheet", "heading", "paragraph", "list", "item", "label",  "body", "table",
                                      "row",   "column",  "row-head",  "cell", "note", "figure", "span"};
    return kNames[static_cast<std::size_t>(kind)];
}

/// Kinds in reading order, each after as many dots as it has parents.
std::string outline(const std::vector<StructureElement>& elements) {
    std::string text;
    for (std::size_t at = 0; at < elements.size(); ++at) {
        for (std::size_t up = at; up != 0; up = elements[up].parent) text += '.';
        text += name_of(elements[at].kind);
        if (elements[at].level > 0) text += std::to_string(elements[at].level);
        text += ' ';
    }
    return text;
}

std::string outline_of(const std::string& markdown) {
    Document document = document_of(markdown);
    return outline(number_elements(document));
}

}  // namespace

TEST_CASE("each passage in the second language says so") {
    Document document = document_of("First.\n\nSecond.\n\n| A | |\n|---|---|\n| b | c |");
    document.language = "en";
    document.second_language = "es";
    document.blocks[1].inlines[0].second = true;
    // "b" with its translation under it.
    Inlines& cell = document.blocks[2].rows[0].cells[0].inlines;
    Inline line_break = cell[0];
    line_break.kind = Inline::Kind::line_break;
    Inline translated = cell[0];
    translated.second = true;
    cell.push_back(line_break);
    cell.push_back(translated);
    const std::vector<StructureElement> elements = number_elements(document);
    std::string said;
    for (const StructureElement& element : elements)
        if (!element.language.empty()) said += std::string{name_of(element.kind)} + " " + element.language + ", ";
    CHECK(said == "sheet en, paragraph es, span es, ");
    CHECK(elements[cell[0].element].kind == Kind::span);
    CHECK(elements[cell[0].element].language.empty());
    CHECK(elements[cell[2].element].language == "es");
}

TEST_CASE("a heading in one language with an aside in the other keeps them apart") {
    Document document = document_of("## Head");
    document.second_language = "es";
    document.blocks[0].aside = document.blocks[0].inlines;
    document.blocks[0].aside[0].second = true;
    const std::vector<StructureElement> elements = number_elements(document);
    CHECK(outline(elements) == "sheet .heading1 .heading2 ..span ");
    CHECK(elements[2].language.empty());
    CHECK(elements[3].language == "es");
}

TEST_CASE("lists that count are told from those that do not") {
    Document document = document_of("1. a\n\nWords.\n\n- b");
    std::string numbered;
    for (const StructureElement& element : number_elements(document))
        if (element.kind == Kind::list) numbered += element.numbered ? "yes " : "no ";
    CHECK(numbered == "yes no ");
}

TEST_CASE("the structure follows the template") {
    struct Row {
        const char* markdown;
        const char* outline;
    };
    constexpr Row rows[] = {
        {"Words.", "sheet .heading1 .paragraph "},
        {"## A\n\n### B\n\n## C", "sheet .heading1 .heading2 .heading3 .heading2 "},
        {"#### Deep", "sheet .heading1 .heading2 "},
        {"- a\n- b", "sheet .heading1 .list ..item ...label ...body ..item ...label ...body "},
        {"1. a", "sheet .heading1 .list ..item ...label ...body "},
        {"| A | B |\n|---|---|\n| c | d |",
         "sheet .heading1 .table ..row ...column ...column ..row ...row-head ...cell "},
        {"| | |\n|---|---|\n| c | d |", "sheet .heading1 .table ..row ...row-head ...cell "},
        {"> [!WARNING]\n> Hot.", "sheet .heading1 .note ..paragraph "},
        {"## Signs {.signs}\n\n- ![Nods](figure:nod) **Yes** nods",
         "sheet .heading1 .heading2 .list ..item ...label ...body ....figure ....span "},
    };
    for (const Row& row : rows) {
        CAPTURE(row.markdown);
        CHECK(outline_of(row.markdown) == row.outline);
    }
}

TEST_CASE("all words of a sheet belong to an element, all furniture but the title to none") {
    const LaidOut laid =
        laid_out(document_of("## A {.box}\n\n1. b\n2. c\n\n- [ ] d\n\n| E | F |\n|---|---|\n| g | h |"));
    REQUIRE(laid.findings.empty());
    std::set<std::size_t> seen;
    for (const PlacedPage& page : laid.sheet.pages)
        for (const PlacedItem& item : page.items) {
            if (item.kind != PlacedItem::Kind::text) continue;
            const bool furniture = item.origin.node == Origin::kFurniture;
            if (!furniture) CHECK(item.origin.element < laid.sheet.structure.size());
            if (furniture && item.origin.element != Origin::kNoElement)
                CHECK(laid.sheet.structure[item.origin.element].level == 1);
            seen.insert(item.origin.element);
        }
    CHECK(seen.size() > 8);
}

TEST_CASE("the head of a table that goes on to the next page is heard once") {
    std::string markdown = "| Head | Other |\n|---|---|\n";
    for (int row = 0; row < 90; ++row) markdown += "| a | b |\n";
    const LaidOut laid = laid_out(document_of(markdown));
    REQUIRE(laid.sheet.pages.size() > 1);
    std::size_t drawn = 0;
    std::size_t heard = 0;
    for (const PlacedPage& page : laid.sheet.pages)
        for (const PlacedItem& item : page.items)
            if (item.kind == PlacedItem::Kind::text && item.text.text == U"Head") {
                ++drawn;
                if (item.origin.element != Origin::kNoElement) ++heard;
            }
    CHECK(drawn == laid.sheet.pages.size());
    CHECK(heard == 1);
}
