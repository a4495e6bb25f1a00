#include "calc/next_due_date.hpp"

namespace ventfolio::calc {

std::optional<Date> next_due_date(Date last_done, const Interval& interval) {
    constexpr int kLastYear = 2199;
    if (interval.count < 1 || interval.count > 3660) return std::nullopt;
    const Date due = interval.after(last_done);
    if (due.year() > kLastYear) return std::nullopt;
    return due;
}

std::optional<int> days_overdue(Date due, Date day) {
    if (day <= due) return std::nullopt;
    return days_between(due, day);
}

}  // namespace ventfolio::calc
