#pragma once

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace ventfolio {

/// A day of the calendar, always one that exists.
///
/// Example: Date::parse("2026-02-03"); Date::parse("2026-02-30") is nothing.
class Date {
  public:
    /// Year-month-day with hyphens (ISO 8601), years 1900 to 2199.
    static std::optional<Date> parse(std::string_view text);
    static std::optional<Date> of(int year, unsigned month, unsigned day);

    int year() const { return static_cast<int>(day_.year()); }
    unsigned month() const { return static_cast<unsigned>(day_.month()); }
    unsigned day() const { return static_cast<unsigned>(day_.day()); }
    std::string iso() const;

    Date plus_days(int days) const;
    /// The same day so many months on; the last of the month where that day does not exist (31 January plus 1 month is
    /// 28 February).
    Date plus_months(int months) const;

    friend auto operator<=>(const Date&, const Date&) = default;
    /// Days from `earlier` to `later`.
    friend int days_between(Date earlier, Date later);

  private:
    explicit Date(std::chrono::year_month_day day) : day_{day} {}

    std::chrono::year_month_day day_;
};

/// A time of day to the minute.
struct ClockTime {
    int minutes = 0;  ///< since midnight, 0 to 1439

    /// "8:30 PM", "8 PM", "20:30", "noon" or "midnight".
    static std::optional<ClockTime> parse(std::string_view text);
    /// 24-hour form: "20:30".
    std::string iso() const;
    friend auto operator<=>(const ClockTime&, const ClockTime&) = default;
};

/// A day and a time: "2026-01-12 10:00".
struct Moment {
    Date date;
    ClockTime time;

    static std::optional<Moment> parse(std::string_view text);
    std::string iso() const { return date.iso() + " " + time.iso(); }
    friend auto operator<=>(const Moment&, const Moment&) = default;
};

/// From one clock time to another, over midnight if the second is earlier: "8 PM to 9 AM" is 13 hours.
struct ClockSpan {
    ClockTime from;
    ClockTime to;

    static std::optional<ClockSpan> parse(std::string_view text);
    /// 1 to 1440; equal ends mean the whole day.
    int minutes() const;
    friend auto operator<=>(const ClockSpan&, const ClockSpan&) = default;
};

/// How often something is done: "30 days", "2 weeks", "6 months", "1 year".
struct Interval {
    enum class Step { days, weeks, months, years };
    int count = 0;  ///< 1 to 3660
    Step step = Step::days;

    static std::optional<Interval> parse(std::string_view text);
    std::string text() const;
    /// The day on which it is due again.
    Date after(Date last) const;
    friend bool operator==(const Interval&, const Interval&) = default;
};

}  // namespace ventfolio
