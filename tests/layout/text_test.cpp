#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "documents.hpp"
#include "layout/fonts.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr auto kWord = PrintedPart::Kind::word;
constexpr auto kNumber = PrintedPart::Kind::number;
constexpr auto kUnit = PrintedPart::Kind::unit;

std::vector<const PlacedItem*> items_of(const PlacedSheet& sheet, std::string_view field) {
    std::vector<const PlacedItem*> items;
    for (const PlacedPage& page : sheet.pages)
        for (const PlacedItem& item : page.items)
            if (item.kind == PlacedItem::Kind::text && item.origin.field == field) items.push_back(&item);
    return items;
}

}  // namespace

TEST_CASE("a number never parts from its unit, and a phone number never breaks") {
    // Words of growing length before the value push it over every possible line end.
    const TemplateData::Object data{
        {"pressure", value_of("pressure", {{kNumber, "16"}, {kUnit, "\u00A0cmH2O"}})},
        {"rate", value_of("rate", {{kNumber, "14"}, {kUnit, "\u00A0breaths\u00A0per\u00A0minute"}})},
        {"phone", value_of("phone", {{kNumber, "555-0111"}})},
        {"date", value_of("date", {{kWord, "12\u00A0January\u00A02026"}})}};
    for (std::size_t length = 1; length < 130; ++length) {
        std::string filler;
        for (std::size_t at = 0; at < length; ++at) filler += at % 7 == 6 ? ' ' : 'n';
        CAPTURE(length);
        for (const char* field : {"pressure", "rate", "phone", "date"}) {
            const LaidOut out = laid_out(document_of(filler + "x {{" + std::string{field} + "}} end.", data));
            CHECK(out.findings.empty());
            const auto items = items_of(out.sheet, field);
            REQUIRE(!items.empty());
            for (const PlacedItem* item : items) CHECK(item->text.origin.y == items.front()->text.origin.y);
        }
    }
}

TEST_CASE("lines break where the Unicode rules allow, and nowhere else") {
    // Unicode Standard Annex 14: LB7 no break before a space, LB13 not before a full stop or closing bracket, LB14 not
    // behind an opening one, LB12 not at a no-break space.
    std::string text;
    for (int at = 0; at < 200; ++at) text += "word (word, word) “word” word! 10\u00A0mL word. ";
    const LaidOut out = laid_out(document_of(text));
    std::size_t lines = 0;
    for (const PlacedPage& page : out.sheet.pages) {
        for (const PlacedItem& item : page.items) {
            if (item.origin.role != "paragraph") continue;
            ++lines;
            const char32_t first = item.text.text.front();
            const char32_t last = item.text.text.back();
            CHECK(std::u32string_view{U".,)!”m "}.find(first) == std::u32string_view::npos);
            CHECK(std::u32string_view{U"(“"}.find(last) == std::u32string_view::npos);
        }
    }
    CHECK(lines > 50);
}

TEST_CASE("a line takes as much as fits and no more") {
    std::string text;
    for (int at = 0; at < 500; ++at) text += fmt::format("w{} ", at * at);
    const LaidOut out = laid_out(document_of(text));
    const PlacedItem* before = nullptr;
    const double room = out.sheet.pages[0].width - out.sheet.pages[0].margin_left - out.sheet.pages[0].margin_right;
    for (const PlacedPage& page : out.sheet.pages) {
        for (const PlacedItem& item : page.items) {
            if (item.origin.role != "paragraph") continue;
            if (before != nullptr) {
                const std::u32string next = item.text.text.substr(0, item.text.text.find(U' '));
                const double word = FontMetrics::of(item.text.face).advance(U" " + next).width * item.text.size / 1000;
                CHECK(before->text.width <= room + 0.06);
                CHECK(before->text.width + word > room - 1);
            }
            before = &item;
        }
    }
}

TEST_CASE("widths agree with the font's own table") {
    // Noto Sans: digits advance 572 of 1000 units, in either weight (hmtx table).
    for (const Face face : {Face::regular, Face::bold})
        for (char32_t digit = U'0'; digit <= U'9'; ++digit)
            CHECK(std::abs(FontMetrics::of(face).advance(std::u32string(1, digit)).width - 572) < 0.5);
    CHECK(FontMetrics::of(Face::regular).covers(U'Ễ'));
    CHECK(FontMetrics::of(Face::regular).covers(U'Щ'));
    CHECK(!FontMetrics::of(Face::regular).covers(U'\u2192'));
    CHECK(!FontMetrics::of(Face::regular).covers(U'\u05D3'));
}

TEST_CASE("large print is one and a half times as large in every role but the footer") {
    const std::string text =
        "## Heading {aside=\"aside\"}\n\nParagraph.\n\n- item\n\n| | |\n|---|---|\n| label | {{x}} |\n\n"
        "## Act {.act .steps}\n\n1. **Do** this.\n\n## Strip {.strip}\n\n- fact\n";
    const TemplateData::Object data{{"x", value_of("x", {{kNumber, "16"}, {kUnit, "\u00A0cmH2O"}})}};
    const LaidOut normal = laid_out(document_of(text, data));
    const LaidOut large = laid_out(document_of(text, data), {Paper::letter, 1.5});
    REQUIRE(normal.sheet.pages.size() == 1);
    std::vector<const PlacedItem*> first;
    std::vector<const PlacedItem*> second;
    for (const auto& [sheet, items] : {std::pair{&normal.sheet, &first}, std::pair{&large.sheet, &second}})
        for (const PlacedPage& page : sheet->pages)
            for (const PlacedItem& item : page.items)
                if (item.kind == PlacedItem::Kind::text && item.origin.node != Origin::kFurniture)
                    items->push_back(&item);
    REQUIRE(first.size() == second.size());
    for (std::size_t at = 0; at < first.size(); ++at) {
        CHECK(second[at]->text.text == first[at]->text.text);
        CHECK(std::abs(second[at]->text.size - 1.5 * first[at]->text.size) < 1e-9);
    }
}

TEST_CASE("each placed item knows its part of the document, in reading order, and its field") {
    const TemplateData::Object data{{"x", value_of("alarms.high_pressure", {{kNumber, "31"}, {kUnit, "\u00A0cmH2O"}})}};
    const LaidOut out = laid_out(document_of("## One\n\nText {{x}}.\n\n- a\n- b\n\n## Two\n\nMore.\n", data));
    std::size_t node = 0;
    for (const PlacedItem& item : out.sheet.pages.front().items) {
        CHECK(!(item.kind == PlacedItem::Kind::text && item.origin.role.empty()));
        if (item.origin.node == Origin::kFurniture) continue;
        CHECK(item.origin.node >= node);
        node = item.origin.node;
    }
    CHECK(items_of(out.sheet, "alarms.high_pressure").size() == 2);
}
