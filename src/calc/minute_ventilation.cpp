#include "calc/minute_ventilation.hpp"

namespace ventfolio::calc {

std::optional<Flow> minute_ventilation(BreathRate rate, Volume volume) {
    if (!within(rate, 2, 80, unit::breaths_per_min) || !within(volume, 10, 2500, unit::mL)) return std::nullopt;
    return Flow::of(rate.in(unit::breaths_per_min)*volume.in(unit::mL), unit::mL_per_min);
}

std::optional<Flow> inspiratory_flow(Volume volume, Duration time_in) {
    if (!within(volume, 10, 2500, unit::mL) || !within(time_in, 0.20, 4.0, unit::s)) return std::nullopt;
    return Flow::of(volume.in(unit::L) / time_in.in(unit::s), unit::L_per_s);
}

}  // namespace ventfolio::calc
