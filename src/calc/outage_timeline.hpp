#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// What must be left over for leaving. Both numbers are common practice, no source; the travel rule is wider than the
/// air-travel rule of batteries for 1.5 times the trip (14 CFR 382.133, from memory).
struct LeaveReserve {
    double travel_times = 2;
    Duration fixed = Duration::of(120, unit::min);
};

struct OutageTimeline {
    Duration time_left;  ///< until power or needed oxygen ends
    bool oxygen_ends_first = false;
    Duration reserve;
    std::optional<Duration> leave_by;  ///< after the power fails; nothing: leave or call now
};

/// When to leave during a power failure, counted from its start.
///
/// Formula  leave by = the smaller of power and needed oxygen - (2 x travel + 120 min)
/// Units    min; round down to print (floor_minutes)
/// Range    power and oxygen 0 to 30 days, travel 0 to 24 h, reserve not negative
/// Source   definition; reserve common practice, no source. No published worked timeline was found
/// Example  power 18 h, oxygen 9 h, travel 30 min: leave by 6 h
/// Nothing  is returned outside the range. `leave_by` is nothing when no time would be left to wait.
std::optional<OutageTimeline> outage_timeline(Duration power, std::optional<Duration> needed_oxygen, Duration travel,
                                              const LeaveReserve& reserve = {});

}  // namespace ventfolio::calc
