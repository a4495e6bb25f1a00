#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "packet/print_home_sheets.hpp"
#include "sheets/checks/passages.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// Whole homes with `--lang en+es`: whoever reads only one of the languages misses nothing of what a sheet in that
/// language alone says.
namespace {

std::set<std::string> words_of(const Document& document) {
    std::set<std::string> words;
    for (const sheet_check::Passage& passage : sheet_check::passages_of(document))
        for (const sheet_check::Token& token : sheet_check::tokens_of(passage.text)) words.insert(token.folded);
    return words;
}

const SetSheet* named(const SetHome& home, const std::string& name) {
    const auto found =
        std::ranges::find_if(home.sheets, [&](const SetSheet& sheet) { return sheet.document.name == name; });
    return found == home.sheets.end() ? nullptr : &*found;
}

/// Words of a sheet in one language that the sheet in both does not have. A sheet's own code is another one in both.
std::string missing_in(const Document& both, const Document& one) {
    const std::set<std::string> there = words_of(both);
    std::string missing;
    for (const std::string& word : words_of(one))
        if (!there.contains(word)) missing += word + " ";
    return missing;
}

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
                CHECK(missing_in(sheet.document, english->document) == "");
                continue;
            }
            CHECK(sheet.document.second_language == "es");
            if (lists_others(sheet.document)) continue;  // prints the codes of sheets in two languages
            CHECK(missing_in(sheet.document, english->document) == "");
            // Between numbers that both read alike, the word of the second is left out: "95 a 98 %".
            const std::string missing = missing_in(sheet.document, spanish->document);
            CHECK_MESSAGE((missing == "" || missing == "A "), missing);
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
                    CHECK(area_of(item).within(live_area(page), 0.01));
                    if (!is_text(item)) continue;
                    const Area area = area_of(item);
                    for (const Area& other : texts) CHECK_MESSAGE(!area.overlaps(other, 0.01), words_of(item));
                    texts.push_back(area);
                }
            }
        }
    }
}

TEST_CASE("the responder sheet is in the region's language first, whichever the family reads first") {
    const SetSheet* sheet = named(set_home_in_both("adult-mask"), "responder-sheet");
    REQUIRE(sheet != nullptr);
    CHECK(sheet->document.language == "en");
    CHECK(sheet->document.second_language == "es");
}
