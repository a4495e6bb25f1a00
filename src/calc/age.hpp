#pragma once

#include <optional>

#include "calc/band.hpp"
#include "units/calendar.hpp"

namespace ventfolio::calc {

/// How old someone is: whole years, then whole months, then days.
struct Age {
    int years = 0;
    int months = 0;      ///< 0 to 11
    int days = 0;        ///< 0 to 30
    int total_days = 0;  ///< since birth
    friend bool operator==(const Age&, const Age&) = default;
};

enum class AgeGroup { infant, child, adult };

/// Whether an age lies between 0 and 120 completed years.
bool is_possible(const Age& age);

/// Age on a day.
///
/// Formula  completed years, months and days; a birthday that a year or month does not have counts as the 1st of the
///          next month (29 February: 1 March in common years)
/// Units    calendar days
/// Range    0 to 120 completed years
/// Source   Gregorian calendar (ISO 8601); the choice for 29 February is ours
/// Example  born 2019-05-31, on 2026-01-15: 6 years 7 months 15 days, 2421 days
/// Nothing  is returned for a birth after the day, or an age above 120 years.
std::optional<Age> age_on(Date birth, Date day);

/// Infant under 1 year, child under 18, adult from the 18th birthday on.
AgeGroup age_group(const Age& age);

}  // namespace ventfolio::calc
