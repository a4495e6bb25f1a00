#pragma once

#include <compare>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct MillilitresPerKilogram {
    double value = 0;
    friend constexpr auto operator<=>(MillilitresPerKilogram, MillilitresPerKilogram) = default;
};

/// A breath set against the reference weight: predicted weight for adults, actual weight for children.
///
/// Formula  volume / weight
/// Units    volume in mL, weight in kg, result in mL/kg
/// Range    volume 10 to 2500 mL, weight 0.5 to 350 kg
/// Source   definition; ARDS Network, N Engl J Med 2000;342:1301 (6 mL/kg)
/// Example  438 mL for 73.0 kg: 6.0 mL/kg
/// Nothing  is returned outside the range.
std::optional<MillilitresPerKilogram> volume_per_weight(Volume volume, Mass reference_weight);

}  // namespace ventfolio::calc
