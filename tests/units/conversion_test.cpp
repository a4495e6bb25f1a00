#include <cmath>

#include "units/measure.hpp"
#include "units/oracle.hpp"
#include "units/quantity.hpp"

using namespace ventfolio;

namespace {

const Unit& unit_named(std::string_view symbol) {
    // Canonical units that calculators use, but a profile does not.
    if (symbol == "Pa") return unit::Pa.unit;
    if (symbol == "L/s") return unit::L_per_s.unit;
    const Unit* unit = find_unit(symbol);
    CAPTURE(symbol);
    REQUIRE(unit);
    return *unit;
}

double converted(double number, std::string_view from, std::string_view to) {
    const Unit& source = unit_named(from);
    const Unit& target = unit_named(to);
    REQUIRE(source.dimension == target.dimension);
    return (number * source.factor + source.offset - target.offset) / target.factor;
}

}  // namespace

TEST_CASE("conversions give published values") {
    struct Row {
        double number;
        const char* from;
        const char* to;
        double expected;
        double within;
        const char* source;
    };
    constexpr Row rows[] = {
        {2000, "psi", "bar", 137.8951, 5e-5, "lib: GNU units, three more unit libraries"},
        {200, "psi", "bar", 13.7895, 5e-5, "lib: GNU units"},
        {30, "cmH2O", "kPa", 2.94200, 5e-6, "der: 98.0665 Pa, conventional value (NIST SP 811, table B.8)"},
        {30, "cmH2O", "hPa", 29.42, 5e-4, "der: the same"},
        {98.6, "°F", "°C", 37.0, 1e-9, "lib: GNU units; exact by definition"},
        {20, "cmH2O", "mmHg", 14.711, 5e-4, "der: 98.0665 / 133.322387415"},
        {8000, "ft", "m", 2438.4, 1e-9, "lib: GNU units; exact, 0.3048 m (NIST SP 811, B.6)"},
        {25, "mmHg", "cmH2O", 34.0, 0.05, "common practice: a cuff at 25 mmHg is 34 cmH2O"},
        {1, "bar", "psi", 14.503774, 5e-7, "der: 100000 / 6894.757293168"},
        {1, "bar", "cmH2O", 1019.716, 5e-4, "der: 100000 / 98.0665"},
        {1, "lb", "kg", 0.45359237, 1e-12, "exact, NIST SP 811, B.8"},
        {1, "in", "cm", 2.54, 1e-12, "exact, NIST SP 811, B.6"},
        {12, "Fr", "mm", 4, 1e-12, "a French is a third of a millimetre of outer diameter"},
        {60, "L/min", "L/s", 1, 1e-12, "definition"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.from});
        CAPTURE(std::string{row.to});
        CAPTURE(std::string{row.source});
        CHECK(std::abs(converted(row.number, row.from, row.to) - row.expected) <= row.within);
    }
}

TEST_CASE("every unit with a name in GNU units agrees with it") {
    struct Row {
        const char* symbol;
        const char* canonical;
        const char* theirs;
        const char* their_canonical;
    };
    constexpr Row rows[] = {
        {"Pa", "Pa", "Pa", "Pa"},         {"cmH2O", "Pa", "cm water", "Pa"},
        {"hPa", "Pa", "hPa", "Pa"},       {"mbar", "Pa", "mbar", "Pa"},
        {"kPa", "Pa", "kPa", "Pa"},       {"bar", "Pa", "bar", "Pa"},
        {"psi", "Pa", "psi", "Pa"},       {"mmHg", "Pa", "mmHg", "Pa"},
        {"mL", "L", "mL", "L"},           {"mL/min", "L/min", "mL/min", "L/min"},
        {"L/s", "L/min", "L/s", "L/min"}, {"ms", "s", "ms", "s"},
        {"min", "s", "min", "s"},         {"h", "s", "hour", "s"},
        {"days", "s", "day", "s"},        {"mm", "m", "mm", "m"},
        {"cm", "m", "cm", "m"},           {"in", "m", "inch", "m"},
        {"ft", "m", "ft", "m"},           {"Fr", "m", "1 frenchcathetersize", "m"},
        {"g", "kg", "g", "kg"},           {"lb", "kg", "lb", "kg"},
        {"%", "", "percent", "1"},        {"kW", "W", "kW", "W"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.symbol});
        const Unit& unit = unit_named(row.symbol);
        const double expected = oracle::gnu_units(row.theirs, row.their_canonical);
        CHECK(unit.factor == doctest::Approx(expected).epsilon(1e-9));
        if (*row.canonical != '\0') CHECK(unit_named(row.canonical).factor == 1);
    }
    for (const double fahrenheit : {-40.0, 32.0, 77.0, 98.6, 105.8}) {
        CAPTURE(fahrenheit);
        const double expected = oracle::gnu_units("tempF(" + std::to_string(fahrenheit) + ")", "tempC");
        CHECK(converted(fahrenheit, "°F", "°C") == doctest::Approx(expected).epsilon(1e-9));
    }
}

TEST_CASE("a number that goes to another unit and back is the same") {
    for (const Unit& from : all_units()) {
        for (const Unit& to : units_of(from.dimension)) {
            CAPTURE(std::string{from.symbol});
            CAPTURE(std::string{to.symbol});
            for (const double number : {-40.0, 0.0, 0.1, 36.6, 5000.0}) {
                const double there = converted(number, from.symbol, to.symbol);
                CHECK(converted(there, to.symbol, from.symbol) == doctest::Approx(number).epsilon(1e-12));
            }
        }
    }
}

TEST_CASE("every spelling of a unit leads to that unit and to no other") {
    std::size_t spellings = 0;
    for (const Unit& unit : all_units()) {
        for (const std::string_view spelling : spellings_of(unit)) {
            CAPTURE(std::string{spelling});
            REQUIRE(find_unit(spelling));
            CHECK(find_unit(spelling)->symbol == unit.symbol);
            ++spellings;
        }
    }
    CHECK(spellings > all_units().size());
    for (const char* unknown : {"", "ml", "l", "CMH2O", "cmh2o", "cmH20", "bpm", "K", "U", "cc", "mcg"}) {
        CAPTURE(std::string{unknown});
        CHECK(!find_unit(unknown));
    }
}

TEST_CASE("quantities add, scale and compare in their own dimension") {
    CHECK(Pressure::of(20, unit::cmH2O).in(unit::mmHg) == doctest::Approx(oracle::gnu_units("20 cm water", "mmHg")));
    CHECK((Volume::of(1, unit::L) - Volume::of(350, unit::mL)).in(unit::mL) == doctest::Approx(650));
    CHECK(Duration::of(2, unit::h) / Duration::of(30, unit::min) == doctest::Approx(4));
    CHECK(2 * Flow::of(30, unit::L_per_min) == Flow::of(1, unit::L_per_s));
    CHECK(Length::of(1, unit::in) < Length::of(3, unit::cm));
}
