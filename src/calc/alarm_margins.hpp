#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// How far the high-pressure alarm stands above the peak.
///
/// Formula  limit - peak
/// Units    any pressure; peak is total, not above baseline
/// Range    limit and peak 0 to 100 cmH2O
/// Source   two textbooks of mechanical ventilation, as extracts: about 10 cmH2O above the peak, 10 to 15 in the other
/// Example  limit 35, peak 25 cmH2O: 10 cmH2O
/// Nothing  is returned outside the range, or when the limit is not above the peak: there is no margin.
std::optional<Pressure> high_pressure_margin(Pressure limit, Pressure peak);

/// How far the low-pressure alarm stands below the lowest peak that is expected.
///
/// Formula  peak - limit
/// Units    any pressure; peak is total
/// Range    limit and peak 0 to 100 cmH2O
/// Source   the same textbooks: 5 to 10 cmH2O below the peak
/// Example  limit 18, peak 25 cmH2O: 7 cmH2O
/// Nothing  is returned outside the range, or when the limit is not below the peak: the alarm would never be quiet.
std::optional<Pressure> low_pressure_below_peak(Pressure limit, Pressure peak);

/// How far the low-pressure alarm stands above the baseline, which a hose that came off may still hold.
///
/// Formula  limit - baseline
/// Units    any pressure
/// Range    limit 0 to 100 cmH2O, baseline 0 to 25 cmH2O
/// Source   definition
/// Example  limit 12, baseline 5 cmH2O: 7 cmH2O
/// Nothing  is returned outside the range, or when the limit is not above the baseline: the alarm may stay quiet.
std::optional<Pressure> low_pressure_above_baseline(Pressure limit, Pressure baseline);

/// Tubes below this stayed silent in a simulated decannulation with the alarm 4 cmH2O below the peak.
inline constexpr Length kSilentTubeNearAlarm = Length::of(4.5, unit::mm);
/// Tubes below this stayed silent with the alarm 10 cmH2O below the peak.
inline constexpr Length kSilentTubeFarAlarm = Length::of(6.0, unit::mm);
inline constexpr Pressure kNearAlarm = Pressure::of(4, unit::cmH2O);

/// Whether a small tube may come out without a low-pressure alarm: the tube itself, lying free, keeps up the pressure.
///
/// Formula  inner diameter below 4.5 mm; or below 6.0 mm with the alarm more than 4 cmH2O below the peak
/// Units    mm and any pressure
/// Range    inner diameter 2.0 to 11.0 mm, distance 0 to 100 cmH2O
/// Source   Kun et al., simulated decannulation (abstract; Chest 2001 from memory). Between its two settings, 4 and
///          10 cmH2O below the peak, the careful side is taken
/// Example  5.5 mm, alarm 10 cmH2O below the peak: true
/// Nothing  is returned outside the range.
std::optional<bool> tube_may_slip_silently(Length inner_diameter, Pressure alarm_below_peak);

/// An alarm limit as a share of what is usual.
///
/// Formula  limit / usual
/// Units    both the same quantity; result a fraction
/// Range    limit 0 or more, usual above 0, share up to 100
/// Source   definition; "20 to 50 % below the usual volume" is common practice, no source
/// Example  low-volume limit 200 mL, usual 400 mL: 0.5
/// Nothing  is returned outside the range.
template <Dimension D>
std::optional<double> share_of_usual(Quantity<D> limit, Quantity<D> usual) {
    if (!(usual > Quantity<D>{}) || !within(limit / usual, 0, 100)) return std::nullopt;
    return limit / usual;
}

/// The delay of a no-breath alarm that lets at most one backup breath be missed.
///
/// Formula  from one cycle to two cycles
/// Units    breaths/min, result in s
/// Range    2 to 80 breaths/min
/// Source   textbook of mechanical ventilation, as extract: longer than one breath, shorter than two
/// Example  12 breaths/min: 5 to 10 s
/// Nothing  is returned outside the range.
std::optional<Band<Duration>> no_breath_window(BreathRate backup);

}  // namespace ventfolio::calc
