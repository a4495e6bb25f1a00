#include <doctest/doctest.h>

#include <cmath>

#include "copies.hpp"
#include "value_reader.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using trial::DrawnPage;

// Printers and fax machines leave an edge of the paper white: 4 to 6 mm is common practice, no source.

namespace {

constexpr double kMillimetresAnInch = 25.4;

/// Ink, in black dots, of a page within so many millimetres of its edges.
double ink_at_edges(const DrawnPage& page, const Copy& copy, double millimetres) {
    const auto across = static_cast<std::size_t>(std::ceil(millimetres / kMillimetresAnInch * copy.dots_across));
    const auto down = static_cast<std::size_t>(std::ceil(millimetres / kMillimetresAnInch * copy.dots_down));
    return page.ink() - page.ink(across, down, page.width() - 2 * across, page.height() - 2 * down);
}

void nothing_is_lost(const char* home) {
    const SetHome& set = set_demo_home(home);
    REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
    CAPTURE(std::string{home});
    const std::vector<DrawnPage> pages = copied(sheets_named(set, {}), kFax);
    CHECK(pages.size() >= set.sheets.size());
    for (std::size_t page = 0; page < pages.size(); ++page) {
        CAPTURE(page + 1);
        CHECK(ink_at_edges(pages[page], kFax, 6) == 0);
        CHECK(ink_at_edges(pages[page], kFax, 60) > 100);  // header and footer: the pages are not empty
    }
}

}  // namespace

TEST_CASE("no ink is lost when the outer 6 mm of a page are cut off") { nothing_is_lost("adult-tracheostomy"); }

TEST_CASE("no ink of any demo home is lost when the outer 6 mm of a page are cut off" * doctest::skip()) {
    for (const char* home : kAllHomes) nothing_is_lost(home);
}
