#include "calc/suction.hpp"

#include "calc/catheter_size.hpp"
#include "calc/cuff_pressure.hpp"
#include "calc/quantities.hpp"

namespace ventfolio::calc {

TEST_CASE("the largest catheter follows each of three published rules") {
    struct Row {
        double inner_mm;
        int half;       // at most 0.50: National Tracheostomy Safety Project (UK), AARC 2010
        int below_070;  // below 0.70: AARC 2022
        int twice;      // "twice the bore, next smaller": medical formulary page
    };
    // 0: no stocked size is small enough. pub: the rules, in summaries; der: the sizes, worked out by hand from the
    // stocked list. 8.0 mm shows why the rules must not be mixed: 12, 16 and 14 Fr.
    constexpr Row rows[] = {
        {2.5, 0, 5, 0},    {3.0, 0, 6, 5},    {3.5, 5, 6, 6},    {4.0, 6, 8, 6},    {4.5, 6, 8, 8},
        {5.0, 6, 10, 8},   {5.5, 8, 10, 10},  {6.0, 8, 12, 10},  {6.5, 8, 12, 12},  {7.0, 10, 14, 12},
        {7.5, 10, 14, 14}, {8.0, 12, 16, 14}, {8.5, 12, 16, 16}, {9.0, 12, 18, 16},
    };
    const auto french = [](std::optional<Length> size) {
        return size ? static_cast<int>(std::lround(size->in(unit::Fr))) : 0;
    };
    for (const Row& row : rows) {
        CAPTURE(row.inner_mm);
        CHECK(french(largest_catheter(mm(row.inner_mm), 0.50, RatioLimit::up_to)) == row.half);
        CHECK(french(largest_catheter(mm(row.inner_mm), 0.70, RatioLimit::below)) == row.below_070);
        CHECK(french(largest_catheter(mm(row.inner_mm), 2.0 / 3, RatioLimit::below)) == row.twice);
    }
}

TEST_CASE("a catheter is compared with its tube by diameter") {
    CHECK(off(Fr(12).in(unit::mm), 4.0) <= 1e-9);             // lib: GNU units, 12 frenchcathetersize; UCUM, 12 [Ch]
    const auto exactly_half = catheter_fit(Fr(12), mm(8.0));  // pub: "no greater than half", UK project
    REQUIRE(exactly_half);
    CHECK(off(exactly_half->ratio, 0.5) <= 1e-9);
    CHECK(off(exactly_half->area_blocked, 0.25) <= 1e-9);              // half of the diameter, a quarter of the area
    CHECK(off(catheter_fit(Fr(14), mm(8.0))->ratio, 0.583) <= 0.001);  // pub: formulary page, twice the bore
    CHECK(off(catheter_fit(Fr(10), mm(6.0))->ratio, 0.556) <= 0.001);  // der
    CHECK(off(catheter_fit(Fr(10), mm(6.0))->area_blocked, 0.309) <= 0.001);  // der
}

TEST_CASE("a catheter as wide as its tube does not fit") {
    CHECK_FALSE(catheter_fit(Fr(12), mm(4.0)));
    CHECK_FALSE(catheter_fit(Fr(14), mm(4.0)));
    CHECK(catheter_fit(Fr(10), mm(4.0)));
    CHECK_FALSE(catheter_fit(Fr(3), mm(4.0)));
    CHECK_FALSE(catheter_fit(Fr(10), mm(11.5)));
    CHECK_FALSE(largest_catheter(mm(8), 0, RatioLimit::up_to));
    CHECK_FALSE(largest_catheter(mm(8), 1, RatioLimit::up_to));
    for (const double number : kHostile) {
        CHECK_FALSE(catheter_fit(Fr(number), mm(8)));
        CHECK_FALSE(catheter_fit(Fr(12), mm(number)));
        CHECK_FALSE(largest_catheter(mm(number), 0.5, RatioLimit::up_to));
        if (!(number > 0 && number < 1)) CHECK_FALSE(largest_catheter(mm(8), number, RatioLimit::up_to));
    }
}

TEST_CASE("every suggested catheter keeps its ratio, and the next size would not") {
    for (double inner = 2.0; inner <= 11.0; inner += 0.1)
        for (double ratio = 0.2; ratio < 0.95; ratio += 0.05) {
            const auto largest = largest_catheter(mm(inner), ratio, RatioLimit::up_to);
            for (const int size : kStockedCatheters) {
                const bool keeps = Fr(size) / mm(inner) <= ratio + 1e-9;
                const bool offered = largest && Fr(size) <= *largest + mm(1e-9);
                CHECK(keeps == offered);
            }
        }
}

TEST_CASE("suction depth is the tube and its connector") {
    const auto depth = suction_depth({.tube = mm(75), .connector = cm(1.5), .past_tip = cm(1)});
    REQUIRE(depth);
    CHECK(off(depth->to_tip.in(unit::cm), 9.0) <= 1e-9);    // mem: measured depth, ATS 2000; der: sum
    CHECK(off(depth->deepest.in(unit::cm), 10.0) <= 1e-9);  // mem: 0.5 to 1 cm past the tip, ATS 2000
    const auto child = suction_depth({.tube = mm(40), .connector = cm(1.5), .past_tip = cm(0.5)});
    CHECK(off(child->deepest.in(unit::cm), 6.0) <= 1e-9);
    CHECK_FALSE(suction_depth({.tube = mm(24), .connector = cm(1.5), .past_tip = cm(1)}));
    CHECK_FALSE(suction_depth({.tube = cm(75), .connector = cm(1.5), .past_tip = cm(1)}));  // a slip of unit
    CHECK_FALSE(suction_depth({.tube = mm(75), .connector = cm(11), .past_tip = cm(1)}));
    CHECK_FALSE(suction_depth({.tube = mm(75), .connector = cm(1.5), .past_tip = cm(1.5)}));
    for (const double number : {kHostile[0], kHostile[1], kHostile[2], kHostile[3]}) {
        CHECK_FALSE(suction_depth({.tube = mm(number), .connector = cm(1.5), .past_tip = cm(1)}));
        CHECK_FALSE(suction_depth({.tube = mm(75), .connector = cm(number), .past_tip = cm(1)}));
        CHECK_FALSE(suction_depth({.tube = mm(75), .connector = cm(1.5), .past_tip = cm(number)}));
    }
}

TEST_CASE("suction pressures follow the published bands for age") {
    struct Row {
        Age age;
        double low;
        double high;
        double never;
        const char* source;
    };
    constexpr Row rows[] = {
        {{0, 0, 5, 5}, 60, 80, 120, "pub: neonate 60 to 80, UK paediatric module; below 120, AARC 2022"},
        {{0, 0, 27, 27}, 60, 80, 120, "pub: the same, to 4 weeks"},
        {{0, 1, 0, 28}, 80, 100, 120, "pub: from 4 weeks to 1 year 80 to 100, UK paediatric module"},
        {{4, 0, 0, 1461}, 80, 100, 120, "pub: child 80 to 100, Ireton 2007 (abstract)"},
        {{11, 11, 0, 4350}, 80, 100, 120, "pub: the same"},
        {{12, 0, 0, 4383}, 80, 120, 120, "pub: adolescent 80 to 120, Ireton 2007 (abstract)"},
        {{18, 0, 0, 6574}, -1, 150, 200, "pub: adult 150, AARC 2010 (secondary); below 200, AARC 2022"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        const auto band = suction_pressure_band(row.age);
        REQUIRE(band);
        CHECK(band->usual_low.has_value() == (row.low > 0));
        if (band->usual_low) CHECK(off(band->usual_low->in(unit::mmHg), row.low) <= 1e-9);
        CHECK(off(band->usual_high.in(unit::mmHg), row.high) <= 1e-9);
        CHECK(off(band->never_reach.in(unit::mmHg), row.never) <= 1e-9);
    }
    CHECK_FALSE(suction_pressure_band({121, 0, 0, 44200}));
    // pub: the module and Ireton give the same bands in kPa, 8 to 10, 10 to 13 and 10 to 16.
    CHECK(off(mmHg(60).in(unit::kPa), 8.0) <= 0.05);
    CHECK(off(mmHg(80).in(unit::kPa), 10.7) <= 0.05);
    CHECK(off(mmHg(100).in(unit::kPa), 13.3) <= 0.05);
    CHECK(off(mmHg(120).in(unit::kPa), 16.0) <= 0.05);
}

TEST_CASE("a cuff pressure is read on both gauges") {
    struct Row {
        double cmh2o;
        double mmhg;
        double tolerance;
        bool in_band;
        const char* source;
    };
    constexpr Row rows[] = {
        {30, 22.0667740583, 1e-6, true, "lib: GNU units, 30 cm water; UCUM gives 22.06684"},
        {25, 18.39, 0.005, true, "lib: GNU units"},
        {20, 14.711, 0.001, true, "der"},
        {33.987, 25, 0.001, false, "der: 25 on a gauge in mmHg is 34 cmH2O, too high"},
        {15, 11.03, 0.005, true, "pub: low end 15, NHS Greater Glasgow cuff page"},
        {14.9, 10.96, 0.005, false, "pub: below 15, the same"},
        {30.1, 22.14, 0.005, false, "pub: above 30, Ann Rehabil Med 2020;44:402"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        const auto cuff = cuff_pressure(cmH2O(row.cmh2o));
        REQUIRE(cuff);
        CHECK(off(cuff->mmHg, row.mmhg) <= row.tolerance);
        CHECK(cuff->in_band == row.in_band);
        CHECK(off(cuff_pressure(mmHg(cuff->mmHg))->cmH2O, row.cmh2o) <= 1e-9);
    }
    CHECK_FALSE(cuff_pressure(cmH2O(60.1)));
    CHECK(cuff_pressure(cmH2O(0)));
    for (const double number : {kHostile[0], kHostile[1], kHostile[2], kHostile[3], kHostile[5]})
        CHECK_FALSE(cuff_pressure(cmH2O(number)));
}

}  // namespace ventfolio::calc
