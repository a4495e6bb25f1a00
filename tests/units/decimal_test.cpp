#include <doctest/doctest.h>

#include "units/decimal.hpp"
#include "units/measure.hpp"

using namespace ventfolio;

TEST_CASE("a decimal keeps its digits and prints with a leading and without a trailing zero") {
    struct Row {
        const char* written;
        const char* plain;
        const char* labelled;
        double value;
    };
    // Leading and trailing zeros: list of error-prone notations, Institute for Safe Medication Practices.
    constexpr Row rows[] = {
        {"16", "16", "16", 16},        {".5", "0.5", "0.5", 0.5},
        {"0.50", "0.5", "0.50", 0.5},  {"5.0", "5", "5.0", 5},
        {"5.50", "5.5", "5.50", 5.5},  {"8.0", "8", "8.0", 8},
        {"0.0", "0", "0.0", 0},        {"007", "7", "7", 7},
        {"000", "0", "0", 0},          {"00.50", "0.5", "0.50", 0.5},
        {"100", "100", "100", 100},    {"-40", "-40", "-40", -40},
        {"-.5", "-0.5", "-0.5", -0.5}, {"-0", "0", "0", 0},
        {"-0.0", "0", "0.0", 0},       {"10.05", "10.05", "10.05", 10.05},
        {"0.1", "0.1", "0.1", 0.1},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.written});
        const auto decimal = Decimal::parse(row.written);
        REQUIRE(decimal);
        CHECK(decimal->written() == std::string{row.written});
        CHECK(decimal->plain() == std::string{row.plain});
        CHECK(decimal->as_labelled() == std::string{row.labelled});
        CHECK(decimal->value() == doctest::Approx(row.value).epsilon(1e-15));
    }
}

TEST_CASE("what is not a plain decimal is not read as one") {
    for (const char* text :
         {"",   ".",  "-",   "-.", "5.",  "+5",   "1e3", "0x10", "1,5", "1.2.3",   "1 200",
          " 5", "5 ", "--5", "5-", "nan", ".nan", "inf", "½",    "５",  "\u22125", "1234567890123456789"}) {
        CAPTURE(std::string{text});
        CHECK(!Decimal::parse(text));
    }
}

TEST_CASE("a number never passes through binary on its way to print") {
    // 0.1 + 0.2 is 0.30000000000000004 in binary (IEEE 754 double).
    CHECK(Decimal::parse("0.3")->plain() == "0.3");
    CHECK(Decimal::rounded(0.1 + 0.2, 1).plain() == "0.3");
    CHECK(Decimal::rounded(2.5, 0).plain() == "3");
    CHECK(Decimal::rounded(-2.5, 0).plain() == "-3");
    CHECK(Decimal::rounded(-0.04, 1).plain() == "0");
    CHECK(Decimal::rounded(37.84, 1).plain() == "37.8");
    CHECK(Decimal::whole(-1200).plain() == "-1200");
}

TEST_CASE("decimals are equal when they say the same number") {
    CHECK(*Decimal::parse("5.0") == *Decimal::parse("5"));
    CHECK(*Decimal::parse(".5") == *Decimal::parse("0.50"));
    CHECK(!(*Decimal::parse("5") == *Decimal::parse("5.01")));
}

TEST_CASE("a measure is a number, a blank and a unit that is accepted") {
    struct Row {
        const char* text;
        const char* measure;
    };
    constexpr Row rows[] = {
        {"35 cmH2O", "35 cmH2O"}, {"  35   hPa ", "35 hPa"}, {".5 kPa", "0.5 kPa"}, {"-40 cmH2O", "-40 cmH2O"}};
    for (const Row& row : rows) {
        CAPTURE(std::string{row.text});
        const auto parsed = parse_measure(row.text, units_of(Dimension::pressure));
        REQUIRE(std::holds_alternative<Measure>(parsed));
        CHECK(std::get<Measure>(parsed).text() == std::string{row.measure});
    }
    const auto percent = parse_measure("92%", units_of(Dimension::fraction));
    REQUIRE(std::holds_alternative<Measure>(percent));
    CHECK(std::get<Measure>(percent).as<Dimension::fraction>().in(unit::percent) == doctest::Approx(92));
}

TEST_CASE("why a text is not a measure is told") {
    struct Row {
        const char* text;
        MeasureFault fault;
    };
    constexpr Row rows[] = {
        {"", MeasureFault::empty},
        {"   ", MeasureFault::empty},
        {"about 35", MeasureFault::not_a_number},
        {"cmH2O", MeasureFault::not_a_number},
        {"1e3 cmH2O", MeasureFault::not_a_number},
        {"3,5 cmH2O", MeasureFault::not_a_number},
        {"12-14 cmH2O", MeasureFault::not_a_number},
        {"<90 cmH2O", MeasureFault::not_a_number},
        {"35", MeasureFault::without_unit},
        {"35cmH2O", MeasureFault::glued},
        {"35 cmH20", MeasureFault::unknown_unit},
        {"35 cmh2o", MeasureFault::unknown_unit},
        {"35 mL", MeasureFault::wrong_dimension},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.text});
        const auto parsed = parse_measure(row.text, units_of(Dimension::pressure));
        REQUIRE(std::holds_alternative<MeasureFault>(parsed));
        CHECK(std::get<MeasureFault>(parsed) == row.fault);
    }
}

TEST_CASE("measures compare as written: another unit is another setting") {
    const auto measure = [](const char* text) {
        return std::get<Measure>(parse_measure(text, units_of(Dimension::pressure)));
    };
    CHECK(measure("35.0 cmH2O") == measure("35 cmH2O"));
    CHECK(!(measure("35 cmH2O") == measure("35 hPa")));
    CHECK(measure("1 kPa").canonical() == doctest::Approx(measure("10 hPa").canonical()));
}
