#include "calc/age.hpp"

#include <chrono>
#include <tuple>

#include "calc/body_mass_index.hpp"
#include "calc/next_due_date.hpp"
#include "calc/quantities.hpp"
#include "calc/safe_minutes.hpp"
#include "calc/squeeze_interval.hpp"
#include "calc/vital_sign_band.hpp"

namespace ventfolio::calc {

TEST_CASE("an age agrees with calendar libraries") {
    struct Row {
        const char* birth;
        const char* day;
        int years;
        int months;
        int days;
        const char* source;
    };
    constexpr Row rows[] = {
        {"2019-05-31", "2026-01-15", 6, 7, 15, "lib: Temporal polyfill"},
        {"2024-02-29", "2025-02-28", 0, 11, 30, "lib: Temporal polyfill"},
        {"2008-06-15", "2026-06-14", 17, 11, 30, "lib: Temporal polyfill; date-fns says 17 years too"},
        {"2008-06-15", "2026-06-15", 18, 0, 0, "lib: the same: 18 years, adult from this day"},
        {"2024-02-29", "2025-03-01", 1, 0, 0,
         "der: 29 February counts as 1 March. Temporal counts from 28 February "
         "and says 1 year 1 day: our choice, on purpose"},
        {"2023-01-31", "2023-03-01", 0, 1, 0,
         "der: the 31st of February counts as 1 March too. Temporal says 1 "
         "month 1 day"},
        {"2024-02-29", "2028-02-29", 4, 0, 0, "definition"},
        {"2026-02-03", "2026-02-03", 0, 0, 0, "definition: the day of birth"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.birth);
        CAPTURE(row.day);
        CAPTURE(row.source);
        const auto age = age_on(day(row.birth), day(row.day));
        REQUIRE(age);
        CHECK(age->years == row.years);
        CHECK(age->months == row.months);
        CHECK(age->days == row.days);
    }
    CHECK(age_on(day("2019-05-31"), day("2026-01-15"))->total_days == 2421);  // lib: Temporal; C++ chrono
}

TEST_CASE("nobody is born in the future or older than 120") {
    CHECK_FALSE(age_on(day("2026-02-04"), day("2026-02-03")));
    CHECK(age_on(day("1905-02-03"), day("2026-02-02"))->years == 120);
    CHECK_FALSE(age_on(day("1905-02-03"), day("2026-02-03")));
}

TEST_CASE("an age grows by a day at a time and its parts stay within their bounds") {
    for (const char* birth : {"2023-12-31", "2024-02-29", "2024-01-30", "2025-03-01"}) {
        Age before = *age_on(day(birth), day(birth));
        for (int passed = 1; passed <= 1600; ++passed) {
            const auto age = age_on(day(birth), day(birth).plus_days(passed));
            REQUIRE(age);
            CAPTURE(birth);
            CAPTURE(passed);
            CHECK(age->total_days == passed);
            CHECK(age->months >= 0);
            CHECK(age->months <= 11);
            CHECK(age->days >= 0);
            CHECK(age->days <= 30);
            CHECK(std::tie(before.years, before.months, before.days) < std::tie(age->years, age->months, age->days));
            before = *age;
        }
    }
}

TEST_CASE("infant, child and adult change on the birthday") {
    const Date birth = day("2008-06-15");
    CHECK(age_group(*age_on(birth, day("2009-06-14"))) == AgeGroup::infant);
    CHECK(age_group(*age_on(birth, day("2009-06-15"))) == AgeGroup::child);
    CHECK(age_group(*age_on(birth, day("2026-06-14"))) == AgeGroup::child);
    CHECK(age_group(*age_on(birth, day("2026-06-15"))) == AgeGroup::adult);
}

TEST_CASE("the squeeze interval is the set rate within what was published for the age") {
    struct Row {
        AgeGroup group;
        double rate;
        int from;
        int to;
        const char* source;
    };
    constexpr Row rows[] = {
        {AgeGroup::adult, 10, 6, 6, "pub: 10/min is every 6 s, AHA 2020 (training copies)"},
        {AgeGroup::child, 20, 3, 3, "pub: 20/min is every 3 s, the same"},
        {AgeGroup::child, 30, 2, 2, "pub: 30/min is every 2 s, the same"},
        {AgeGroup::adult, 12, 5, 5, "pub: 12/min is every 5 s, older course table"},
        {AgeGroup::adult, 0, 6, 6, "pub: without a rate, adult every 6 s, AHA 2020 (training copies)"},
        {AgeGroup::child, 0, 2, 3, "pub: without a rate, child every 2 to 3 s, the same"},
        {AgeGroup::infant, 0, 2, 3, "pub: infant the same"},
        {AgeGroup::adult, 14, 4, 4, "der: 4.29 s"},
        {AgeGroup::adult, 24, 3, 3, "der: 2.5 s, a half goes up"},
        {AgeGroup::adult, 40, 3, 3, "der: kept from becoming too fast"},
        {AgeGroup::adult, 6, 6, 6, "der: kept from becoming too slow"},
        {AgeGroup::child, 15, 3, 3, "der: the older 3 to 5 s is never printed for a child"},
        {AgeGroup::infant, 60, 2, 2, "der"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.rate);
        CAPTURE(row.source);
        CHECK(squeeze_interval(row.group, breaths(row.rate)) == SqueezeInterval{row.from, row.to});
    }
    CHECK(squeeze_interval(AgeGroup::adult, std::nullopt) == SqueezeInterval{6, 6});
    CHECK(squeeze_interval(AgeGroup::infant, std::nullopt) == SqueezeInterval{2, 3});
    CHECK_FALSE(squeeze_interval(AgeGroup::adult, breaths(1)));
    CHECK_FALSE(squeeze_interval(AgeGroup::adult, breaths(81)));
    for (const double number : kHostile) CHECK_FALSE(squeeze_interval(AgeGroup::adult, breaths(number)));
}

TEST_CASE("no rate gives an interval outside the limits of its age") {
    for (double rate = 2; rate <= 80; rate += 0.5) {
        const auto adult = squeeze_interval(AgeGroup::adult, breaths(rate));
        const auto child = squeeze_interval(AgeGroup::child, breaths(rate));
        REQUIRE(adult);
        REQUIRE(child);
        CHECK(adult->from >= 3);
        CHECK(adult->to <= 6);
        CHECK(child->from >= 2);
        CHECK(child->to <= 3);
    }
}

TEST_CASE("body mass index agrees with published worked examples") {
    // mem: US Centers for Disease Control, how to calculate: 68 kg and 165 cm, 24.98; 150 lb and 65 in, 24.96.
    CHECK(off(body_mass_index(kg(68), cm(165))->value, 24.98) <= 0.005);
    CHECK(off(body_mass_index(Mass::of(150, unit::lb), Length::of(65, unit::in))->value, 24.96) <= 0.005);
    // der: pounds written for kilograms and inches for centimetres leave what any body can be.
    CHECK(body_mass_index(kg(250), cm(165))->value > 80);
    CHECK(body_mass_index(kg(68), cm(65))->value > 80);
    CHECK_FALSE(body_mass_index(kg(68), cm(39)));
    CHECK_FALSE(body_mass_index(kg(351), cm(165)));
    for (const double number : kHostile) {
        CHECK_FALSE(body_mass_index(kg(number), cm(165)));
        CHECK_FALSE(body_mass_index(kg(68), cm(number)));
    }
}

TEST_CASE("vital signs agree with the table of PALS 2015") {
    struct Row {
        Age age;
        double pulse_low, pulse_high;
        double asleep_low, asleep_high;
        double rate_low, rate_high;
        double systolic_low, systolic_high;
    };
    // pub: all rows, PALS 2015 as reprinted in a paediatric reference chart.
    constexpr Row rows[] = {
        {{0, 0, 4, 4}, 100, 205, 90, 160, 30, 53, 67, 84},       {{0, 0, 28, 28}, 100, 190, 90, 160, 30, 53, 72, 104},
        {{1, 0, 0, 365}, 98, 140, 80, 120, 22, 37, 86, 106},     {{2, 11, 0, 1060}, 98, 140, 80, 120, 22, 37, 86, 106},
        {{3, 0, 0, 1096}, 80, 120, 65, 100, 20, 28, 89, 112},    {{6, 0, 0, 2191}, 75, 118, 58, 90, 18, 25, 97, 115},
        {{10, 0, 0, 3653}, 75, 118, 58, 90, 18, 25, 102, 120},   {{12, 0, 0, 4383}, 60, 100, 50, 90, 12, 20, 110, 131},
        {{15, 11, 30, 5843}, 60, 100, 50, 90, 12, 20, 110, 131},
    };
    for (const Row& row : rows) {
        CAPTURE(row.age.years);
        CAPTURE(row.age.total_days);
        const auto band = vital_sign_band(row.age);
        REQUIRE(band);
        CHECK(band->pulse_awake.low.in(unit::beats_per_min) == row.pulse_low);
        CHECK(band->pulse_awake.high.in(unit::beats_per_min) == row.pulse_high);
        CHECK(band->pulse_asleep.low.in(unit::beats_per_min) == row.asleep_low);
        CHECK(band->pulse_asleep.high.in(unit::beats_per_min) == row.asleep_high);
        CHECK(band->breathing.low.in(unit::breaths_per_min) == row.rate_low);
        CHECK(band->breathing.high.in(unit::breaths_per_min) == row.rate_high);
        CHECK(off(band->systolic.low.in(unit::mmHg), row.systolic_low) <= 1e-9);
        CHECK(off(band->systolic.high.in(unit::mmHg), row.systolic_high) <= 1e-9);
        CHECK_FALSE(band->past_table);
    }
    CHECK(vital_sign_band({16, 0, 0, 5844})->past_table);
    CHECK_FALSE(vital_sign_band({18, 0, 0, 6575}));
    CHECK_FALSE(vital_sign_band({-1, 0, 0, -1}));
}

TEST_CASE("medians of a large review lie inside the bands") {
    // pub: Fleming et al., Lancet 2011 (abstract): breathing 44 at birth and 26 at 2 years; pulse 127 at birth, 145 at
    // 1 month, 113 at 2 years.
    const Age birth{0, 0, 0, 0};
    const Age month{0, 1, 0, 31};
    const Age two{2, 0, 0, 731};
    CHECK(vital_sign_band(birth)->breathing.contains(breaths(44)));
    CHECK(vital_sign_band(two)->breathing.contains(breaths(26)));
    CHECK(vital_sign_band(birth)->pulse_awake.contains(PulseRate::of(127, unit::beats_per_min)));
    CHECK(vital_sign_band(month)->pulse_awake.contains(PulseRate::of(145, unit::beats_per_min)));
    CHECK(vital_sign_band(two)->pulse_awake.contains(PulseRate::of(113, unit::beats_per_min)));
    // pub: PALS 2006 allowed breathing of 60 for an infant; the tables must not be mixed.
    CHECK_FALSE(vital_sign_band(month)->breathing.contains(breaths(60)));
}

TEST_CASE("low blood pressure follows the published formula") {
    CHECK(off(lowest_systolic({4, 0, 0, 1461})->in(unit::mmHg), 78) <= 1e-9);   // pub: 70 + 2 x 4, PALS 2015
    CHECK(off(lowest_systolic({10, 0, 0, 3653})->in(unit::mmHg), 90) <= 1e-9);  // pub: 90 from 10 years
    CHECK(off(lowest_systolic({17, 0, 0, 6209})->in(unit::mmHg), 90) <= 1e-9);
    CHECK_FALSE(lowest_systolic({0, 11, 0, 340}));
    CHECK_FALSE(lowest_systolic({18, 0, 0, 6575}));
}

TEST_CASE("a due date agrees with calendar libraries") {
    struct Row {
        const char* last;
        Interval interval;
        const char* due;
        const char* source;
    };
    const Row rows[] = {
        {"2026-01-31", {1, Interval::Step::months}, "2026-02-28", "lib: Temporal polyfill and date-fns"},
        {"2026-01-15", {90, Interval::Step::days}, "2026-04-15", "lib: the same"},
        {"2024-02-29", {1, Interval::Step::years}, "2025-02-28", "lib: Temporal polyfill, which takes the month's end"},
        {"2026-01-15", {2, Interval::Step::weeks}, "2026-01-29", "lib: Temporal polyfill"},
        {"2025-12-31", {2, Interval::Step::months}, "2026-02-28", "lib: Temporal polyfill"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.last);
        CAPTURE(row.source);
        const auto due = next_due_date(day(row.last), row.interval);
        REQUIRE(due);
        CHECK(due->iso() == row.due);
    }
    CHECK_FALSE(next_due_date(day("2026-01-15"), {0, Interval::Step::days}));
    CHECK_FALSE(next_due_date(day("2026-01-15"), {3661, Interval::Step::days}));
    CHECK_FALSE(next_due_date(day("2026-01-15"), {200, Interval::Step::years}));
    CHECK(days_overdue(day("2026-02-01"), day("2026-02-03")) == 2);
    CHECK_FALSE(days_overdue(day("2026-02-03"), day("2026-02-03")));
    CHECK_FALSE(days_overdue(day("2026-02-04"), day("2026-02-03")));
}

TEST_CASE("days between agree with the chrono of the standard library") {
    using namespace std::chrono;
    const sys_days start{2023y / 11 / 30};
    for (int count = 1; count <= 800; ++count) {
        const year_month_day there{start + days{count}};
        const auto due = next_due_date(day("2023-11-30"), {count, Interval::Step::days});
        REQUIRE(due);
        CHECK(due->month() == static_cast<unsigned>(there.month()));
        CHECK(due->day() == static_cast<unsigned>(there.day()));
    }
}

TEST_CASE("paper promises half of the free minutes, and five at most") {
    struct Row {
        double minutes;
        int printed;  // 0: nothing is promised
    };
    constexpr Row rows[] = {{0, 0}, {1, 0}, {2, 1}, {3, 1}, {7, 3}, {9, 4}, {10, 5}, {11, 5}, {30, 5}, {240, 5}};
    for (const Row& row : rows) {
        CAPTURE(row.minutes);
        CHECK(safe_free_minutes(minutes(row.minutes)).value_or(0) == row.printed);  // common practice, no source
    }
    CHECK_FALSE(safe_free_minutes(hours(25)));
    for (const double number : kHostile) CHECK_FALSE(safe_free_minutes(minutes(number)));
}

}  // namespace ventfolio::calc
