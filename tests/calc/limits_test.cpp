#include "calc/age.hpp"
#include "calc/alarm_margins.hpp"
#include "calc/altitude.hpp"
#include "calc/backup_supply.hpp"
#include "calc/battery_time.hpp"
#include "calc/breath_timing.hpp"
#include "calc/catheter_size.hpp"
#include "calc/circuit_loss.hpp"
#include "calc/cylinder_time.hpp"
#include "calc/dead_space.hpp"
#include "calc/exhalation_time.hpp"
#include "calc/humidity.hpp"
#include "calc/next_due_date.hpp"
#include "calc/outage_timeline.hpp"
#include "calc/oxygen_fraction.hpp"
#include "calc/port_leak.hpp"
#include "calc/predicted_weight.hpp"
#include "calc/pressure_sums.hpp"
#include "calc/quantities.hpp"
#include "calc/reading_grade.hpp"
#include "calc/supply_quantity.hpp"
#include "calc/tolerance_band.hpp"
#include "calc/vital_sign_band.hpp"

/// At a limit and a step beyond it. Where no source stands beside a row, the limit is the one that the header promises
/// under Range. The ends of arguments that can be typed are tried in tests/rules/calculators/property_test.cpp.
namespace ventfolio::calc {
namespace {

Fraction percent(double n) { return Fraction::of(n, unit::percent); }
ElectricCharge ampere_hours(double n) { return ElectricCharge::of(n, unit::Ah); }

}  // namespace

TEST_CASE("a band holds both its ends, and a number is compared within a billionth of the limit") {
    const Band<double> band{2, 3};
    CHECK(band.contains(2));
    CHECK(band.contains(3));
    CHECK_FALSE(band.contains(1.999));
    CHECK_FALSE(band.contains(3.001));
    // Nothing has no billionth: a limit of 0 is met exactly.
    CHECK(within(0, 0, 1));
    CHECK(within(0, -1, 0));
    CHECK(within(-2, -2, -1));
    CHECK_FALSE(within(-1e-12, 0, 1));
    CHECK(within(100 * (1 + 0.9e-9), 0, 100));
    CHECK_FALSE(within(100 * (1 + 1.04e-9), 0, 100));
    CHECK(at_least(0, 0));
    CHECK(at_least(0.5, 0.5));
    CHECK(at_least(-2, -2));
    CHECK_FALSE(at_least(-1e-12, 0));
    CHECK(at_least(100 * (1 - 0.9e-9), 100));
    CHECK_FALSE(at_least(100 * (1 - 1.04e-9), 100));
}

TEST_CASE("a pressure alarm near the peak is within 4 cmH2O of it") {
    // pub: Kun et al., simulated decannulation (abstract): the nearer setting of the test was 4 cmH2O below the peak.
    CHECK(tube_may_slip_silently(mm(5), cmH2O(4)) == false);
    CHECK(tube_may_slip_silently(mm(5), cmH2O(4.5)) == true);
    CHECK(tube_may_slip_silently(mm(5), cmH2O(0)) == false);
    CHECK(tube_may_slip_silently(mm(2), cmH2O(4)) == true);
    CHECK_FALSE(tube_may_slip_silently(mm(5), cmH2O(101)));
}

TEST_CASE("half a step of pressure is a margin") {
    CHECK(off(high_pressure_margin(cmH2O(0.5), cmH2O(0))->in(unit::cmH2O), 0.5) <= 1e-9);
}

TEST_CASE("a limit far above the usual value is a slip, not a share") {
    CHECK(share_of_usual(mL(40000), mL(400)).has_value());
    CHECK_FALSE(share_of_usual(mL(41000), mL(400)));
}

TEST_CASE("no source gives more than all oxygen") {
    // der: 97 % x 713 / 693 is 99.8 %, 98 % gives 100.8 %.
    CHECK(equivalent_fraction(percent(97), mmHg(760), mmHg(740)).has_value());
    CHECK_FALSE(equivalent_fraction(percent(98), mmHg(760), mmHg(740)));
    CHECK_FALSE(equivalent_fraction(percent(101), mmHg(700), mmHg(760)));
}

TEST_CASE("air is known from the lowest shore to the highest town") {
    const auto metres = [](double n) { return Length::of(n, unit::m); };
    CHECK(air_pressure(metres(-430)).has_value());
    CHECK_FALSE(air_pressure(metres(-431)));
    CHECK(air_pressure(metres(5500)).has_value());
    CHECK_FALSE(air_pressure(metres(5501)));
    // der: 25 % of 447 - 47 mmHg is 100 mmHg, and 80 / 0.8 takes them all.
    CHECK_FALSE(alveolar_oxygen(percent(25), mmHg(446), mmHg(80)));
    CHECK(alveolar_oxygen(percent(25), mmHg(448), mmHg(80)).has_value());
}

TEST_CASE("a catheter is 4 to 20 Fr") {
    CHECK(catheter_fit(Fr(20), mm(8)).has_value());
    CHECK_FALSE(catheter_fit(Fr(20.5), mm(8)));
    CHECK(catheter_fit(Fr(4), mm(8)).has_value());
    CHECK_FALSE(catheter_fit(Fr(3.5), mm(8)));
}

TEST_CASE("a socket with nothing on it carries that") { CHECK(socket_carries(amperes(15), amperes(0)) == true); }

TEST_CASE("a battery's time is told from minutes to a thousand hours") {
    const auto hours_of = [](double charge, double load) {
        return rated_battery_time({.capacity = ampere_hours(charge), .exponent = 1}, amperes(load));
    };
    CHECK(off(hours_of(100, 400)->in(unit::h), 0.25) <= 1e-9);  // definition: charge over current
    CHECK(hours_of(1000, 1.01).has_value());
    CHECK_FALSE(hours_of(1000, 0.98));  // 1020 h
    // der: beside 100 Ah over 20 h, 67.4 Ah over 5 h give 1.398 and 66.9 Ah 1.408.
    CHECK(battery_exponent(ampere_hours(100), hours(20), ampere_hours(67.4), hours(5)).has_value());
    CHECK_FALSE(battery_exponent(ampere_hours(100), hours(20), ampere_hours(66.9), hours(5)));
    CHECK(battery_exponent(ampere_hours(1000), hours(20), ampere_hours(800), hours(5)).has_value());
    CHECK_FALSE(battery_exponent(ampere_hours(1001), hours(20), ampere_hours(800), hours(5)));
    CHECK(battery_exponent(ampere_hours(10), hours(0.102), ampere_hours(10), hours(0.1)).has_value());
}

TEST_CASE("a warm battery loses nothing to cold") {
    // der: 12 V x 100 Ah x 0.8 x 0.5 x 0.85 / 60 W
    const LabelledBattery label{.nominal = volts(12), .capacity = ampere_hours(100)};
    CHECK(off(labelled_battery_time(label, watts(60))->in(unit::h), 6.8) <= 1e-9);
}

TEST_CASE("a ratio is believed up to ten to one") {
    // der: 10 breaths/min are 6 s each.
    CHECK(off(time_in_from_ratio(breaths(10), {1, 10})->in(unit::s), 6.0 / 11) <= 1e-9);
    CHECK_FALSE(time_in_from_ratio(breaths(10), {1, 10.5}));
    CHECK(off(time_in_from_ratio(breaths(30), {1, 9})->in(unit::s), 0.2) <= 1e-9);
    CHECK_FALSE(time_in_from_ratio(breaths(30), {1, 9.5}));
    CHECK(off(time_in_from_ratio(breaths(10), {2, 1})->in(unit::s), 4) <= 1e-9);
    CHECK_FALSE(time_in_from_ratio(breaths(10), {4.1, 1.9}));
    CHECK_FALSE(time_in_from_ratio(breaths(10), {0, 1}));
}

TEST_CASE("a hose that takes the whole breath leaves none") {
    CHECK_FALSE(circuit_loss(mL(100), {2}, cmH2O(50), cmH2O(0)));
    CHECK(circuit_loss(mL(101), {2}, cmH2O(50), cmH2O(0)).has_value());
    CHECK_FALSE(circuit_loss(mL(100), {2}, cmH2O(20), cmH2O(20)));
    CHECK(circuit_loss(mL(100), {2}, cmH2O(0.5), cmH2O(0)).has_value());
    CHECK(measured_compliance(mL(1), cmH2O(0.5), cmH2O(0)).has_value());
    CHECK(measured_compliance(mL(10), cmH2O(100), cmH2O(0)).has_value());
    CHECK_FALSE(measured_compliance(mL(9.9), cmH2O(100), cmH2O(0)));
    CHECK(measured_compliance(mL(500), cmH2O(100), cmH2O(0)).has_value());
    CHECK_FALSE(measured_compliance(mL(501), cmH2O(100), cmH2O(0)));
    CHECK(share_breathed_out(seconds(1), 100, 0.05).has_value());
    CHECK_FALSE(share_breathed_out(seconds(1), 101, 0.05));
    CHECK(share_breathed_out(seconds(1), 20, 0.2).has_value());
    CHECK_FALSE(share_breathed_out(seconds(1), 20, 0.205));
}

TEST_CASE("a cylinder at its residual has no time left, not a little") {
    const CylinderUse use{.gauge = psi(500), .residual = psi(500), .factor = {0.28}, .flow = L_per_min(2)};
    CHECK(cylinder_time(use)->in(unit::min) == 0);
    CHECK(starting_gauge(L_per_min(0.01), hours(24 * 7), {0.28}, psi(0)).has_value());
    CHECK_FALSE(starting_gauge(L_per_min(0.01), hours(24 * 7 + 1), {0.28}, psi(0)));
    CHECK(gauge_is_possible(psi(400), psi(500)).has_value());
    CHECK_FALSE(gauge_is_possible(psi(400), psi(499)));
    CHECK(gauge_is_possible(psi(400), psi(5000)).has_value());
    CHECK_FALSE(gauge_is_possible(psi(400), psi(5001)));
}

TEST_CASE("grown airways begin at 18 years") {
    // pub: 2.2 mL/kg of adults and the formula for children, Numa and Newth, J Appl Physiol 1996;80:1485 (abstract)
    CHECK(off(airway_dead_space(18, kg(1))->in(unit::mL), 2.2) <= 1e-9);
    CHECK(off(airway_dead_space(17, kg(1))->in(unit::mL), 1.661) <= 0.001);  // der
    CHECK(airway_dead_space(120, kg(70)).has_value());
    CHECK_FALSE(airway_dead_space(121, kg(70)));
    CHECK(dead_space(mL(2000), mL(800), mL(200), breaths(10)).has_value());
    CHECK_FALSE(dead_space(mL(2000), mL(801), mL(200), breaths(10)));
    CHECK_FALSE(dead_space(mL(2000), mL(800), mL(201), breaths(10)));
}

TEST_CASE("lung stretch asks for a rise of 1 cmH2O") {
    CHECK(lung_stretch(mL(500), cmH2O(6), cmH2O(5)).has_value());
    CHECK_FALSE(lung_stretch(mL(500), cmH2O(5.9), cmH2O(5)));
}

TEST_CASE("gas that is moist enough needs no water") {
    CHECK(humidifier_water_per_day(L_per_min(10), {44}, {44})->in(unit::mL) == 0);
    CHECK_FALSE(humidifier_water_per_day(L_per_min(10), {44}, {43.9}));
}

TEST_CASE("what is due is due until the end of 2199") {
    CHECK(next_due_date(day("2026-01-15"), {3660, Interval::Step::days}) == day("2036-01-23"));  // lib: GNU date
    CHECK(next_due_date(day("2189-12-31"), {10, Interval::Step::years}) == day("2199-12-31"));
    CHECK_FALSE(next_due_date(day("2190-01-01"), {10, Interval::Step::years}));
    CHECK(next_due_date(day("2026-01-15"), {1, Interval::Step::days}) == day("2026-01-16"));
}

TEST_CASE("a plan for an outage reaches thirty days, a day of travel and a day of reserve") {
    const auto plan = [](double power_days, double travel_h, const LeaveReserve& reserve) {
        return outage_timeline(hours(24 * power_days), std::nullopt, hours(travel_h), reserve);
    };
    CHECK(plan(30, 1, {}).has_value());
    CHECK_FALSE(plan(31, 1, {}));
    CHECK(plan(2, 24, {}).has_value());
    CHECK_FALSE(plan(2, 24.5, {}));
    CHECK(plan(1, 1, {.travel_times = 0, .fixed = minutes(0)})->reserve.in(unit::min) == 0);
    CHECK(off(plan(1, 1, {.travel_times = 0.5, .fixed = minutes(30)})->reserve.in(unit::min), 60) <= 1e-9);
    CHECK(plan(2, 1, {.travel_times = 10}).has_value());
    CHECK_FALSE(plan(2, 1, {.travel_times = 10.5}));
    CHECK(plan(2, 1, {.fixed = hours(24)}).has_value());
    CHECK_FALSE(plan(2, 1, {.fixed = hours(24.5)}));
    // Both end at once: neither ends first.
    CHECK_FALSE(outage_timeline(hours(9), hours(9), minutes(30))->oxygen_ends_first);
}

TEST_CASE("a source is between half and all oxygen") {
    const auto bled = [](double low, double high) {
        return oxygen_fraction(
            {.oxygen = L_per_min(2), .minute_volume = L_per_min(8), .mean_leak = L_per_min(0), .purity = {low, high}});
    };
    CHECK(bled(0.5, 0.5).has_value());
    CHECK_FALSE(bled(0.49, 0.9));
    CHECK_FALSE(bled(0.9, 1.01));
    CHECK_FALSE(bled(0.9, 0.8));
    CHECK(oxygen_for_fraction(percent(50), L_per_min(10), 0.5)->in(unit::L_per_min) == doctest::Approx(10));
    CHECK_FALSE(oxygen_for_fraction(percent(40), L_per_min(10), 0.49));
    // mem: European Pharmacopoeia, oxygen (93 per cent): 90.0 to 96.0 per cent
    CHECK(kConcentratorPurity == Band<double>{0.90, 0.96});
}

TEST_CASE("a port's leak is told closer near its known point") {
    // common practice, no source: 5 % from half to twice the known pressure, 10 % beyond; der: 20 L/min at 10 cmH2O
    struct Row {
        double pressure;
        double share;
    };
    constexpr Row rows[] = {{10, 0.05}, {5, 0.05}, {20, 0.05}, {4.9, 0.10}, {20.5, 0.10}, {25, 0.10}};
    for (const Row& row : rows) {
        CAPTURE(row.pressure);
        const auto leak = port_leak({.flow = L_per_min(20), .pressure = cmH2O(10)}, cmH2O(row.pressure));
        REQUIRE(leak);
        const double middle = 20 * std::sqrt(row.pressure / 10);
        CHECK(off(leak->low.in(unit::L_per_min), middle * (1 - row.share)) <= 1e-9);
        CHECK(off(leak->high.in(unit::L_per_min), middle * (1 + row.share)) <= 1e-9);
    }
    const PortPoint known{.flow = L_per_min(20), .pressure = cmH2O(10)};
    CHECK(mean_port_leak(known, cmH2O(8), cmH2O(8), percent(30)).has_value());
    CHECK_FALSE(mean_port_leak(known, cmH2O(8), cmH2O(8.1), percent(30)));
}

TEST_CASE("each weight has its ages") {
    CHECK(predicted_weight(120, Sex::male, cm(170)).has_value());
    CHECK(child_weight_for_height(1, cm(80)).has_value());
    CHECK(child_weight_for_height(17, cm(160)).has_value());
    CHECK_FALSE(child_weight_for_height(0, cm(80)));
    CHECK_FALSE(child_weight_for_height(18, cm(160)));
}

TEST_CASE("a pressure of less than 1 cmH2O is a pressure") {
    CHECK(off(pressure_sums(PressureAboveBaseline{cmH2O(0.5)}, cmH2O(0))->peak.in(unit::cmH2O), 0.5) <= 1e-9);
}

TEST_CASE("a text without a long word has the lowest grade") {
    CHECK(off(*smog_grade(0, 30), 3.1291) <= 1e-9);  // pub: McLaughlin, J Reading 1969;12:639
}

TEST_CASE("an order without a spare or a pack has neither") {
    const auto plain = supply_quantity({.days = 30, .pieces_per_day = 1});
    CHECK(plain->pieces == 30);
    CHECK(plain->packs == 30);
    CHECK(supply_quantity({.days = 30, .pieces_per_day = 1, .spare = 1})->pieces == 60);
    CHECK_FALSE(supply_quantity({.days = 30, .pieces_per_day = 1, .spare = 1.01}));
    CHECK(supply_quantity({.days = 30, .pieces_per_day = 1, .pack = 10'000})->packs == 1);
    CHECK_FALSE(supply_quantity({.days = 30, .pieces_per_day = 1, .pack = 10'001}));
    CHECK(days_of_supply(1'000'000, 1000) == 1000);
    CHECK_FALSE(days_of_supply(1'000'001, 1000));
}

TEST_CASE("a tolerance is a share of the whole at most") {
    CHECK(tolerance_band(mL(450), Tolerance<Dimension::volume>{.share = 1}).has_value());
    CHECK_FALSE(tolerance_band(mL(450), Tolerance<Dimension::volume>{.share = 1.01}));
    CHECK(tolerance_band(mL(450), Tolerance<Dimension::volume>{.share = 0.1, .most_share = 1}).has_value());
    CHECK_FALSE(tolerance_band(mL(450), Tolerance<Dimension::volume>{.share = 0.1, .most_share = 1.01}));
    const Band<Volume> one_value{mL(400), mL(400)};
    CHECK(widened(one_value, one_value) == one_value);
}

TEST_CASE("low blood pressure is known from 1 year on") {
    // pub: the formula of PALS, 70 + 2 x years from 1 to 10 years
    CHECK(off(lowest_systolic({1, 0, 0, 365})->in(unit::mmHg), 72) <= 1e-9);
    CHECK_FALSE(lowest_systolic({0, 11, 29, 364}));
    CHECK(lowest_systolic({17, 11, 30, 6573}).has_value());
    CHECK_FALSE(lowest_systolic({18, 0, 0, 6574}));
}

}  // namespace ventfolio::calc
