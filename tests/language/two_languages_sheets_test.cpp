#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <set>
#include <string>

#include "packet/print_home_sheets.hpp"
#include "sheets/checks/passages.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// Whole homes with `--lang en+es`: whoever reads only one of the languages misses nothing of what a sheet in that
/// language alone says.
namespace {

using Words = std::set<std::string>;

void add_words(std::string_view text, Words& words) {
    for (const sheet_check::Token& token : sheet_check::tokens_of(text)) words.insert(token.folded);
}

/// What is printed of a passage: a figure's alternative is only heard.
void add_printed(const Inlines& inlines, Words& words) {
    Inlines printed;
    for (const Inline& piece : inlines)
        if (piece.kind != Inline::Kind::figure) printed.push_back(piece);
    add_words(plain_blanks(plain_text(printed)), words);
}

void add_printed(const std::vector<Block>& blocks, Words& words) {
    for (const Block& block : blocks) {
        add_printed(block.inlines, words);
        add_printed(block.aside, words);
        for (const TableCell& cell : block.head.cells) add_printed(cell.inlines, words);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) add_printed(cell.inlines, words);
        add_printed(block.children, words);
    }
}

Words said_by(const Document& document) {
    Words words;
    add_printed(document.title, words);
    add_printed(document.blocks, words);
    return words;
}

const SetSheet* named(const SetHome& home, const std::string& name) {
    const auto found =
        std::ranges::find_if(home.sheets, [&](const SetSheet& sheet) { return sheet.document.name == name; });
    return found == home.sheets.end() ? nullptr : &*found;
}

/// Words of a sheet in one language that are not drawn on the sheet in both.
std::string missing_in(const SetSheet& both, const Document& one) {
    Words drawn;
    add_words(words_of(both.placed), drawn);
    std::string missing;
    for (const std::string& word : said_by(one))
        if (!drawn.contains(word)) missing += word + " ";
    return missing;
}

/// What a line may be too long for its column, in points: 0.02 mm.
constexpr double kFit = 0.06;

bool lists_others(const Document& document) { return document.front("lists").has_value(); }
bool in_one_language(const Document& document) { return document.front("two_languages") == "no"; }

}  // namespace

TEST_CASE("a sheet in two languages says all that each of them says alone") {
    std::size_t compared = 0;
    for (const char* const home : kAllHomes) {
        const SetHome& both = set_home_in_both(home);
        CAPTURE(std::string{home});
        REQUIRE(both.refusals() == "");
        CHECK(both.sheets.size() == set_demo_home(home).sheets.size());
        for (const SetSheet& sheet : both.sheets) {
            CAPTURE(sheet.document.name);
            const SetSheet* english = named(set_demo_home(home), sheet.document.name);
            const SetSheet* spanish = named(set_spanish_home(home), sheet.document.name);
            REQUIRE(english != nullptr);
            REQUIRE(spanish != nullptr);
            if (in_one_language(sheet.document)) {
                CHECK(sheet.document.second_language == "");
                CHECK(missing_in(sheet, english->document) == "");
                continue;
            }
            CHECK(sheet.document.second_language == "es");
            if (lists_others(sheet.document)) continue;  // prints the codes of sheets in two languages
            // Some times of the outage plan are drawn to scale, in one language as in two.
            CHECK(missing_in(sheet, english->document) == missing_in(*english, english->document));
            // Between numbers that both read alike, the word of the second is left out: "95 a 98 %".
            std::string missing = missing_in(sheet, spanish->document);
            if (missing.starts_with("A ")) missing.erase(0, 2);
            // The title of a chart says once that it is one; its number and its name stand there in both.
            if (const auto chart = missing.find("HOJA "); chart != std::string::npos) missing.erase(chart, 5);
            std::string drawn = missing_in(*spanish, spanish->document);
            CHECK(missing == drawn);
            ++compared;
        }
    }
    CHECK(compared > 100);
}

TEST_CASE("on pages in two languages nothing lies over another text or leaves its page") {
    for (const char* const home : kAllHomes) {
        for (const SetSheet& sheet : set_home_in_both(home).sheets) {
            CAPTURE(std::string{home});
            CAPTURE(sheet.document.name);
            for (const PlacedPage& page : sheet.placed.pages) {
                std::vector<Area> texts;
                for (const PlacedItem& item : page.items) {
                    const Area area = area_of(item);
                    CHECK_MESSAGE(area.within(live_area(page), kFit), words_of(item));
                    if (!is_text(item)) continue;
                    for (const Area& other : texts) CHECK_MESSAGE(!area.overlaps(other, 0.01), words_of(item));
                    texts.push_back(area);
                }
            }
        }
    }
}

namespace {

/// The letters of a text: capitals are 0.714 of the size high, a descender reaches 0.2 below.
Area letters_of(const PlacedItem& item) {
    const TextRun& run = item.text;
    return {run.origin.x, run.origin.y - 0.714 * run.size, run.origin.x + run.width, run.origin.y + 0.2 * run.size};
}

/// The head of an arrow is too small for words: its box would touch those beside it.
bool is_black_field(const PlacedItem& item) {
    if (item.origin.role == "arrow") return false;
    return (item.kind == PlacedItem::Kind::box && item.box.filled && item.box.ink == Ink::black) ||
           (item.kind == PlacedItem::Kind::path && item.path.filled && item.path.ink == Ink::black);
}

/// White words that lie beyond their black field, and black ones that lie on one.
std::string unreadable_on(const PlacedPage& page) {
    std::vector<Area> fields;
    for (const PlacedItem& item : page.items)
        if (is_black_field(item)) fields.push_back(area_of(item));
    std::string unreadable;
    for (const PlacedItem& item : page.items) {
        if (!is_text(item)) continue;
        const Area letters = letters_of(item);
        const bool white = item.text.ink == Ink::white;
        const bool wrong =
            white ? std::ranges::none_of(fields, [&](const Area& field) { return letters.within(field, 0.01); })
                  : std::ranges::any_of(fields, [&](const Area& field) { return letters.overlaps(field, 0.01); });
        if (wrong) unreadable += words_of(item) + "; ";
    }
    return unreadable;
}

}  // namespace

TEST_CASE("white words lie whole on black, and black words beside it") {
    std::size_t white = 0;
    for (const char* const home : kAllHomes) {
        CAPTURE(std::string{home});
        for (const SetHome* set : {&set_demo_home(home), &set_spanish_home(home), &set_home_in_both(home)}) {
            for (const SetSheet& sheet : set->sheets) {
                CAPTURE(sheet.document.name);
                for (const PlacedPage& page : sheet.placed.pages) {
                    CHECK(unreadable_on(page) == "");
                    for (const PlacedItem& item : page.items) white += is_text(item) && item.text.ink == Ink::white;
                }
            }
        }
    }
    CHECK(white > 1000);
}

TEST_CASE("in two languages and large print every home has all its sheets, with white words on black") {
    std::size_t charts = 0;
    for (const char* const home : kAllHomes) {
        CAPTURE(std::string{home});
        const SetHome& large = set_home_in_both_large(home);
        CHECK(large.refusals() == "");
        CHECK(large.sheets.size() == set_home_in_both(home).sheets.size());
        for (const SetSheet& sheet : large.sheets) {
            CAPTURE(sheet.document.name);
            for (const PlacedPage& page : sheet.placed.pages) CHECK(unreadable_on(page) == "");
            if (sheet.document.sheet != "alarm-response" || sheet.document.place.empty()) continue;
            // The box is on the page that later ones name.
            const std::string words = words_of(sheet.placed);
            static const std::regex kSent{R"(Rescue steps\s+on\s+page\s+(\d))"};
            std::smatch sent;
            if (!std::regex_search(words, sent, kSent)) continue;
            const std::size_t page = std::stoul(sent[1]);
            REQUIRE(page >= 1);
            REQUIRE(page <= sheet.placed.pages.size());
            CHECK(std::ranges::any_of(sheet.placed.pages[page - 1].items, [](const PlacedItem& item) {
                return item.kind == PlacedItem::Kind::box && item.origin.role == "steps";
            }));
            ++charts;
        }
    }
    CHECK(charts > 40);
}

TEST_CASE("the responder sheet is in the region's language first, whichever the family reads first") {
    const SetSheet* sheet = named(set_home_in_both("adult-mask"), "responder-sheet");
    REQUIRE(sheet != nullptr);
    CHECK(sheet->document.language == "en");
    CHECK(sheet->document.second_language == "es");
}
