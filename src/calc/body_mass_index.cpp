#include "calc/body_mass_index.hpp"

namespace ventfolio::calc {

std::optional<KilogramsPerSquareMetre> body_mass_index(Mass weight, Length height) {
    if (!within(weight, 0.5, 350, unit::kg) || !within(height, 40, 230, unit::cm)) return std::nullopt;
    const double metres = height.in(unit::m);
    return KilogramsPerSquareMetre{weight.in(unit::kg) / (metres * metres)};
}

}  // namespace ventfolio::calc
