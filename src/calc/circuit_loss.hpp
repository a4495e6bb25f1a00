#pragma once

#include <compare>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct MillilitresPerCmH2O {
    double value = 0;
    friend constexpr auto operator<=>(MillilitresPerCmH2O, MillilitresPerCmH2O) = default;
};

struct CircuitLoss {
    Volume lost;       ///< stays in the hose
    Volume delivered;  ///< reaches the person
};

/// The part of a set volume that only stretches the hose, on a machine that does not make up for it.
///
/// Formula  compliance x (peak - baseline)
/// Units    mL/cmH2O and cmH2O, result in mL
/// Range    compliance 0.1 to 5 mL/cmH2O, volume 10 to 2500 mL, peak above baseline, both 0 to 100 cmH2O
/// Source   ventilation textbook extract (adult circuit 2 to 3 mL/cmH2O); open physiology package, worked example
/// Example  500 mL, 2.5 mL/cmH2O, 30 over 5 cmH2O: 62.5 mL lost
/// Nothing  is returned outside the range, or when nothing would be delivered.
std::optional<CircuitLoss> circuit_loss(Volume set, MillilitresPerCmH2O compliance, Pressure peak, Pressure baseline);

/// The share of a breath that has left the lung after a time, in the simplest model of breathing out.
///
/// Formula  1 - exp(-time / (resistance x compliance))
/// Units    s; resistance in cmH2O per L/s, compliance in L/cmH2O; result a fraction of 1
/// Range    time 0 to 30 s, resistance 2 to 100, compliance 0.005 to 0.2
/// Source   physiology textbooks (63, 86, 95, 98 and 99 % after 1 to 5 time constants; from memory)
/// Example  resistance 20, compliance 0.05, 3 s: 95 %
/// Nothing  is returned outside the range.
std::optional<double> share_breathed_out(Duration time_out, double resistance, double compliance);

/// The compliance of a hose, from a test breath with the person's end blocked.
///
/// Formula  volume / (peak - baseline)
/// Units    mL and cmH2O, result in mL/cmH2O
/// Range    volume 1 to 2500 mL, peak above baseline, both 0 to 100 cmH2O; result 0.1 to 5 mL/cmH2O
/// Source   ventilation textbook extract (adult circuit 2 to 3 mL/cmH2O)
/// Example  100 mL, 45 over 5 cmH2O: 2.5 mL/cmH2O
/// Nothing  is returned outside the range.
std::optional<MillilitresPerCmH2O> measured_compliance(Volume test, Pressure peak, Pressure baseline);

/// What the gas in a hose alone yields, without any stretch: no hose can be stiffer than this.
///
/// Formula  gas volume / air pressure
/// Units    mL and cmH2O, result in mL/cmH2O
/// Range    gas 10 to 5000 mL, air pressure 400 to 820 mmHg
/// Source   Boyle's law
/// Example  1 L at sea level: 0.968 mL/cmH2O
/// Nothing  is returned outside the range.
std::optional<MillilitresPerCmH2O> gas_compliance(Volume gas, Pressure air);

}  // namespace ventfolio::calc
