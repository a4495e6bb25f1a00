#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How bad a reaction was.
enum class AllergySeverity : std::uint8_t { mild, serious, life_threatening };
template <>
struct Words<AllergySeverity> {
    static constexpr std::array<std::string_view, 3> words{"mild", "serious", "life_threatening"};
};

/// One allergy.
struct Allergy {
    Field<std::string> substance;
    Field<std::string> reaction;
    Field<AllergySeverity> severity;

    void describe(Visitor& visitor);
};

/// Allergies; `none` when none is known.
struct Allergies {
    List<Allergy> substances;
    Field<bool> latex;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
