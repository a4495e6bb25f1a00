#include "calc/cough_flow.hpp"

namespace ventfolio::calc {

std::optional<CoughStrength> cough_strength(Flow peak) {
    if (!within(peak, 0, 900, unit::L_per_min)) return std::nullopt;
    const double flow = peak.in(unit::L_per_min);
    if (!at_least(flow, kIneffectiveCough.in(unit::L_per_min))) return CoughStrength::ineffective;
    if (!at_least(flow, kWeakCough.in(unit::L_per_min))) return CoughStrength::weak;
    return CoughStrength::sufficient;
}

std::optional<CoughPressures> cough_pressures(Pressure in, Pressure out) {
    constexpr double kGoal = 30;
    if (!within(in, 1, 70, unit::cmH2O) || !within(out, -70, -1, unit::cmH2O)) return std::nullopt;
    return CoughPressures{
        .swing = in - out,
        .reaches_goal = at_least(in.in(unit::cmH2O), kGoal) && at_least(-out.in(unit::cmH2O), kGoal),
    };
}

}  // namespace ventfolio::calc
