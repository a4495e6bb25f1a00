#include "calc/circuit_loss.hpp"

#include <cmath>

namespace ventfolio::calc {

std::optional<CircuitLoss> circuit_loss(Volume set, MillilitresPerCmH2O compliance, Pressure peak, Pressure baseline) {
    const bool usable = within(set, 10, 2500, unit::mL) && within(compliance.value, 0.1, 5) &&
                        within(peak, 0, 100, unit::cmH2O) && within(baseline, 0, 100, unit::cmH2O) && baseline < peak;
    if (!usable) return std::nullopt;
    const Volume lost = Volume::of(compliance.value * (peak - baseline).in(unit::cmH2O), unit::mL);
    if (at_least(lost.in(unit::mL), set.in(unit::mL))) return std::nullopt;
    return CircuitLoss{.lost = lost, .delivered = set - lost};
}

std::optional<double> share_breathed_out(Duration time_out, double resistance, double compliance) {
    if (!within(time_out, 0, 30, unit::s) || !within(resistance, 2, 100) || !within(compliance, 0.005, 0.2))
        return std::nullopt;
    return 1 - std::exp(-time_out.in(unit::s) / (resistance * compliance));
}

std::optional<MillilitresPerCmH2O> measured_compliance(Volume test, Pressure peak, Pressure baseline) {
    const bool usable = within(test, 1, 2500, unit::mL) && within(peak, 0, 100, unit::cmH2O) &&
                        within(baseline, 0, 100, unit::cmH2O) && baseline < peak;
    if (!usable) return std::nullopt;
    const double compliance = test.in(unit::mL) / (peak - baseline).in(unit::cmH2O);
    if (!within(compliance, 0.1, 5)) return std::nullopt;
    return MillilitresPerCmH2O{compliance};
}

std::optional<MillilitresPerCmH2O> gas_compliance(Volume gas, Pressure air) {
    if (!within(gas, 10, 5000, unit::mL) || !within(air, 400, 820, unit::mmHg)) return std::nullopt;
    return MillilitresPerCmH2O{gas.in(unit::mL) / air.in(unit::cmH2O)};
}

}  // namespace ventfolio::calc
