#pragma once

#include <optional>
#include <span>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct TestedBattery {
    Duration tested;      ///< timed on this machine with these settings; never the time on the label
    double derating = 0;  ///< the share of it that a plan may count on; without one there is no sum
};

/// How long the batteries that serve one machine last, one after the other.
///
/// Formula  sum of tested time x derating
/// Units    min; round down to print (floor_minutes)
/// Range    each tested time 1 min to 7 days, derating above 0 and up to 1
/// Source   definition; usual shares are common practice, no source
/// Example  300 min and 240 min at 0.80: 432 min
/// Nothing  is returned for an empty list, or when any battery is outside the range: one untested battery makes the sum
///          a guess.
std::optional<Duration> battery_time(std::span<const TestedBattery> batteries);

/// A battery known only by its label, and what takes from it.
struct LabelledBattery {
    Voltage nominal;
    ElectricCharge capacity;
    double age_share = 0.80;          ///< what is left at the end of its stated life (IEEE 485, from memory)
    double temperature_share = 1;     ///< 1 / 1.19 for lead-acid at 10 degrees (IEEE 485, from memory)
    double usable_share = 0.50;       ///< depth of discharge: 0.50 lead-acid, 0.80 lithium (common practice, no source)
    double supply_efficiency = 0.85;  ///< of the inverter or converter (common practice, no source)
};

/// How long a labelled battery carries a load: a first guess before it is timed, never a number for a plan.
///
/// Formula  volts x ampere-hours x all shares / watts
/// Units    V, Ah, W, result in h
/// Range    3 to 60 V, 0.1 to 1000 Ah, load 0.5 to 5000 W, each share 0.1 to 1
/// Source   definition; shares as named beside them
/// Example  12 V, 100 Ah, 0.8, 10 degrees, half used, 0.85, 60 W: 5.71 h (the label alone says 20 h)
/// Nothing  is returned outside the range, or without a load.
std::optional<Duration> labelled_battery_time(const LabelledBattery& battery, Power load);

/// A lead-acid battery's rating: a capacity holds only for the hours over which it was measured.
struct RatedBattery {
    ElectricCharge capacity;
    Duration rated_over = Duration::of(20, unit::h);
    double exponent = 1.2;  ///< 1 for lithium; 1.05 to 1.3 for lead-acid
};

/// How long a lead-acid battery carries a current: a high current takes more out of it than it gives.
///
/// Formula  hours x (capacity / (current x hours)) ^ exponent
/// Units    Ah, h, A, result in h
/// Range    0.1 to 1000 Ah, rated over 1 to 100 h, current 0.01 to 500 A, exponent 1 to 1.4; result up to 1000 h
/// Source   Peukert's law with the rating's own hours; the form t = capacity / current ^ exponent counts capacity at
///          one ampere and gives other numbers for the same label
/// Example  100 Ah at 20 h, exponent 1.2, 10 A: 8.7 h
/// Nothing  is returned outside the range.
std::optional<Duration> rated_battery_time(const RatedBattery& battery, Current load);

/// The same as a range: from the derated time, which a plan counts on, to the time as it was tested.
///
/// Formula  low = battery_time; high = sum of tested times
/// Units    min
/// Range    as for battery_time
/// Source   as for battery_time
/// Example  300 min at 0.80: 240 to 300 min
/// Nothing  is returned as for battery_time.
std::optional<Band<Duration>> battery_time_range(std::span<const TestedBattery> batteries);

/// The same as labelled_battery_time as a range: from all shares to the bare label, which no battery reaches.
///
/// Formula  low = labelled_battery_time; high = volts x ampere-hours / watts
/// Units    h
/// Range    as for labelled_battery_time
/// Source   as for labelled_battery_time
/// Example  12 V, 100 Ah, 60 W: 5.7 to 20 h
/// Nothing  is returned as for labelled_battery_time.
std::optional<Band<Duration>> labelled_battery_range(const LabelledBattery& battery, Power load);

/// The exponent of a lead-acid battery from two times that its label gives.
///
/// Formula  ln(time 1 / time 2) / ln(current 2 / current 1), current = capacity / time
/// Units    Ah and h, result a number
/// Range    capacities 0.1 to 1000 Ah, times 0.1 to 100 h, the second time shorter and its current larger; result 1 to
///          1.4
/// Source   Peukert's law
/// Example  100 Ah over 20 h and 80 Ah over 5 h: 1.19
/// Nothing  is returned outside the range.
std::optional<double> battery_exponent(ElectricCharge slow, Duration slow_time, ElectricCharge fast,
                                       Duration fast_time);

}  // namespace ventfolio::calc
