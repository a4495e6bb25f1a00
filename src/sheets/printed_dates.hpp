#pragma once

#include "sheets/printer.hpp"

namespace ventfolio {

/// Day of the week, 0 for Monday to 6 for Sunday (ISO 8601 counts the same days from 1).
int weekday_of(Date day);
/// "Mon"; "Monday" in full.
std::string weekday(int day, const Printer& printer, UnitForm form);
/// "Sat 28 Mar 2026", for a day on which something is to be done.
std::string day_of_week_and_date(Date day, const Printer& printer);
/// "28 Mar", where the year stands above; "Mar 28" where months come first.
std::string day_and_month(Date day, const Printer& printer);
/// "Wed 7:45 AM", for a time within a week.
std::string day_and_time(Moment moment, const Printer& printer);
/// So many minutes later, over midnight.
Moment after_minutes(Moment start, long long minutes);

/// "6 h 15 min": hours and minutes both, also where one is 0, so that times stand in a column and a chart can read
/// them.
Printer::Parts elapsed(long long minutes, const Printer& printer);

}  // namespace ventfolio
