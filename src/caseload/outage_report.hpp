#pragma once

#include <optional>
#include <span>
#include <string>

#include "caseload/outage_list.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

/// What a list of homes in an outage is asked for.
struct OutageQuestion {
    PlanMinutes needed = 0;          ///< to be bridged
    std::optional<Moment> starting;  ///< when the power fails: leave-by is then a time of the clock
    Date on;                         ///< of the list; the age of a battery counts by it
    bool names = false;              ///< beside record numbers
};

/// "6 h 15 min", in every row of a list both.
std::string hours_and_minutes(long long minutes);

/// For a terminal, in the order given, a heading where the standing changes. `homes` are sorted (sort_for_calls).
std::string outage_text(std::span<const HomeInOutage> homes, const OutageQuestion& question);

/// As comma-separated values (RFC 4180), one record a home, the columns named in the first:
///
///   record_number, name (only with names), standing (not judged, not known, falls short, lasts),
///   minutes_left, power_minutes, oxygen_minutes, oxygen_needed (yes, no), unaided_awake, unaided_asleep (none, minutes
///   as a number, hours), travel_minutes, leave_by_minutes (after the power failed, or now), leave_at (only with a
///   start: 2026-02-03 22:30, or now), call, call_name (only with names), phone, then_call, then_name (only with
///   names), then_phone, profile, why_not_judged
///
/// What is not known says so; a cell is empty only where it does not apply.
std::string outage_csv(std::span<const HomeInOutage> homes, const OutageQuestion& question);

}  // namespace ventfolio
