#include "sheets/printed_dates.hpp"

#include <fmt/format.h>
#include <array>

#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::array<std::string_view, 7> kWeekdays{"monday", "tuesday",  "wednesday", "thursday",
                                                    "friday", "saturday", "sunday"};
constexpr std::array<std::string_view, 13> kMonths{"",        "january",  "february", "march",  "april",
                                                   "may",     "june",     "july",     "august", "september",
                                                   "october", "november", "december"};
constexpr int kMinutesOfDay = 24 * 60;

std::string unbroken(std::string text) { return with_replaced(std::move(text), " ", kNoBreakSpace); }

}  // namespace

int weekday_of(Date day) {
    const Date monday = *Date::of(1900, 1, 1);  // ISO 8601 counts it as day 1 of its week
    return days_between(monday, day) % 7;
}

std::string weekday(int day, const Printer& printer, UnitForm form) {
    const std::string_view group = form == UnitForm::brief ? "weekdays_brief" : "weekdays";
    return std::string{printer.words().at(fmt::format("{}.{}", group, kWeekdays[static_cast<std::size_t>(day)]))};
}

std::string day_of_week_and_date(Date day, const Printer& printer) {
    return unbroken(
        fmt::format("{} {}", weekday(weekday_of(day), printer, UnitForm::brief), printer.date(day, UnitForm::brief)));
}

std::string day_and_month(Date day, const Printer& printer) {
    const std::string_view month = printer.words().at(fmt::format("months_brief.{}", kMonths[day.month()]));
    const bool month_first = printer.region().date_order == Region::DateOrder::month_day_year;
    return unbroken(month_first ? fmt::format("{} {}", month, day.day()) : fmt::format("{} {}", day.day(), month));
}

std::string day_and_time(Moment moment, const Printer& printer) {
    return unbroken(
        fmt::format("{} {}", weekday(weekday_of(moment.date), printer, UnitForm::brief), printer.time(moment.time)));
}

Moment after_minutes(Moment start, long long minutes) {
    const long long all = start.time.minutes + minutes;
    return {start.date.plus_days(static_cast<int>(all / kMinutesOfDay)), {static_cast<int>(all % kMinutesOfDay)}};
}

Printer::Parts elapsed(long long minutes, const Printer& printer) {
    Printer::Parts parts = printer.number(Decimal::whole(minutes / 60), "h", Zeros::drop, UnitForm::brief);
    parts.push_back({PrintedPart::Kind::word, std::string{kNoBreakSpace}});
    for (PrintedPart& part : printer.number(Decimal::whole(minutes % 60), "min", Zeros::drop, UnitForm::brief))
        parts.push_back(std::move(part));
    return parts;
}

}  // namespace ventfolio
