#include "calc/cuff_pressure.hpp"

namespace ventfolio::calc {

std::optional<CuffPressure> cuff_pressure(Pressure pressure) {
    if (!within(pressure, 0, 60, unit::cmH2O)) return std::nullopt;
    const double number = pressure.in(unit::cmH2O);
    const bool in_band = within(number, kCuffBand.low.in(unit::cmH2O), kCuffBand.high.in(unit::cmH2O));
    return CuffPressure{.cmH2O = number, .mmHg = pressure.in(unit::mmHg), .in_band = in_band};
}

}  // namespace ventfolio::calc
