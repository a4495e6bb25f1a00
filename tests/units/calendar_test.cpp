#include <random>

#include "units/calendar.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;

namespace {

Date day(const char* text) {
    const auto date = Date::parse(text);
    CAPTURE(std::string{text});
    REQUIRE(date);
    return *date;
}

}  // namespace

TEST_CASE("only days that exist are dates") {
    for (const char* good : {"1900-01-01", "2199-12-31", "2024-02-29", "2000-02-29", "2026-02-28"}) {
        CAPTURE(std::string{good});
        REQUIRE(Date::parse(good));
        CHECK(Date::parse(good)->iso() == good);
    }
    // 1900 and 2100 are no leap years, 2000 is one: Gregorian rule.
    for (const char* bad :
         {"1900-02-29",  "2100-02-29",  "2026-02-29", "2026-02-30", "2026-04-31", "2026-13-01", "2026-00-10",
          "2026-01-00",  "1899-12-31",  "2200-01-01", "2026-2-3",   "26-02-03",   "2026/02/03", "03-02-2026",
          "2026-02-03 ", " 2026-02-03", "2026-+2-03", "2026-02--3", "",           "20260203",   "2026-02-0x"}) {
        CAPTURE(std::string{bad});
        CHECK(!Date::parse(bad));
    }
}

TEST_CASE("months and days later agree with published values") {
    CHECK(day("2026-01-31").plus_months(1).iso() == "2026-02-28");      // lib: Temporal and date-fns
    CHECK(day("2026-01-15").plus_days(90).iso() == "2026-04-15");       // lib: Temporal and date-fns
    CHECK(day("2024-01-31").plus_months(1).iso() == "2024-02-29");      // der: leap year
    CHECK(day("2026-12-31").plus_months(2).iso() == "2027-02-28");      // der
    CHECK(day("2024-02-29").plus_months(12).iso() == "2025-02-28");     // lib: Temporal, which takes the month's end
    CHECK(days_between(day("2019-05-31"), day("2026-01-15")) == 2421);  // lib: Temporal
    CHECK(days_between(day("2026-01-15"), day("2019-05-31")) == -2421);
}

TEST_CASE("days later agree with another calendar") {
    std::mt19937 random{20260112};
    for (int time = 0; time < 40; ++time) {
        const Date from = day("2020-01-01").plus_days(static_cast<int>(random() % 4000));
        const int days = static_cast<int>(random() % 800);
        CAPTURE(from.iso());
        CAPTURE(days);
        const Date later = from.plus_days(days);
        CHECK(later.iso() == oracle::gnu_date(from.iso() + " +" + std::to_string(days) + " days"));
        CHECK(days_between(from, later) == days);
    }
}

TEST_CASE("times of day are read in the forms that people write") {
    struct Row {
        const char* text;
        const char* iso;
    };
    constexpr Row rows[] = {
        {"8:30 PM", "20:30"},  {"8 PM", "20:00"},     {"8PM", "20:00"},      {"20:30", "20:30"},
        {"08:05", "08:05"},    {"noon", "12:00"},     {"midnight", "00:00"}, {"12:00 AM", "00:00"},
        {"12:00 PM", "12:00"}, {"12:30 AM", "00:30"}, {"0:00", "00:00"},     {"23:59", "23:59"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.text});
        REQUIRE(ClockTime::parse(row.text));
        CHECK(ClockTime::parse(row.text)->iso() == std::string{row.iso});
    }
    for (const char* bad : {"", "8", "24:00", "8:60", "8:5", "13 PM", "0 AM", "0:30 PM", "8:30:00", "8.30", "8:-0",
                            "-0:30", "eight", ":30", "8: 30", "PM"}) {
        CAPTURE(std::string{bad});
        CHECK(!ClockTime::parse(bad));
    }
}

TEST_CASE("a moment is a day, a blank and a time") {
    CHECK(Moment::parse("2026-01-12 10:00")->iso() == "2026-01-12 10:00");
    CHECK(Moment::parse("2026-01-12 8:30 PM")->iso() == "2026-01-12 20:30");
    for (const char* bad :
         {"2026-01-12", "2026-01-12T10:00", "2026-02-30 10:00", "2026-01-12 25:00", "10:00 2026-01-12"}) {
        CAPTURE(std::string{bad});
        CHECK(!Moment::parse(bad));
    }
    CHECK(*Moment::parse("2026-01-12 23:59") < *Moment::parse("2026-01-13 00:00"));
}

TEST_CASE("a span of the clock runs over midnight") {
    CHECK(ClockSpan::parse("8 PM to 9 AM")->minutes() == 13 * 60);
    CHECK(ClockSpan::parse("9 AM to 8 PM")->minutes() == 11 * 60);
    CHECK(ClockSpan::parse("noon to noon")->minutes() == 24 * 60);
    CHECK(ClockSpan::parse("23:59 to 00:00")->minutes() == 1);
    for (const char* bad : {"8 PM", "8 PM-9 AM", "8 PM to", "to 9 AM", "8 PM to 9 AM to 10 AM"}) {
        CAPTURE(std::string{bad});
        CHECK(!ClockSpan::parse(bad));
    }
}

TEST_CASE("an interval leads to the day on which something is due again") {
    const Date last = day("2026-01-31");
    CHECK(Interval::parse("90 days")->after(day("2026-01-15")).iso() == "2026-04-15");  // lib: Temporal and date-fns
    CHECK(Interval::parse("1 month")->after(last).iso() == "2026-02-28");               // lib: the same
    CHECK(Interval::parse("2 weeks")->after(last).iso() == oracle::gnu_date("2026-01-31 +2 weeks"));
    CHECK(Interval::parse("1 year")->after(last).iso() == oracle::gnu_date("2026-01-31 +1 year"));
    CHECK(Interval::parse("1 days")->text() == "1 day");
    CHECK(Interval::parse("6 month")->text() == "6 months");
    for (const char* bad :
         {"", "0 days", "-1 days", "3661 days", "days", "weekly", "1.5 weeks", "2  weeks", "2 fortnights"}) {
        CAPTURE(std::string{bad});
        CHECK(!Interval::parse(bad));
    }
}
