#include "sheets/care_data.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <vector>

#include "calc/next_due_date.hpp"
#include "sheets/printed_dates.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// A short label stays on one line; a long one must fit the column of a day.
std::string kept_together(const std::string& label) {
    constexpr std::size_t kShort = 10;
    return label.size() <= kShort ? with_replaced(label, " ", kNoBreakSpace) : label;
}

constexpr Audiences kCare = wall | folder;
constexpr int kDaysOfWeek = 7;

PrintedValue words_value(std::string name, std::string text) {
    return calculated(std::move(name), kCare, plain_parts(std::move(text)));
}

/// Something to be done by a day.
struct DatedTask {
    TemplateData::Object data;
    std::optional<Date> due;
    std::optional<Interval> interval;  ///< nothing: once only
};

class CareData {
  public:
    CareData(const TemplateData::Object& profile, const Household& home, const Printer& printer)
        : profile_{profile}, home_{home}, printer_{printer} {
        for (const std::string& word : split(std::string{printer.words().at("care.longer_than_a_day")}, ' '))
            longer_words_.insert(word);
    }

    TemplateData made() {
        add_tasks();
        add_tube();
        add_services();
        add_retests();
        add_registration();
        std::ranges::stable_sort(dated_, [](const DatedTask& a, const DatedTask& b) {
            if (a.due.has_value() != b.due.has_value()) return a.due.has_value();
            return a.due && *a.due < *b.due;
        });
        data_["dated"] = items_of([](const DatedTask&) { return true; });
        data_["overdue"] = items_of([&](const DatedTask& one) { return one.due && *one.due < home_.on; });
        for (const char* name : {"daily", "longer", "dated", "overdue", "methods"})
            data_["has_" + std::string{name}] = !data_.at(name).items()->empty();
        add_month();
        return data_;
    }

  private:
    template <class Test>
    TemplateData::Items items_of(Test test) const {
        TemplateData::Items items;
        for (const DatedTask& one : dated_)
            if (test(one)) items.emplace_back(one.data);
        return items;
    }

    bool speaks_of_longer(const std::string& how_often) const {
        // At the start of a word only: the Spanish month, "mes", also ends the English "times".
        const std::vector<std::string> said = split(lower_ascii(how_often), ' ');
        return std::ranges::any_of(said, [&](const std::string& word) {
            return std::ranges::any_of(longer_words_,
                                       [&](const std::string& start) { return word.starts_with(start); });
        });
    }

    void add_tasks() {
        TemplateData::Items daily;
        TemplateData::Items longer;
        TemplateData::Items methods;
        for (std::size_t at = 0; at < home_.profile.care_tasks.size(); ++at) {
            const CareTask& task = home_.profile.care_tasks[at];
            TemplateData::Object entry = *profile_.at("care_tasks").items()->at(at).object();
            if (task.method) methods.emplace_back(entry);
            if (task.interval) {
                add_dated("is_task", std::move(entry), task.last_done, task.interval);
                continue;
            }
            (task.how_often && speaks_of_longer(*task.how_often) ? longer : daily).emplace_back(std::move(entry));
        }
        data_["daily"] = std::move(daily);
        data_["longer"] = std::move(longer);
        data_["methods"] = std::move(methods);
    }

    void add_dated(const char* kind, TemplateData::Object entry, const Field<Date>& last,
                   const Field<Interval>& interval) {
        std::optional<Date> due;
        if (last && interval) due = calc::next_due_date(*last, *interval);
        DatedTask task = dated(kind, std::move(entry), due);
        if (last) task.data["last_done"] = words_value("last-done", printer_.date(*last, UnitForm::brief));
        if (interval) {
            task.interval = *interval;
            task.data["every"] = printer_.print(interval, {.key = "interval", .on = kCare}, "calc.interval");
        }
        dated_.push_back(std::move(task));
    }

    DatedTask dated(const char* kind, TemplateData::Object entry, std::optional<Date> due) const {
        for (const char* name : {"is_task", "is_tube", "is_service", "is_retest", "is_registration"})
            entry[name] = std::string_view{name} == kind;
        entry["due"] = entry["since"] = TemplateData{};
        if (due) {
            entry["due"] = words_value("next-due", day_of_week_and_date(*due, printer_));
            if (*due < home_.on) entry["since"] = words_value("overdue-since", day_of_week_and_date(*due, printer_));
        }
        // What comes once, and the tube, may not slip; a test of the alarms may be a day late.
        entry["once"] = std::string_view{kind} != "is_task";
        entry["fixed"] = std::string_view{kind} != "is_task" && std::string_view{kind} != "is_tube";
        for (const char* name : {"task", "who", "every", "last_done", "what"}) entry.try_emplace(name);
        return {std::move(entry), due, std::nullopt};
    }

    void add_tube() {
        const NeckTube* tube = home_.neck_tube;
        if (tube == nullptr || !tube->change_interval) return;
        TemplateData::Object entry;
        add_dated("is_tube", std::move(entry), tube->last_changed, tube->change_interval);
    }

    void add_once(const char* kind, const Field<std::string>& what, std::optional<Date> due) {
        if (!due) return;
        TemplateData::Object entry;
        if (what) entry["what"] = words_value("what", kept_together(*what));
        dated_.push_back(dated(kind, std::move(entry), due));
    }

    void add_services() {
        for (const Device& device : home_.profile.devices)
            if (device.service_due) add_once("is_service", device.label, *device.service_due);
    }

    void add_retests() {
        for (const BatteryFacts& facts : home_.outage.batteries)
            if (facts.lowered) add_once("is_retest", facts.battery->label, facts.retest_by);
    }

    void add_registration() {
        const UtilityCompany& company = *home_.profile.utility_company;
        if (home_.profile.utility_company.given() && company.registered_until)
            add_once("is_registration", {}, *company.registered_until);
    }

    /// The days in a stretch on which a task is to be done. One that is late is to be done today, and counts from
    /// there.
    static std::vector<Date> days_of(const DatedTask& task, Date on, Date last) {
        std::vector<Date> days;
        if (!task.due) return days;
        for (Date day = std::max(*task.due, on); day <= last;) {
            days.push_back(day);
            const auto next = task.interval ? calc::next_due_date(day, *task.interval) : std::nullopt;
            if (!next) break;
            day = *next;
        }
        return days;
    }

    /// Whole weeks from that of the print date until a month later.
    void add_month() {
        const Date first = home_.on.plus_days(-weekday_of(home_.on));
        const Date month_later = home_.on.plus_months(1).plus_days(-1);
        const int days = days_between(first, month_later) / kDaysOfWeek * kDaysOfWeek + kDaysOfWeek;
        const Date last = first.plus_days(days - 1);
        std::vector<TemplateData::Items> tasks(static_cast<std::size_t>(days));
        for (const DatedTask& task : dated_)
            for (const Date day : days_of(task, home_.on, last))
                tasks[static_cast<std::size_t>(days_between(first, day))].emplace_back(task.data);
        TemplateData::Items weeks;
        for (int week = 0; week < days; week += kDaysOfWeek) {
            TemplateData::Items in_week;
            for (int at = week; at < week + kDaysOfWeek; ++at) {
                const Date day = first.plus_days(at);
                const bool names_month = at == 0 || day.day() == 1;
                TemplateData::Object cell;
                cell["day"] =
                    words_value("day", names_month ? day_and_month(day, printer_) : fmt::format("{}", day.day()));
                cell["tasks"] = std::move(tasks[static_cast<std::size_t>(at)]);
                in_week.emplace_back(std::move(cell));
            }
            TemplateData::Object row;
            row["days"] = std::move(in_week);
            weeks.emplace_back(std::move(row));
        }
        data_["weeks"] = std::move(weeks);
        data_["month_from"] = words_value("month-from", printer_.date(first));
        data_["month_to"] = words_value("month-to", printer_.date(last));
        TemplateData::Object weekdays;
        constexpr std::array<const char*, 7> kNames{"monday", "tuesday",  "wednesday", "thursday",
                                                    "friday", "saturday", "sunday"};
        for (int at = 0; at < kDaysOfWeek; ++at)
            weekdays[kNames[static_cast<std::size_t>(at)]] =
                words_value("weekday", weekday(at, printer_, UnitForm::brief));
        data_["weekday"] = std::move(weekdays);
    }

    const TemplateData::Object& profile_;
    const Household& home_;
    const Printer& printer_;
    std::set<std::string> longer_words_;
    std::vector<DatedTask> dated_;
    TemplateData::Object data_;
};

}  // namespace

TemplateData care_data(const TemplateData::Object& profile, const Household& home, const Printer& printer) {
    return CareData{profile, home, printer}.made();
}

}  // namespace ventfolio
