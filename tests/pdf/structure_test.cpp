#include <doctest/doctest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "drawings.hpp"
#include "pdf/write_pdf.hpp"
#include "programs.hpp"

using namespace ventfolio;
using namespace ventfolio::trial;
using nlohmann::json;
using Kind = StructureElement::Kind;

namespace {

PlacedItem of_element(PlacedItem item, std::size_t element) {
    item.origin.element = element;
    return item;
}

/// Furniture, a heading, a table of two columns that goes on to the next page, a sign, and words in two lines.
PlacedSheet tagged_sheet() {
    PlacedItem sign = path(
        {{Path::Segment::Kind::move, {20, 300}, {}, {}}, {Path::Segment::Kind::line, {40, 300}, {}, {}}}, 1, false);
    PlacedSheet placed =
        sheet("Sheet", {page(612, 792,
                             {line("Footer", 20, 780, 8), of_element(line("Title", 20, 40, 12), 1),
                              rule({0, 50}, {99, 50}, 1), of_element(line("Item", 20, 80, 12), 4),
                              of_element(line("Count", 90, 80, 12), 5), of_element(line("Tube", 20, 100, 12), 7)}),
                        page(612, 792,
                             {of_element(line("2", 90, 40, 12), 8), of_element(std::move(sign), 9),
                              of_element(line("first", 20, 80, 12), 10), of_element(line("second", 20, 94, 12), 10)})});
    placed.structure = {{Kind::sheet, 0, 0, ""},       {Kind::heading, 0, 1, ""},     {Kind::table, 0, 0, ""},
                        {Kind::row, 2, 0, ""},         {Kind::column_head, 3, 0, ""}, {Kind::column_head, 3, 0, ""},
                        {Kind::row, 2, 0, ""},         {Kind::row_head, 6, 0, ""},    {Kind::cell, 6, 0, ""},
                        {Kind::figure, 0, 0, "A nod"}, {Kind::paragraph, 0, 0, ""},   {Kind::list, 0, 0, ""}};
    return placed;
}

std::string tagged() {
    const PlacedSheet placed = tagged_sheet();
    return write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&placed, ""}}});
}

Ran judged(std::string_view pdf, std::string_view command) {
    const Scratch scratch;
    scratch.save("sample.pdf", pdf);
    Ran ran = scratch.run(command);
    REQUIRE(ran.status == 0);
    CHECK(ran.err == "");
    return ran;
}

json objects(std::string_view pdf) {
    return json::parse(judged(pdf, "qpdf --json=2 --json-stream-data=none sample.pdf").out).at("qpdf").at(1);
}

json object(const json& all, const json& reference) {
    return all.at("obj:" + reference.get<std::string>()).at("value");
}

}  // namespace

TEST_CASE("another maker's program reads the structure with its words in their order") {
    CHECK(judged(tagged(), "pdfinfo -struct-text sample.pdf | tr -s ' ' | sed 's/^ //'").out ==
          "Document\nSect\nH1 (block)\n\"Title\"\nTable (block)\n"
          "TR\nTH:\n/Scope /Column\n\"Item\"\nTH:\n/Scope /Column\n\"Count\"\n"
          "TR\nTH:\n/Scope /Row\n\"Tube\"\nTD\n\"2\"\n"
          "Figure:\n/BBox [19 491 41 493]\n\"\"\nP (block)\n\"first second\"\n");
}

TEST_CASE("a passage in another language than its file says so, and what stands in it does not repeat it") {
    PlacedSheet placed = tagged_sheet();
    placed.structure[0].language = "en-US";  // that of the file
    placed.structure[2].language = "es";
    placed.structure[4].language = "es";
    placed.structure[5].language = "en-US";
    const json all = objects(write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&placed, ""}}}));
    std::map<std::string, std::vector<std::string>> languages;  // by type
    for (const auto& [name, entry] : all.items()) {
        const json& value = entry.contains("value") ? entry.at("value") : json{};
        if (value.is_object() && value.contains("/S") && value.contains("/Lang"))
            languages[value.at("/S")].push_back(value.at("/Lang"));
    }
    CHECK(languages == std::map<std::string, std::vector<std::string>>{{"/TH", {"u:en-US"}}, {"/Table", {"u:es"}}});
}

TEST_CASE("a list that counts says how, and one that does not says nothing") {
    PlacedSheet placed = tagged_sheet();
    placed.structure[10].kind = Kind::list;
    placed.structure[10].numbered = true;
    const auto heard = [&] {
        return judged(write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&placed, ""}}}),
                      "pdfinfo -struct sample.pdf")
            .out;
    };
    CHECK(heard().find("/ListNumbering /Decimal") != std::string::npos);
    placed.structure[10].numbered = false;
    CHECK(heard().find("/ListNumbering") == std::string::npos);
}

TEST_CASE("a figure's box holds all that is drawn of it on its first page") {
    // By hand: the sign's line of 1 pt from (20, 300) to (40, 300) on a page 792 pt high; a box of 10 by 6 pt, whose
    // line of 2 pt reaches 1 pt out; a curve with its control points. Whole points, outwards; y upwards (ISO
    // 32000-1, 14.8.5.4).
    PlacedSheet placed = tagged_sheet();
    std::vector<PlacedItem>& items = placed.pages[1].items;
    items.push_back(of_element(box(50, 310, 10, 6, 2, false), 9));
    const auto bounds = [&] {
        const json all = objects(write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&placed, ""}}}));
        for (const auto& [name, entry] : all.items())
            if (entry.contains("value") && entry.at("value").is_object() &&
                entry.at("value").value("/S", "") == "/Figure")
                return entry.at("value").at("/A");
        return json{};
    };
    CHECK(bounds() == json{{"/O", "/Layout"}, {"/BBox", {19, 475, 61, 493}}});
    items.push_back(of_element(path({{Path::Segment::Kind::move, {20, 300}, {}, {}},
                                     {Path::Segment::Kind::curve, {10, 290}, {70, 290}, {65, 300}}},
                                    0.5, false),
                               9));
    CHECK(bounds() == json{{"/O", "/Layout"}, {"/BBox", {9, 475, 71, 503}}});
}

TEST_CASE("a blank for the ear does not move the letters that follow it") {
    PlacedSheet placed = tagged_sheet();
    const auto words = [](const PlacedSheet& one) {
        return judged(write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&one, ""}}}),
                      "pdftotext -bbox -f 2 -l 2 sample.pdf - | grep second")
            .out;
    };
    const std::string with_blank = words(placed);
    placed.pages[1].items[3].origin.element = Origin::kNoElement;
    CHECK(with_blank == words(placed));
    CHECK(with_blank.find("xMin=\"20.0") != std::string::npos);
}

TEST_CASE("every page leads back from its stretches to their elements, and the catalogue says that all is marked") {
    const json all = objects(tagged());
    const json catalog = object(all, all.at("trailer").at("value").at("/Root"));
    CHECK(catalog.at("/MarkInfo").at("/Marked") == true);
    const json root = object(all, catalog.at("/StructTreeRoot"));
    const json& parents = root.at("/ParentTree").at("/Nums");  // ISO 32000-1, 14.7.4.4
    REQUIRE(parents.size() == 4);
    CHECK(parents[0] == 0);
    CHECK(parents[1].size() == 4);
    CHECK(parents[3].size() == 3);
    CHECK(object(all, parents[1][0]).at("/S") == "/H1");
    CHECK(object(all, parents[3][0]).at("/S") == "/TD");
    CHECK(object(all, parents[3][1]).at("/Alt") == "u:A nod");
    CHECK(object(all, parents[3][2]).at("/S") == "/P");
    std::size_t number = 0;
    for (const json& kid : object(all, catalog.at("/Pages")).at("/Kids")) {
        CHECK(object(all, kid).at("/StructParents") == number++);
        CHECK(object(all, kid).at("/Tabs") == "/S");
    }
}

TEST_CASE("an item of an element that does not exist is not written") {
    PlacedSheet placed = tagged_sheet();
    placed.pages[0].items[1].origin.element = placed.structure.size();
    CHECK_THROWS_AS(write_pdf({.title = "Sheet", .language = "en-US", .sheets = {{&placed, ""}}}), std::logic_error);
}
