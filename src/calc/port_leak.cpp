#include "calc/port_leak.hpp"

#include <cmath>

namespace ventfolio::calc {

std::optional<Band<Flow>> port_leak(const PortPoint& known, Pressure pressure) {
    const bool usable = within(known.flow, 5, 60, unit::L_per_min) && within(known.pressure, 3, 30, unit::cmH2O) &&
                        within(pressure, 2, 40, unit::cmH2O);
    if (!usable) return std::nullopt;
    const double times = pressure / known.pressure;
    const Flow middle = known.flow * std::sqrt(times);
    const double off = within(times, 0.5, 2) ? 0.05 : 0.10;
    return Band<Flow>{middle * (1 - off), middle * (1 + off)};
}

std::optional<Flow> washout_need(Volume breath, Duration time_out) {
    if (!within(breath, 10, 2500, unit::mL) || !within(time_out, 0.2, 30, unit::s)) return std::nullopt;
    return Flow::of(breath.in(unit::L) / time_out.in(unit::s), unit::L_per_s);
}

std::optional<Band<Flow>> mean_port_leak(const PortPoint& known, Pressure peak, Pressure baseline, Fraction share_in) {
    const auto in = port_leak(known, peak);
    const auto out = port_leak(known, baseline);
    if (!in || !out || baseline > peak || !within(share_in, 5, 95, unit::percent)) return std::nullopt;
    const double share = share_in.in(unit::percent) / 100;
    return Band<Flow>{in->low * share + out->low * (1 - share), in->high * share + out->high * (1 - share)};
}

}  // namespace ventfolio::calc
