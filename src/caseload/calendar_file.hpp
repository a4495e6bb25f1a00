#pragma once

#include <span>
#include <string>
#include <string_view>

#include "caseload/due_list.hpp"

namespace ventfolio {

/// What has a day, as a calendar file (RFC 5545): an all-day event for each record number, kind and day, so that three
/// batteries due on one day are one event. The same dues give the same bytes: UID is made of these three, DTSTAMP of
/// `on`. SUMMARY holds the record number and the kind; only with `names` DESCRIPTION says who and what.
///
/// Nothing is returned where nothing has a day: a calendar holds at least one component (RFC 5545, 3.6).
///
/// Example: DEMO-1, battery-test, 2026-12-15 -> UID:DEMO-1.battery-test.2026-12-15@ventfolio
std::string calendar_file(std::span<const Due> dues, Date on, bool names);

/// One content line with its line end, folded where it is longer than 75 octets: no letter of several octets is broken
/// (RFC 5545, 3.1).
std::string folded_line(std::string_view line);

/// A text as the value of a property: backslash, semicolon, comma and line end are escaped (RFC 5545, 3.3.11).
std::string calendar_text(std::string_view text);

}  // namespace ventfolio
