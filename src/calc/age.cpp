#include "calc/age.hpp"

namespace ventfolio::calc {
namespace {

int whole_months(Date birth, Date day) {
    const int by_month =
        (day.year() - birth.year()) * 12 + static_cast<int>(day.month()) - static_cast<int>(birth.month());
    return day.day() < birth.day() ? by_month - 1 : by_month;
}

// The day on which so many months are complete.
Date anniversary(Date birth, int months) {
    const Date day = birth.plus_months(months);
    return day.day() == birth.day() ? day : day.plus_days(1);
}

}  // namespace

bool is_possible(const Age& age) { return age.years >= 0 && age.years <= 120 && age.total_days >= 0; }

std::optional<Age> age_on(Date birth, Date day) {
    if (day < birth) return std::nullopt;
    const int months = whole_months(birth, day);
    const Age age{.years = months / 12,
                  .months = months % 12,
                  .days = days_between(anniversary(birth, months), day),
                  .total_days = days_between(birth, day)};
    if (!is_possible(age)) return std::nullopt;
    return age;
}

AgeGroup age_group(const Age& age) {
    if (age.years >= 18) return AgeGroup::adult;
    return age.years >= 1 ? AgeGroup::child : AgeGroup::infant;
}

}  // namespace ventfolio::calc
