#include "calc/body_mass_index.hpp"
#include "calc/predicted_weight.hpp"
#include "calc/vital_sign_band.hpp"
#include "calc/volume_per_weight.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {

std::optional<Answer> predicted_weight(const Inputs& in) {
    const std::string& sex = in.word("sex");
    const bool known = sex != "unknown";
    const auto side = known ? std::optional{sex == "male" ? calc::Sex::male : calc::Sex::female} : std::nullopt;
    const auto weight = calc::predicted_weight(whole(in, "years"), side, length(in, "height"));
    if (!weight) return std::nullopt;
    if (known) return Answer{}.by(sex).give("weight", weight->low);
    return Answer{}.by(sex).give("weight", *weight);
}

std::optional<Answer> child_weight(const Inputs& in) {
    const auto weight = calc::child_weight_for_height(whole(in, "years"), length(in, "height"));
    if (!weight) return std::nullopt;
    return Answer{}.give("weight", *weight);
}

std::optional<Answer> height_from_arm_span(const Inputs& in) {
    const auto height = calc::height_from_arm_span(length(in, "arm-span"));
    if (!height) return std::nullopt;
    return Answer{}.give("height", *height);
}

std::optional<Answer> body_mass_index(const Inputs& in) {
    const auto index = calc::body_mass_index(mass(in, "weight"), length(in, "height"));
    if (!index) return std::nullopt;
    return Answer{}.give("index", index->value);
}

std::optional<Answer> volume_per_weight(const Inputs& in) {
    const auto per_weight = calc::volume_per_weight(volume(in, "volume"), mass(in, "weight"));
    if (!per_weight) return std::nullopt;
    return Answer{}.give("share", per_weight->value);
}

std::optional<Answer> age_in_years(const Inputs& in) {
    const auto age = calc::age_on(in.date("born"), in.date("on"));
    if (!age) return std::nullopt;
    return Answer{}
        .give("years", age->years)
        .give("months", age->months)
        .give("days", age->days)
        .give("total", age->total_days);
}

std::optional<Answer> vital_sign_band(const Inputs& in) {
    const auto band = calc::vital_sign_band(age(in, "age"));
    if (!band) return std::nullopt;
    return Answer{}
        .give("pulse-awake", band->pulse_awake)
        .give("pulse-asleep", band->pulse_asleep)
        .give("breathing", band->breathing)
        .give("systolic", band->systolic);
}

std::optional<Answer> lowest_systolic(const Inputs& in) {
    constexpr int kTableEnds = 10;
    const calc::Age child = age(in, "age");
    const auto lowest = calc::lowest_systolic(child);
    if (!lowest) return std::nullopt;
    return Answer{}.by(child.years < kTableEnds ? "young" : "older").give("lowest", *lowest);
}

}  // namespace ventfolio::calculators
