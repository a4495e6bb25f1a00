#include "bench/homes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "packet/print_home.hpp"

namespace ventfolio::bench {

TEST_CASE("a caseload of invented homes is the same for one seed, and no two of its homes are") {
    std::set<std::string> texts;
    for (std::size_t at = 0; at < 200; ++at) {
        const std::string text = invented_home(7, at);
        CHECK(text == invented_home(7, at));
        texts.insert(text);
    }
    CHECK(texts.size() == 200);
    CHECK(invented_home(7, 3) != invented_home(8, 3));
}

TEST_CASE("an invented home is one that can be printed") {
    for (std::size_t at = 0; at < 60; ++at) {
        const CheckedHome home =
            check_home({record_number_of(at), invented_home(20260203, at)}, *Date::parse("2026-02-03"));
        CAPTURE(at);
        CHECK(home.readable);
        CHECK(std::ranges::none_of(home.findings, [](const Finding& one) { return one.severity == Severity::refuse; }));
    }
}

}  // namespace ventfolio::bench
