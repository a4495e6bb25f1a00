#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// One known point of an exhalation port, from the package of the port or mask.
struct PortPoint {
    Flow flow;
    Pressure pressure;
};

/// The intentional leak of an exhalation port at another pressure.
///
/// Formula  flow x sqrt(pressure / known pressure), -/+ 5 % between half and twice the known pressure, -/+ 10 % beyond
/// Units    L/min and cmH2O
/// Range    known point 5 to 60 L/min at 3 to 30 cmH2O; pressure 2 to 40 cmH2O
/// Source   law of a turbulent orifice; one flow pair of a vent (15 L/min at 4 and 21 L/min at 8 cmH2O); 5 % and 10 %
///          are common practice, no source
/// Example  15 L/min at 4 cmH2O, at 8 cmH2O: 21.2, printed as 20.2 to 22.3 L/min
/// Nothing  is returned outside the range.
std::optional<Band<Flow>> port_leak(const PortPoint& known, Pressure pressure);

/// The leak that clears one breath of used air from the hose while the person breathes out.
///
/// Formula  volume / time out
/// Units    mL and s, result in L/min
/// Range    10 to 2500 mL, 0.2 to 30 s
/// Source   balance of volumes; rebreathing with standard ports: Ferguson and Gilmartin 1995 (abstract)
/// Example  500 mL in 2.5 s: 12 L/min
/// Nothing  is returned outside the range.
std::optional<Flow> washout_need(Volume breath, Duration time_out);

/// The mean leak over a whole breath, in and out. The device gives this on top of the minute ventilation.
///
/// Formula  share in x leak at the peak + (1 - share in) x leak at the baseline
/// Units    L/min and cmH2O; share a fraction of the breath
/// Range    as for port_leak at both pressures, baseline not above peak; share 0.05 to 0.95
/// Source   law of a turbulent orifice; no published worked example was found
/// Example  20 L/min at 10 cmH2O, 15 over 5 cmH2O, 30 % of the breath in: 17.2, printed as 16.4 to 18.1 L/min
/// Nothing  is returned outside the range.
std::optional<Band<Flow>> mean_port_leak(const PortPoint& known, Pressure peak, Pressure baseline, Fraction share_in);

}  // namespace ventfolio::calc
