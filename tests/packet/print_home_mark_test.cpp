#include <doctest/doctest.h>

#include <algorithm>

#include "print_home_sheets.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// On every page, on none, or something in between, which is wrong in any case.
std::string marked(const SetHome& home) {
    std::size_t pages = 0;
    std::size_t with_mark = 0;
    for (const SetSheet& sheet : home.sheets) {
        for (const PlacedPage& page : sheet.placed.pages) {
            ++pages;
            const bool mark = words_of(page).find("NOT YET CHECKED") != std::string::npos;
            if (mark) ++with_mark;
        }
    }
    return pages == 0 ? "nothing" : with_mark == 0 ? "none" : with_mark == pages ? "every page" : "some pages";
}

}  // namespace

TEST_CASE("every page is marked until two people stand behind the orders and each danger is accepted") {
    struct Row {
        const char* home;
        const char* edits;
        const char* expected;
    };
    const Row rows[] = {
        {"adult-tracheostomy", "", "none"},
        {"adult-mask", "", "none"},
        {"child-tracheostomy", "", "none"},  // its open gap, no second machine, is accepted
        {"adult-tracheostomy", "remove: orders.verified_by", "every page"},
        {"adult-tracheostomy", "remove: orders.second_check", "every page"},
        {"adult-tracheostomy", "orders.second_check.name: Odile Mbanefo", "every page"},   // the same person twice
        {"adult-tracheostomy", "orders.second_check.name: odile  MBANEFO", "every page"},  // and in other letters
        {"child-tracheostomy", "remove: accepted", "every page"},
        {"child-tracheostomy", "dependence.unaided_asleep.time: 25 min", "every page"},  // the accepted number changed
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.edits});
        const SourceText source = row.edits[0] == '\0' ? demo_profile(row.home) : edited_profile(row.home, row.edits);
        for (const double scale : {kNormalPrint, kLargePrint}) {
            const SetHome home = set_home(source, {Paper::letter, scale});
            CHECK_MESSAGE(!home.refused_by_profile(), home.refusals());
            CHECK_MESSAGE(!home.refused_by_sheets(), home.refusals());
            CHECK(marked(home) == row.expected);
        }
    }
}

TEST_CASE("the mark is part of what a sheet says: without it the code is another") {
    const SetHome& checked = set_demo_home("adult-mask");
    const SetHome open = set_home(edited_profile("adult-mask", "remove: orders.second_check"));
    REQUIRE(checked.sheets.size() == open.sheets.size());
    const auto code = [](const SetSheet& sheet) {
        for (const PlacedItem& item : sheet.placed.pages.front().items)
            if (item.origin.role == "code") return words_of(item);
        return std::string{};
    };
    for (std::size_t at = 0; at < open.sheets.size(); ++at) {
        CHECK(code(checked.sheets[at]) != "");
        CHECK(code(checked.sheets[at]) != code(open.sheets[at]));
    }
}

TEST_CASE("in two languages the mark warns in both") {
    for (const SetSheet& sheet : set_home_in_both("adult-mains-only").sheets)
        for (const PlacedPage& page : sheet.placed.pages) {
            CAPTURE(sheet.document.name);
            const std::string words = words_of(page);
            CHECK(words.find("NOT YET CHECKED") != std::string::npos);
            const bool both = !sheet.document.second_language.empty();
            CHECK((words.find("AÚN SIN REVISAR") != std::string::npos) == both);
        }
}
