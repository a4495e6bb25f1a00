#include "published.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "ask.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::vector<PublishedRow> all_rows() {
    std::vector<PublishedRow> rows;
    for (const auto part : {published_body_and_breath(), published_gas(), published_power_and_paper(),
                            published_airway_and_alarms(), published_by_units()})
        rows.insert(rows.end(), part.begin(), part.end());
    return rows;
}

bool is_from_outside(std::string_view source) {
    return source.starts_with("pub: ") || source.starts_with("mem: ") || source.starts_with("lib: ");
}

}  // namespace

TEST_CASE("every calculator gives its published values") {
    for (const PublishedRow& row : all_rows()) {
        CAPTURE(std::string{row.calculator});
        CAPTURE(std::string{row.arguments});
        CAPTURE(std::string{row.source});
        const auto outcome = asked(row.calculator, row.arguments);
        REQUIRE(std::holds_alternative<Calculation>(outcome));
        const Found got = found(std::get<Calculation>(outcome), row.result);
        const double expected = row.expression != nullptr ? oracle::gnu_units(row.expression, row.in) : row.expected;
        CAPTURE(expected);
        if (row.text != nullptr)
            CHECK(got.text == row.text);
        else
            CHECK(std::abs(got.exact - expected) <= row.within);
    }
}

TEST_CASE("every calculator has two published values, or says that no more were found") {
    const std::vector<PublishedRow> rows = all_rows();
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const auto of_it = [&](const PublishedRow& row) { return row.calculator == calculator.name; };
        const auto outside = std::ranges::count_if(
            rows, [&](const PublishedRow& row) { return of_it(row) && is_from_outside(row.source); });
        const bool says_none = std::ranges::any_of(rows, [&](const PublishedRow& row) {
            return of_it(row) && std::string_view{row.source}.starts_with("none: ");
        });
        CHECK((outside >= 2) != says_none);
    }
    for (const PublishedRow& row : rows) {
        CAPTURE(std::string{row.source});
        CHECK(find_calculator(row.calculator) != nullptr);
        CHECK((is_from_outside(row.source) || std::string_view{row.source}.starts_with("none: ")));
    }
}
