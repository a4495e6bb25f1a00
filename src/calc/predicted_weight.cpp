#include "calc/predicted_weight.hpp"

#include <cmath>

namespace ventfolio::calc {
namespace {

Mass weight_above_base(double base_kg, Length height) {
    return Mass::of(base_kg + 0.91 * (height.in(unit::cm)-152.4), unit::kg);
}

}  // namespace

std::optional<Band<Mass>> predicted_weight(int age_years, std::optional<Sex> sex, Length height) {
    if (age_years < 18 || age_years > 120 || !within(height, 130, 213.4, unit::cm)) return std::nullopt;
    const Mass female = weight_above_base(45.5, height);
    const Mass male = weight_above_base(50.0, height);
    if (!sex) return Band<Mass>{female, male};
    const Mass known = *sex == Sex::female ? female : male;
    return Band<Mass>{known, known};
}

std::optional<Length> height_from_arm_span(Length arm_span) {
    const Length height = arm_span / 1.06;
    if (!within(height, 40, 230, unit::cm)) return std::nullopt;
    return height;
}

std::optional<Mass> child_weight_for_height(int age_years, Length height) {
    if (age_years < 1 || age_years > 17 || !within(height, 74, 180, unit::cm)) return std::nullopt;
    return Mass::of(2.396 * std::exp(0.01863 * height.in(unit::cm)), unit::kg);
}

}  // namespace ventfolio::calc
