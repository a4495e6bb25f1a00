#include "calc/pressure_sums.hpp"

namespace ventfolio::calc {
namespace {

bool usable(Pressure stated, Pressure baseline) {
    return stated > Pressure{} && within(stated, 0, 60, unit::cmH2O) && within(baseline, 0, 25, unit::cmH2O);
}

}  // namespace

std::optional<PressureSums> pressure_sums(TotalPressure inspiratory, Pressure baseline) {
    if (!usable(inspiratory.value, baseline) || inspiratory.value <= baseline) return std::nullopt;
    return PressureSums{.baseline = baseline, .peak = inspiratory.value, .support = inspiratory.value - baseline};
}

std::optional<PressureSums> pressure_sums(PressureAboveBaseline inspiratory, Pressure baseline) {
    if (!usable(inspiratory.value, baseline)) return std::nullopt;
    return PressureSums{.baseline = baseline, .peak = baseline + inspiratory.value, .support = inspiratory.value};
}

}  // namespace ventfolio::calc
