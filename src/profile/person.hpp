#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// The sex whose formula predicts body weight.
enum class Sex : std::uint8_t { female, male };
template <>
struct Words<Sex> {
    static constexpr std::array<std::string_view, 2> words{"female", "male"};
};

/// How a height was found.
enum class HeightMethod : std::uint8_t { standing, lying, knee_height, arm_span };
template <>
struct Words<HeightMethod> {
    static constexpr std::array<std::string_view, 4> words{"standing", "lying", "knee_height", "arm_span"};
};

/// What the person and the family speak and read.
struct Languages {
    Field<TextList> spoken;
    Field<TextList> read;
    Field<std::string> interpreter;
    Field<std::string> second_on_paper;

    void describe(Visitor& visitor);
};

/// Who the papers are for. Age is never written down: it is counted from the birth date on the print date.
struct Person {
    Field<std::string> legal_name;
    Field<std::string> preferred_name;
    Field<Date> birth_date;
    Field<Mass> weight;
    Field<Date> weight_date;
    Field<Length> height;
    Field<HeightMethod> height_method;
    Field<Length> arm_span;
    Field<Sex> sex_for_volume;
    Field<Mass> reference_weight;
    Group<Languages> languages;
    Field<std::string> hearing;
    Field<std::string> vision;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
