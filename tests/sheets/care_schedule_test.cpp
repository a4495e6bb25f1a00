#include <algorithm>
#include <random>

#include "home_values.hpp"
#include "packet/documents.hpp"
#include "record/sheet_code.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr const char* kAdult = "adult-tracheostomy";
constexpr const char* kChild = "child-tracheostomy";

Date day(const char* iso) { return *Date::parse(iso); }

std::string code_of(const char* home, const char* sheet, Date on) {
    const Profile profile = read_profile(demo_profile(home)).profile;
    const Household household{profile, on};
    std::vector<Finding> faults;
    const std::vector<Document> documents = make_documents(household, {}, stationery(), {sheet}, faults);
    REQUIRE(documents.size() == 1);
    return sheet_code(documents.front());
}

/// What the calendar says, task by task: "2026-02-04 Test the alarms".
std::vector<std::string> entries(const HomeValues& values, Date first) {
    std::vector<std::string> all;
    const auto& weeks = *values.at("care.weeks").items();
    for (std::size_t week = 0; week < weeks.size(); ++week) {
        for (std::size_t at = 0; at < 7; ++at) {
            const std::string cell = fmt::format("care.weeks.{}.days.{}.", week, at);
            const auto& tasks = *values.at(cell + "tasks").items();
            for (std::size_t task = 0; task < tasks.size(); ++task) {
                const std::string entry = fmt::format("{}tasks.{}.", cell, task);
                const std::string what = values.said(entry + "is_task") == "yes"   ? values.said(entry + "task")
                                         : values.said(entry + "is_tube") == "yes" ? "tube"
                                                                                   : values.said(entry + "what");
                all.push_back(first.plus_days(static_cast<int>(7 * week + at)).iso() + " " + what);
            }
        }
    }
    return all;
}

bool holds(const std::vector<std::string>& all, const std::string& one) {
    return std::ranges::find(all, one) != all.end();
}

/// The due date of the dated task whose words begin so.
std::string due(const HomeValues& values, const std::string& task) {
    const auto& dated = *values.at("care.dated").items();
    for (std::size_t at = 0; at < dated.size(); ++at) {
        const std::string entry = fmt::format("care.dated.{}.", at);
        if (values.said(entry + "is_task") == "yes" && values.said(entry + "task").starts_with(task))
            return values.said(entry + "due");
        if (task == "tube" && values.said(entry + "is_tube") == "yes") return values.said(entry + "due");
    }
    return "not there";
}

}  // namespace

TEST_CASE("due dates are last done plus interval, whatever the print date") {
    struct Row {
        const char* home;
        const char* edits;
        const char* task;
        const char* due;
        const char* source;
    };
    const Row rows[] = {
        {kAdult, "", "Test the alarms", "Wed 4 Feb 2026", "2026-01-28 + 7 days"},
        {kAdult, "", "Change the hose sets", "Wed 11 Feb 2026", "2026-01-11 + 1 month"},
        {kAdult, "", "Settings visit", "Sun 12 Jul 2026", "2026-01-12 + 6 months"},
        {kAdult, "", "tube", "Wed 25 Feb 2026", "2026-01-26 + 30 days"},
        {kChild, "", "tube", "Fri 6 Feb 2026", "2026-01-30 + 7 days"},
        {kAdult, "care_tasks.10.last_done: 2026-01-31", "Change the hose sets", "Sat 28 Feb 2026",
         "the last of a month that lacks the day"},
        {kAdult, "remove: care_tasks.10.last_done", "Change the hose sets", "missing", "never done: no date"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.source});
        for (const char* on : {"2026-02-03", "2026-01-30", "2026-08-01"})
            CHECK(due(HomeValues(row.home, row.edits, day(on)), row.task) == row.due);
    }
}

TEST_CASE("what is late says since when, and only what is late") {
    const HomeValues in_time{kAdult, {}, day("2026-02-03")};
    CHECK(in_time.said("care.overdue") == "0");
    // Due on the day itself is in time.
    CHECK(HomeValues(kAdult, {}, day("2026-02-04")).said("care.overdue") == "0");
    const HomeValues late{kAdult, {}, day("2026-02-05")};
    REQUIRE(late.said("care.overdue") == "1");
    CHECK(late.said("care.overdue.0.task") == "Test the alarms");
    CHECK(late.said("care.overdue.0.since") == "Wed 4 Feb 2026");
}

TEST_CASE("the month has whole weeks from Monday, and shows no task on a day that has passed") {
    // Days and weekdays of GNU date.
    std::mt19937 chance{7};
    for (int round = 0; round < 25; ++round) {
        const Date on = day("2026-01-01").plus_days(static_cast<int>(chance() % 900));
        CAPTURE(on.iso());
        const HomeValues values{kAdult, {}, on};
        const int past_monday = std::stoi(oracle::printed_by("date --utc --date '" + on.iso() + "' +%u")) - 1;
        const Date first = day(oracle::gnu_date(fmt::format("{} -{} days", on.iso(), past_monday)).c_str());
        const auto& weeks = *values.at("care.weeks").items();
        REQUIRE(weeks.size() >= 4);
        REQUIRE(weeks.size() <= 6);
        const Date last = first.plus_days(static_cast<int>(7 * weeks.size()) - 1);
        CHECK(last >= day(oracle::gnu_date(on.iso() + " +27 days").c_str()));
        for (std::size_t at = 0; at < 7 * weeks.size(); ++at) {
            const std::string shown = values.said(fmt::format("care.weeks.{}.days.{}.day", at / 7, at % 7));
            const Date date = first.plus_days(static_cast<int>(at));
            CHECK(shown.substr(0, shown.find(' ')) == std::to_string(date.day()));
        }
        for (const std::string& entry : entries(values, first)) CHECK(entry.substr(0, 10) >= on.iso());
    }
}

TEST_CASE("a weekly task stands in the month each week, a late one today") {
    const HomeValues values{kAdult, {}, day("2026-02-03")};
    const std::vector<std::string> all = entries(values, day("2026-02-02"));
    for (const char* entry : {"2026-02-04 Test the alarms", "2026-02-11 Test the alarms", "2026-02-18 Test the alarms",
                              "2026-02-25 Test the alarms", "2026-03-04 Test the alarms", "2026-02-25 tube",
                              "2026-02-11 Change the hose sets"})
        CHECK_MESSAGE(holds(all, entry), std::string{entry});
    CHECK_FALSE(holds(all, "2026-02-03 Test the alarms"));
    const std::vector<std::string> late = entries(HomeValues(kAdult, {}, day("2026-02-06")), day("2026-02-02"));
    CHECK(holds(late, "2026-02-06 Test the alarms"));
    CHECK(holds(late, "2026-02-13 Test the alarms"));
    CHECK_FALSE(holds(late, "2026-02-04 Test the alarms"));
}

TEST_CASE("the code of the care schedule does not change with the day of printing, and does with a date") {
    // The month and what is late change daily; they are left out of the code.
    CHECK(code_of(kAdult, "care-schedule", day("2026-02-03")) == code_of(kAdult, "care-schedule", day("2026-02-20")));
    const HomeValues one{kAdult, {}, day("2026-02-03")};
    const HomeValues other{kAdult, {}, day("2026-02-20")};
    CHECK(one.said("care.month_from") != other.said("care.month_from"));
    const Profile profile = read_profile(edited_profile(kAdult, "care_tasks.9.last_done: 2026-01-29")).profile;
    const Household household{profile, day("2026-02-03")};
    std::vector<Finding> faults;
    const auto changed = make_documents(household, {}, stationery(), {"care-schedule"}, faults);
    REQUIRE(changed.size() == 1);
    CHECK(sheet_code(changed.front()) != code_of(kAdult, "care-schedule", day("2026-02-03")));
}

TEST_CASE("tasks by words are sorted into every day and longer") {
    const HomeValues values{
        kAdult, "remove: care_tasks.9.interval\nremove: care_tasks.9.last_done\ncare_tasks.9.how_often: weekly"};
    CHECK(values.said("care.longer") == "1");
    CHECK(values.said("care.longer.0.task") == "Test the alarms");
    CHECK(values.said("care.daily.0.how_often") == "every shift");
}

TEST_CASE("quantities for the stock are rounded up") {
    struct Row {
        const char* name;
        const char* expected;
        const char* worked;
    };
    const Row rows[] = {
        {"stock.items.0.needed", "140", "300 a month of 30 days, 14 days"},
        {"stock.items.1.needed", "28", "60 / 30 x 14"},
        {"stock.items.2.needed", "17", "35 / 30 x 14 = 16.3"},
        {"stock.items.3.needed", "1", "2 / 30 x 14 = 0.93"},
        {"stock.by_interval.0.needed", "2", "tube every 30 days: 1 in 14 days, a tenth more is 2 whole ones"},
    };
    const HomeValues values{kAdult};
    for (const Row& row : rows) {
        CAPTURE(std::string{row.worked});
        CHECK(values.said(row.name) == row.expected);
    }
}
