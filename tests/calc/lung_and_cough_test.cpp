#include "calc/cough_flow.hpp"
#include "calc/exhalation_time.hpp"
#include "calc/quantities.hpp"

namespace ventfolio::calc {

TEST_CASE("time constants agree with physiology textbooks") {
    const auto healthy = exhalation_time({2}, {100});
    REQUIRE(healthy);
    CHECK(off(healthy->constant.in(unit::s), 0.2) <= 1e-9);  // mem: healthy lung, 2 cmH2O per L/s and 0.1 L/cmH2O
    CHECK(off(healthy->needed.in(unit::s), 0.6) <= 1e-9);    // mem: three constants, 95 percent
    CHECK(off(exhalation_time({20}, {50})->needed.in(unit::s), 3) <= 1e-9);  // der
    // mem: share breathed out after 1 to 5 time constants.
    constexpr double row[] = {63.2, 86.5, 95.0, 98.2, 99.3};
    for (int count = 1; count <= 5; ++count)
        CHECK(off(breathed_out(seconds(count), {20}, {50})->in(unit::percent), row[count - 1]) <= 0.05);
    for (double resistance = 2; resistance <= 100; resistance += 7)
        for (double compliance = 5; compliance <= 200; compliance += 15) {
            const auto time = exhalation_time({resistance}, {compliance});
            REQUIRE(time);
            const auto share = breathed_out(time->needed, {resistance}, {compliance});
            REQUIRE(share.has_value() == (time->needed <= seconds(30)));
            if (share) CHECK(off(share->in(unit::percent), 95.0) <= 0.05);
        }
    for (const double number : kHostile) {
        CHECK_FALSE(exhalation_time({number}, {50}));
        CHECK_FALSE(exhalation_time({20}, {number}));
        CHECK_FALSE(breathed_out(seconds(1), {number}, {50}));
        CHECK_FALSE(breathed_out(seconds(1), {20}, {number}));
    }
}

TEST_CASE("lung stretch is volume over driving pressure") {
    // No published worked example was found.
    const auto stretch = lung_stretch(mL(450), cmH2O(20), cmH2O(5));
    REQUIRE(stretch);
    CHECK(off(stretch->driving.in(unit::cmH2O), 15) <= 1e-9);  // pub: 15 is the limit of PALICC-2 2023
    CHECK(off(stretch->compliance.mL_per_cmH2O, 30) <= 1e-9);  // der
    CHECK_FALSE(lung_stretch(mL(450), cmH2O(5), cmH2O(5)));
    CHECK_FALSE(lung_stretch(mL(450), cmH2O(5), cmH2O(20)));
    for (const double number : kHostile) {
        CHECK_FALSE(lung_stretch(mL(number), cmH2O(20), cmH2O(5)));
        CHECK_FALSE(lung_stretch(mL(450), cmH2O(number), cmH2O(5)));
        if (number != 1e-300) CHECK_FALSE(lung_stretch(mL(450), cmH2O(20), cmH2O(number)));
    }
}

TEST_CASE("a cough is judged by the published limits") {
    struct Row {
        double flow;
        CoughStrength strength;
        const char* source;
    };
    constexpr Row rows[] = {
        {159, CoughStrength::ineffective, "pub: goal of 160 L/min in a Cuban review"},
        {160, CoughStrength::weak, "pub: the same, the goal is reached"},
        {269, CoughStrength::weak, "pub: cut-off of 270 L/min in a Portuguese pulmonology paper"},
        {270, CoughStrength::sufficient, "pub: the same"},
        {0, CoughStrength::ineffective, "definition"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.flow);
        CAPTURE(row.source);
        CHECK(cough_strength(L_per_min(row.flow)) == row.strength);
    }
    CHECK(cough_strength(Flow::of(4.5, unit::L_per_s)) == CoughStrength::sufficient);  // der: 270 L/min
    CHECK_FALSE(cough_strength(L_per_min(901)));
    for (const double number : {kHostile[0], kHostile[1], kHostile[2], kHostile[3], kHostile[5]})
        CHECK_FALSE(cough_strength(L_per_min(number)));
}

TEST_CASE("cough pressures carry their signs") {
    CHECK(off(cough_pressures(cmH2O(40), cmH2O(-40))->swing.in(unit::cmH2O), 80) <= 1e-9);
    CHECK(cough_pressures(cmH2O(40), cmH2O(-40))->reaches_goal);        // pub: common pressures
    CHECK(cough_pressures(cmH2O(30), cmH2O(-30))->reaches_goal);        // pub: the least that passed 160 L/min
    CHECK_FALSE(cough_pressures(cmH2O(25), cmH2O(-40))->reaches_goal);  // pub: the same, one side short
    CHECK_FALSE(cough_pressures(cmH2O(40), cmH2O(-25))->reaches_goal);
    CHECK_FALSE(cough_pressures(cmH2O(40), cmH2O(40)));
    CHECK_FALSE(cough_pressures(cmH2O(71), cmH2O(-40)));
    for (const double number : {kHostile[0], kHostile[1], kHostile[2], kHostile[4], kHostile[5]}) {
        CHECK_FALSE(cough_pressures(cmH2O(number), cmH2O(-40)));
        CHECK_FALSE(cough_pressures(cmH2O(40), cmH2O(number)));
    }
}

}  // namespace ventfolio::calc
