#pragma once

#include <span>
#include <string>

#include "caseload/due_list.hpp"

namespace ventfolio {

/// What is due, for a terminal: first what is overdue or has no day, then what comes. `dues` are sorted (keep_due_by).
std::string due_text(std::span<const Due> dues, Date on, bool names);

/// As comma-separated values (RFC 4180), one record for each thing, the columns named in the first: record_number, name
/// (only with names), kind, due (2026-02-03, or now), days_overdue (empty where it is not), what, who (only with names)
std::string due_csv(std::span<const Due> dues, Date on, bool names);

}  // namespace ventfolio
