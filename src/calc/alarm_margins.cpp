#include "calc/alarm_margins.hpp"

#include "calc/breath_timing.hpp"

namespace ventfolio::calc {
namespace {

std::optional<Pressure> rise(Pressure from, Pressure to) {
    if (!within(from, 0, 100, unit::cmH2O) || !within(to, 0, 100, unit::cmH2O) || !(from < to)) return std::nullopt;
    return to - from;
}

}  // namespace

std::optional<Pressure> high_pressure_margin(Pressure limit, Pressure peak) { return rise(peak, limit); }

std::optional<Pressure> low_pressure_below_peak(Pressure limit, Pressure peak) { return rise(limit, peak); }

std::optional<Pressure> low_pressure_above_baseline(Pressure limit, Pressure baseline) {
    if (!within(baseline, 0, 25, unit::cmH2O)) return std::nullopt;
    return rise(baseline, limit);
}

std::optional<bool> tube_may_slip_silently(Length inner_diameter, Pressure alarm_below_peak) {
    if (!within(inner_diameter, 2, 11, unit::mm) || !within(alarm_below_peak, 0, 100, unit::cmH2O)) return std::nullopt;
    const bool far = !within(alarm_below_peak.in(unit::cmH2O), 0, kNearAlarm.in(unit::cmH2O));
    return inner_diameter < kSilentTubeNearAlarm || (inner_diameter < kSilentTubeFarAlarm && far);
}

std::optional<Band<Duration>> no_breath_window(BreathRate backup) {
    const auto cycle = breath_cycle(backup);
    if (!cycle) return std::nullopt;
    return Band<Duration>{*cycle, *cycle * 2};
}

}  // namespace ventfolio::calc
