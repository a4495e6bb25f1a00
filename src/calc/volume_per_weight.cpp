#include "calc/volume_per_weight.hpp"

namespace ventfolio::calc {

std::optional<MillilitresPerKilogram> volume_per_weight(Volume volume, Mass reference_weight) {
    if (!within(volume, 10, 2500, unit::mL) || !within(reference_weight, 0.5, 350, unit::kg)) return std::nullopt;
    return MillilitresPerKilogram{volume.in(unit::mL) / reference_weight.in(unit::kg)};
}

}  // namespace ventfolio::calc
