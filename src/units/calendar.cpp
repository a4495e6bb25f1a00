#include "units/calendar.hpp"

#include <fmt/format.h>
#include <array>
#include <charconv>

#include "units/text.hpp"

namespace ventfolio {
namespace {

using namespace std::chrono;

std::optional<int> whole_number(std::string_view text) {
    // Digits only: from_chars would take the minus of "8:-0".
    if (text.empty() || text.size() > 5 || text.find_first_not_of("0123456789") != std::string_view::npos)
        return std::nullopt;
    int value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

struct Hour12 {
    std::string_view suffix;
    int add;
};

constexpr std::array kHalves{Hour12{" AM", 0}, Hour12{" PM", 12}, Hour12{"AM", 0}, Hour12{"PM", 12}};

std::optional<ClockTime> from_hour_and_minute(std::string_view text, int least_hour, int most_hour) {
    const auto colon = text.find(':');
    const auto hour = whole_number(text.substr(0, colon));
    const auto minute = colon == std::string_view::npos ? std::optional{0} : whole_number(text.substr(colon + 1));
    const bool two_digits = colon == std::string_view::npos || text.size() - colon == 3;
    if (!hour || !minute || !two_digits || *hour < least_hour || *hour > most_hour || *minute > 59) return std::nullopt;
    return ClockTime{*hour * 60 + *minute};
}

struct StepWord {
    std::string_view one;
    std::string_view many;
    Interval::Step step;
};

constexpr std::array kSteps{
    StepWord{"day", "days", Interval::Step::days}, StepWord{"week", "weeks", Interval::Step::weeks},
    StepWord{"month", "months", Interval::Step::months}, StepWord{"year", "years", Interval::Step::years}};

}  // namespace

std::optional<Date> Date::of(int year, unsigned month, unsigned day) {
    const year_month_day candidate{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}};
    if (!candidate.ok() || year < 1900 || year > 2199) return std::nullopt;
    return Date{candidate};
}

std::optional<Date> Date::parse(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = whole_number(text.substr(0, 4));
    const auto month = whole_number(text.substr(5, 2));
    const auto day = whole_number(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    return of(*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day));
}

std::string Date::iso() const { return fmt::format("{:04}-{:02}-{:02}", year(), month(), day()); }

Date Date::plus_days(int count) const { return Date{year_month_day{sys_days{day_} + days{count}}}; }

Date Date::plus_months(int count) const {
    year_month_day later = day_ + months{count};
    if (!later.ok()) later = later.year() / later.month() / last;
    return Date{later};
}

int days_between(Date earlier, Date later) {
    return static_cast<int>((sys_days{later.day_} - sys_days{earlier.day_}).count());
}

std::optional<ClockTime> ClockTime::parse(std::string_view text) {
    if (text == "noon") return ClockTime{12 * 60};
    if (text == "midnight") return ClockTime{0};
    for (const Hour12& half : kHalves) {
        if (!text.ends_with(half.suffix)) continue;
        auto time = from_hour_and_minute(text.substr(0, text.size() - half.suffix.size()), 1, 12);
        if (time) time->minutes = time->minutes % (12 * 60) + half.add * 60;
        return time;
    }
    if (text.find(':') == std::string_view::npos) return std::nullopt;
    return from_hour_and_minute(text, 0, 23);
}

std::string ClockTime::iso() const { return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60); }

std::optional<Moment> Moment::parse(std::string_view text) {
    const auto blank = text.find(' ');
    if (blank == std::string_view::npos) return std::nullopt;
    const auto date = Date::parse(text.substr(0, blank));
    const auto time = ClockTime::parse(text.substr(blank + 1));
    if (!date || !time) return std::nullopt;
    return Moment{*date, *time};
}

std::optional<ClockSpan> ClockSpan::parse(std::string_view text) {
    constexpr std::string_view kTo = " to ";
    const auto at = text.find(kTo);
    if (at == std::string_view::npos) return std::nullopt;
    const auto from = ClockTime::parse(trimmed(text.substr(0, at)));
    const auto to = ClockTime::parse(trimmed(text.substr(at + kTo.size())));
    if (!from || !to) return std::nullopt;
    return ClockSpan{*from, *to};
}

int ClockSpan::minutes() const {
    constexpr int kDay = 24 * 60;
    const int length = (to.minutes - from.minutes + kDay) % kDay;
    return length == 0 ? kDay : length;
}

std::optional<Interval> Interval::parse(std::string_view text) {
    const auto blank = text.find(' ');
    if (blank == std::string_view::npos) return std::nullopt;
    const auto count = whole_number(text.substr(0, blank));
    if (!count || *count < 1 || *count > 3660) return std::nullopt;
    for (const StepWord& word : kSteps)
        if (text.substr(blank + 1) == word.one || text.substr(blank + 1) == word.many)
            return Interval{*count, word.step};
    return std::nullopt;
}

std::string Interval::text() const {
    const StepWord& word = kSteps[static_cast<std::size_t>(step)];
    return fmt::format("{} {}", count, count == 1 ? word.one : word.many);
}

Date Interval::after(Date last) const {
    switch (step) {
        case Step::days:
            return last.plus_days(count);
        case Step::weeks:
            return last.plus_days(7 * count);
        case Step::months:
            return last.plus_months(count);
        case Step::years:
            return last.plus_months(12 * count);
    }
    return last;
}

}  // namespace ventfolio
