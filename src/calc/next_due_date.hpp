#pragma once

#include <optional>

#include "units/calendar.hpp"

namespace ventfolio::calc {

/// When a task is due again.
///
/// Formula  last day done + interval; a day that the month lacks becomes its last day
/// Units    calendar days
/// Range    1 to 3660 steps, result up to the year 2199
/// Source   Gregorian calendar (ISO 8601); month ends agree with two calendar libraries
/// Example  2026-01-31 plus 1 month: 2026-02-28
/// Nothing  is returned outside the range.
std::optional<Date> next_due_date(Date last_done, const Interval& interval);

/// Days by which a task is late: from the day after it was due.
///
/// Formula  day - due
/// Units    days, 1 or more
/// Range    any two days
/// Source   definition
/// Example  due 2026-02-01, on 2026-02-03: 2
/// Nothing  is returned when the task is not late.
std::optional<int> days_overdue(Date due, Date day);

}  // namespace ventfolio::calc
