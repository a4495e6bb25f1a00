#include "calc/breath_timing.hpp"
#include "calc/minute_ventilation.hpp"
#include "calc/pressure_sums.hpp"
#include "calc/quantities.hpp"

namespace ventfolio::calc {

TEST_CASE("time out agrees with a published neonatal timing table") {
    struct Row {
        double rate;
        double in;
        double out;
        const char* source;
    };
    constexpr Row rows[] = {
        {30, 1.0, 1.0, "pub: neonatal timing study, Early Human Development 1991 (abstract)"},
        {30, 0.67, 1.33, "pub: the same"},
        {30, 0.5, 1.5, "pub: the same"},
        {60, 0.5, 0.5, "pub: the same"},
        {60, 0.33, 0.67, "pub: the same"},
        {60, 0.25, 0.75, "pub: the same"},
        {20, 1.0, 2.0, "der"},
        {25, 1.5, 0.9, "der"},
        {35, 1.2, 0.514, "der: a high-rate alarm of 35"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.rate);
        CAPTURE(row.in);
        CAPTURE(row.source);
        const auto timing = breath_timing(breaths(row.rate), seconds(row.in));
        REQUIRE(timing);
        CHECK(off(timing->out.in(unit::s), row.out) <= 0.0005);
    }
}

TEST_CASE("a ratio is written with the smaller side as 1") {
    struct Row {
        double rate;
        double in;
        double ratio_in;
        double ratio_out;
        double share;
        const char* source;
    };
    constexpr Row rows[] = {
        {30, 1.0, 1, 1, 0.5, "pub: equal times, neonatal timing study 1991"},
        {20, 1.0, 1, 2, 1.0 / 3, "der"},
        {14, 1.2, 1, 2.571, 0.28, "der: printed 1:2.6"},
        {25, 1.5, 1.667, 1, 0.625, "der: inverse, printed 1.67:1"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.rate);
        CAPTURE(row.source);
        const auto timing = breath_timing(breaths(row.rate), seconds(row.in));
        REQUIRE(timing);
        CHECK(off(timing->ratio.in, row.ratio_in) <= 0.001);
        CHECK(off(timing->ratio.out, row.ratio_out) <= 0.001);
        CHECK(off(timing->share_in, row.share) <= 1e-9);
    }
}

TEST_CASE("time in from a ratio agrees with the published table of times at 30 and 40 percent") {
    struct Row {
        double rate;
        double at_30_percent;
        double at_40_percent;
        const char* source;
    };
    constexpr Row rows[] = {
        {10, 1.8, 2.4, "mem: inspiratory-time table, mask ventilation task force, J Clin Sleep Med 2010;6(5):491"},
        {12, 1.5, 2.0, "mem: the same"},
        {15, 1.2, 1.6, "mem: the same"},
        {20, 0.9, 1.2, "mem: the same"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.rate);
        CAPTURE(row.source);
        CHECK(off(time_in_from_ratio(breaths(row.rate), {3, 7})->in(unit::s), row.at_30_percent) <= 1e-9);
        CHECK(off(time_in_from_ratio(breaths(row.rate), {4, 6})->in(unit::s), row.at_40_percent) <= 1e-9);
    }
}

TEST_CASE("a breath and its ratio give each other back") {
    for (double rate = 4; rate <= 60; rate += 1)
        for (double in = 0.25; in <= 3.0; in += 0.05) {
            const auto timing = breath_timing(breaths(rate), seconds(in));
            if (!timing || timing->ratio.in > 10 || timing->ratio.out > 10) continue;
            const auto back = time_in_from_ratio(breaths(rate), timing->ratio);
            REQUIRE(back);
            CHECK(off(back->in(unit::s), in) <= 1e-9);
            CHECK(off((timing->in + timing->out).in(unit::s), 60 / rate) <= 1e-9);
        }
}

TEST_CASE("a breath that fills its cycle has no timing") {
    CHECK_FALSE(breath_timing(breaths(60), seconds(1.0)));
    CHECK_FALSE(breath_timing(breaths(30), seconds(2.5)));
    CHECK_FALSE(breath_timing(breaths(0), seconds(1.0)));
    CHECK_FALSE(breath_timing(breaths(81), seconds(0.3)));
    CHECK_FALSE(breath_timing(breaths(12), seconds(0.19)));
    CHECK_FALSE(breath_timing(breaths(2), seconds(4.1)));
    CHECK_FALSE(time_in_from_ratio(breaths(20), {1, 0}));
    CHECK_FALSE(time_in_from_ratio(breaths(20), {0, 1}));
    CHECK_FALSE(breath_cycle(breaths(0)));
    CHECK(off(breath_cycle(breaths(12))->in(unit::s), 5) <= 1e-9);
}

TEST_CASE("time out falls as the rate rises and is never below nothing") {
    for (double in = 0.2; in <= 4.0; in += 0.1) {
        double before = 1e9;
        for (double rate = 2; rate <= 80; rate += 1) {
            const auto timing = breath_timing(breaths(rate), seconds(in));
            if (!timing) continue;
            CHECK(timing->out.in(unit::s) > 0);
            CHECK(timing->out.in(unit::s) < before);
            before = timing->out.in(unit::s);
        }
    }
    for (const double number : kHostile) {
        CHECK_FALSE(breath_timing(breaths(number), seconds(1)));
        CHECK_FALSE(breath_timing(breaths(12), seconds(number)));
        CHECK_FALSE(breath_cycle(breaths(number)));
        CHECK_FALSE(time_in_from_ratio(breaths(12), {1, number}));
        CHECK_FALSE(time_in_from_ratio(breaths(12), {number, 1}));
        CHECK_FALSE(time_in_from_ratio(breaths(number), {1, 2}));
    }
}

TEST_CASE("minute ventilation agrees with textbook examples") {
    struct Row {
        double rate;
        double ml;
        double l_per_min;
        const char* source;
    };
    constexpr Row rows[] = {
        {15, 500, 7.5, "mem: West, Respiratory Physiology, gas-exchange figure"},
        {12, 500, 6.0, "mem: Guyton and Hall, Medical Physiology"},
        {14, 450, 6.3, "der"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        const auto flow = minute_ventilation(breaths(row.rate), mL(row.ml));
        REQUIRE(flow);
        CHECK(off(flow->in(unit::L_per_min), row.l_per_min) <= 1e-9);
    }
    CHECK_FALSE(minute_ventilation(breaths(0), mL(500)));
    CHECK_FALSE(minute_ventilation(breaths(12), mL(9)));
    for (const double number : kHostile) {
        CHECK_FALSE(minute_ventilation(breaths(number), mL(500)));
        CHECK_FALSE(minute_ventilation(breaths(12), mL(number)));
    }
}

TEST_CASE("mean flow in is volume over time in") {
    // No published example was found. The second oracle is the other form of the formula: minute ventilation times
    // cycle over time in.
    CHECK(off(inspiratory_flow(mL(500), seconds(0.5))->in(unit::L_per_min), 60) <= 1e-9);    // der
    CHECK(off(inspiratory_flow(mL(450), seconds(1.2))->in(unit::L_per_min), 22.5) <= 1e-9);  // der
    for (double rate = 5; rate <= 40; rate += 1)
        for (double volume = 50; volume <= 1000; volume += 50) {
            const double in = 24 / rate;  // 40 percent of the cycle
            if (in > 4.0) continue;
            const auto mean = inspiratory_flow(mL(volume), seconds(in));
            REQUIRE(mean);
            const double other = minute_ventilation(breaths(rate), mL(volume))->in(unit::L_per_min) / 0.40;
            CHECK(off(mean->in(unit::L_per_min), other) <= 1e-9);
        }
    for (const double number : kHostile) {
        CHECK_FALSE(inspiratory_flow(mL(number), seconds(1)));
        CHECK_FALSE(inspiratory_flow(mL(500), seconds(number)));
    }
}

TEST_CASE("peak and support follow from either way to state a pressure") {
    struct Row {
        double baseline;
        double support;
        double peak;
        const char* source;
    };
    constexpr Row rows[] = {
        {5, 10, 15, "definition: inspiratory pressure 15 and baseline 5 are a support of 10"},
        {6, 14, 20, "definition: 14 above a baseline of 6 is a peak of 20"},
        {4, 4, 8, "pub: smallest start of mask ventilation, 8 over 4, task force 2010 (8 secondary, 4 mem)"},
        {0, 12, 12, "definition: without a baseline both are the same"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        const auto total = pressure_sums(TotalPressure{cmH2O(row.peak)}, cmH2O(row.baseline));
        const auto added = pressure_sums(PressureAboveBaseline{cmH2O(row.support)}, cmH2O(row.baseline));
        REQUIRE(total);
        REQUIRE(added);
        for (const PressureSums& sums : {*total, *added}) {
            CHECK(off(sums.peak.in(unit::cmH2O), row.peak) <= 1e-9);
            CHECK(off(sums.support.in(unit::cmH2O), row.support) <= 1e-9);
            CHECK(off(sums.baseline.in(unit::cmH2O), row.baseline) <= 1e-9);
        }
    }
}

TEST_CASE("a total pressure that does not rise above the baseline has no sums") {
    CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(5)}, cmH2O(5)));
    CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(4)}, cmH2O(6)));
    CHECK_FALSE(pressure_sums(PressureAboveBaseline{cmH2O(0)}, cmH2O(5)));
    CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(61)}, cmH2O(5)));
    CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(40)}, cmH2O(26)));
    // Above 60 the sum is far too high, but it must be seen to be refused.
    CHECK(pressure_sums(PressureAboveBaseline{cmH2O(50)}, cmH2O(20))->peak > cmH2O(69));
    for (const double number : kHostile) {
        if (number > 0 && number < 1) continue;  // a hair above nothing is small, not senseless
        CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(number)}, cmH2O(5)));
        CHECK_FALSE(pressure_sums(TotalPressure{cmH2O(15)}, cmH2O(number)));
        CHECK_FALSE(pressure_sums(PressureAboveBaseline{cmH2O(number)}, cmH2O(5)));
        CHECK_FALSE(pressure_sums(PressureAboveBaseline{cmH2O(15)}, cmH2O(number)));
    }
}

}  // namespace ventfolio::calc
