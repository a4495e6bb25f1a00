#pragma once

#include <compare>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct KilogramsPerSquareMetre {
    double value = 0;
    friend constexpr auto operator<=>(KilogramsPerSquareMetre, KilogramsPerSquareMetre) = default;
};

/// Weight against height: finds pounds written for kilograms, or inches for centimetres.
///
/// Formula  weight / height squared
/// Units    kg and m
/// Range    weight 0.5 to 350 kg, height 40 to 230 cm
/// Source   definition; worked examples of the US Centers for Disease Control (from memory)
/// Example  68 kg, 165 cm: 24.98 kg per square metre
/// Nothing  is returned outside the range.
std::optional<KilogramsPerSquareMetre> body_mass_index(Mass weight, Length height);

}  // namespace ventfolio::calc
