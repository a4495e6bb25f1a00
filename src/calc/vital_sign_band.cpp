#include "calc/vital_sign_band.hpp"

#include <array>

namespace ventfolio::calc {
namespace {

struct Ends {
    double low;
    double high;
};

// One row of the table, in beats/min, breaths/min and mmHg. The row holds for ages below its end.
struct Row {
    int below_days;  // 0: the end is in years
    int below_years;
    Ends pulse_awake;
    Ends pulse_asleep;
    Ends breathing;
    Ends systolic;
};

constexpr std::array kRows{
    Row{28, 0, {100, 205}, {90, 160}, {30, 53}, {67, 84}},  // systolic at 96 h
    Row{0, 1, {100, 190}, {90, 160}, {30, 53}, {72, 104}}, Row{0, 3, {98, 140}, {80, 120}, {22, 37}, {86, 106}},
    Row{0, 6, {80, 120}, {65, 100}, {20, 28}, {89, 112}},  Row{0, 10, {75, 118}, {58, 90}, {18, 25}, {97, 115}},
    Row{0, 12, {75, 118}, {58, 90}, {18, 25}, {102, 120}}, Row{0, 18, {60, 100}, {50, 90}, {12, 20}, {110, 131}},
};
constexpr int kLastYearOfTable = 15;

template <Dimension D>
Band<Quantity<D>> band(Ends ends, UnitOf<D> unit) {
    return {Quantity<D>::of(ends.low, unit), Quantity<D>::of(ends.high, unit)};
}

bool holds(const Row& row, const Age& age) {
    return row.below_years > 0 ? age.years < row.below_years : age.total_days < row.below_days;
}

}  // namespace

std::optional<VitalSignBand> vital_sign_band(const Age& age) {
    if (!is_possible(age)) return std::nullopt;
    for (const Row& row : kRows)
        if (holds(row, age))
            return VitalSignBand{.pulse_awake = band(row.pulse_awake, unit::beats_per_min),
                                 .pulse_asleep = band(row.pulse_asleep, unit::beats_per_min),
                                 .breathing = band(row.breathing, unit::breaths_per_min),
                                 .systolic = band(row.systolic, unit::mmHg),
                                 .past_table = age.years > kLastYearOfTable};
    return std::nullopt;
}

std::optional<Pressure> lowest_systolic(const Age& age) {
    if (age.years < 1 || age.years >= 18) return std::nullopt;
    return Pressure::of(age.years >= 10 ? 90 : 70 + 2 * age.years, unit::mmHg);
}

}  // namespace ventfolio::calc
