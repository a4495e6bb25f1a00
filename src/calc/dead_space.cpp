#include "calc/dead_space.hpp"

#include <cmath>
#include <numbers>

#include "calc/minute_ventilation.hpp"

namespace ventfolio::calc {
namespace {

bool is_weight(Mass weight) { return within(weight, 0.5, 350, unit::kg); }

}  // namespace

std::optional<Volume> airway_dead_space(int age_years, Mass weight) {
    if (age_years < 0 || age_years > 120 || !is_weight(weight)) return std::nullopt;
    const double ml_per_kg = age_years >= 18 ? 2.2 : 3.28 - 0.56 * std::log1p(age_years);
    return Volume::of(ml_per_kg * weight.in(unit::kg), unit::mL);
}

std::optional<Volume> chest_dead_space(Mass weight) {
    if (!is_weight(weight)) return std::nullopt;
    return Volume::of(1.03 * weight.in(unit::kg), unit::mL);
}

std::optional<Volume> tube_volume(Length bore, Length length) {
    if (!within(bore, 2, 40, unit::mm) || !within(length, 0, 300, unit::cm)) return std::nullopt;
    const double radius_cm = bore.in(unit::cm) / 2;
    return Volume::of(std::numbers::pi * radius_cm * radius_cm * length.in(unit::cm), unit::mL);
}

std::optional<DeadSpaceShares> dead_space(Volume breath, Volume body, Volume equipment, BreathRate rate) {
    const auto whole = minute_ventilation(rate, breath);
    if (!whole || !within(body, 0, 800, unit::mL) || !within(equipment, 0, 200, unit::mL)) return std::nullopt;
    const double total = (body + equipment) / breath;
    if (at_least(total, 1)) return std::nullopt;
    return DeadSpaceShares{.equipment = equipment / breath, .total = total, .alveolar = *whole * (1 - total)};
}

}  // namespace ventfolio::calc
