#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// What takes the breath away; decides whether breaths come before oxygen.
enum class WhyVentilated : std::uint8_t { weak_muscles, lung_disease, airway_collapse, no_drive, spinal_injury, other };
template <>
struct Words<WhyVentilated> {
    static constexpr std::array<std::string_view, 6> words{"weak_muscles", "lung_disease",  "airway_collapse",
                                                           "no_drive",     "spinal_injury", "other"};
};

/// Why this person is on a ventilator. Never on a wall.
struct Diagnosis {
    Field<std::string> plain;
    Field<std::string> clinical;
    Field<WhyVentilated> why_ventilated;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
