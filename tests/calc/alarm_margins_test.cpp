#include "calc/alarm_margins.hpp"

#include "calc/quantities.hpp"

namespace ventfolio::calc {

TEST_CASE("alarm margins agree with the textbook rule for a peak of 25") {
    // pub: "10 above, 5 to 10 below the peak", extract of a mechanical ventilation textbook: 35, and 15 to 20.
    CHECK(off(high_pressure_margin(cmH2O(35), cmH2O(25))->in(unit::cmH2O), 10) <= 1e-9);
    CHECK(off(low_pressure_below_peak(cmH2O(20), cmH2O(25))->in(unit::cmH2O), 5) <= 1e-9);
    CHECK(off(low_pressure_below_peak(cmH2O(15), cmH2O(25))->in(unit::cmH2O), 10) <= 1e-9);
    // pub: "10 to 15 above", a second textbook.
    CHECK(off(high_pressure_margin(cmH2O(40), cmH2O(25))->in(unit::cmH2O), 15) <= 1e-9);
    CHECK(off(low_pressure_above_baseline(cmH2O(12), cmH2O(5))->in(unit::cmH2O), 7) <= 1e-9);  // der
}

TEST_CASE("a limit on the wrong side of the peak or baseline has no margin") {
    CHECK_FALSE(high_pressure_margin(cmH2O(25), cmH2O(25)));
    CHECK_FALSE(high_pressure_margin(cmH2O(20), cmH2O(25)));
    CHECK_FALSE(low_pressure_below_peak(cmH2O(25), cmH2O(25)));
    CHECK_FALSE(low_pressure_above_baseline(cmH2O(5), cmH2O(5)));
    CHECK_FALSE(low_pressure_above_baseline(cmH2O(30), cmH2O(26)));
    CHECK_FALSE(high_pressure_margin(cmH2O(101), cmH2O(25)));
    for (const double number : kHostile) {
        if (number > 0 && number < 1) continue;
        CHECK_FALSE(high_pressure_margin(cmH2O(number), cmH2O(25)));
        CHECK_FALSE(high_pressure_margin(cmH2O(35), cmH2O(number)));
        CHECK_FALSE(low_pressure_below_peak(cmH2O(number), cmH2O(25)));
        CHECK_FALSE(low_pressure_above_baseline(cmH2O(12), cmH2O(number)));
    }
}

TEST_CASE("small tubes that stayed silent in the published test are found") {
    struct Row {
        double inner_mm;
        double below_peak;
        bool silent;
        const char* source;
    };
    constexpr Row rows[] = {
        {4.0, 4, true, "pub: Kun et al., simulated decannulation (abstract): silent below 4.5 mm at 4 below the peak"},
        {4.5, 4, false, "pub: the same: sounds from 4.5 mm"},
        {5.5, 4, false, "pub: the same"},
        {5.5, 10, true, "pub: the same: silent below 6.0 mm at 10 below the peak"},
        {6.0, 10, false, "pub: the same: sounds from 6.0 mm"},
        {5.5, 7, true, "der: between the two settings of the test the careful side is taken"},
        {8.0, 15, false, "der"},
        {3.5, 1, true, "der: a tube this small is never trusted to sound"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.inner_mm);
        CAPTURE(row.source);
        const auto silent = tube_may_slip_silently(mm(row.inner_mm), cmH2O(row.below_peak));
        REQUIRE(silent);
        CHECK(*silent == row.silent);
    }
    CHECK_FALSE(tube_may_slip_silently(mm(1.9), cmH2O(4)));
    CHECK_FALSE(tube_may_slip_silently(mm(12), cmH2O(4)));
    CHECK_FALSE(tube_may_slip_silently(mm(5), cmH2O(-1)));
}

TEST_CASE("a no-breath alarm waits for one breath and less than two") {
    const auto window = no_breath_window(breaths(12));  // pub: textbook rule, 12 breaths/min: between 5 and 10 s
    REQUIRE(window);
    CHECK(off(window->low.in(unit::s), 5) <= 1e-9);
    CHECK(off(window->high.in(unit::s), 10) <= 1e-9);
    CHECK_FALSE(no_breath_window(breaths(0)));
}

TEST_CASE("a limit is a share of the usual value") {
    CHECK(off(*share_of_usual(mL(200), mL(400)), 0.5) <= 1e-9);               // definition
    CHECK(off(*share_of_usual(L_per_min(4.5), L_per_min(6)), 0.75) <= 1e-9);  // definition
    CHECK(*share_of_usual(mL(0), mL(400)) == 0);
    CHECK_FALSE(share_of_usual(mL(200), mL(0)));
    CHECK_FALSE(share_of_usual(mL(-1), mL(400)));
    for (const double number : kHostile) CHECK_FALSE(share_of_usual(mL(200), mL(number > 1 ? -number : number)));
}

}  // namespace ventfolio::calc
