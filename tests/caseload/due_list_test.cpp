#include "caseload/due_list.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "caseload/due_report.hpp"
#include "sheets/home_values.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// "2026-12-15 battery-test Unit A, built in", or "now …", all of a home.
std::vector<std::string> dues_in(const char* home, const char* edits = "") {
    const HomeValues values{home, edits};
    std::vector<std::string> lines;
    for (const Due& due : dues_of(values.household()))
        lines.push_back(fmt::format("{} {} {}", due.by ? due.by->iso() : "now", name_of(due.kind), due.what));
    return lines;
}

bool holds(const std::vector<std::string>& lines, const std::string& line) {
    return std::ranges::find(lines, line) != lines.end();
}

/// A day so many months later, by python3-dateutil.
std::string months_after(const char* day, int months) {
    return oracle::printed_by(
        fmt::format("/usr/bin/python3 -c 'from datetime import date\nfrom dateutil.relativedelta import relativedelta\n"
                    "print(date.fromisoformat(\"{}\") + relativedelta(months={}))' 2>&1",
                    day, months));
}

Due made(const char* record, DueKind kind, std::optional<Date> by) {
    Due due;
    due.record_number = record;
    due.kind = kind;
    due.by = by;
    return due;
}

}  // namespace

TEST_CASE("a thing is due so many months after it was done, as an independent calendar counts") {
    struct Row {
        const char* path;
        const char* done;
        int months;
        const char* expected;  // kind and thing
        const char* source;
    };
    // All intervals but those of the profile: common practice, no source.
    constexpr Row rows[] = {
        {"batteries.0.tested_on", "2025-12-15", 12, "battery-test Unit A, built in", "threshold"},
        {"batteries.0.tested_on", "2024-02-29", 12, "battery-test Unit A, built in", "threshold, end of February"},
        {"caregivers.0.last_signed_off", "2025-11-18", 12, "sign-off caregiver 1", "threshold"},
        {"remote_alarm.tested_on", "2025-12-15", 12, "remote-alarm-test the second alarm", "threshold"},
        {"consent.utility_letter.date", "2026-01-09", 12, "permission letter to the power company", "a year"},
        {"consent.fire_letter.date", "2026-01-09", 12, "permission letter to the fire and ambulance service", "a year"},
        {"care_tasks.11.last_done", "2025-08-31", 6, "care-task Settings visit by the therapist", "interval: 6 months"},
        {"care_tasks.13.last_done", "2026-01-10", 6, "care-task Check go-bag and phone list in full", "interval"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.path});
        CAPTURE(std::string{row.source});
        const auto lines = dues_in("adult-tracheostomy", fmt::format("{}: {}", row.path, row.done).c_str());
        const std::string expected = fmt::format("{} {}", months_after(row.done, row.months), row.expected);
        CHECK_MESSAGE(holds(lines, expected), fmt::format("{}", fmt::join(lines, "\n")));
    }
}

TEST_CASE("what has a day in the profile is due on that day") {
    struct Row {
        const char* edits;
        const char* expected;
    };
    constexpr Row rows[] = {
        {"", "2026-07-12 review the order"},
        {"orders.follow_up_due: 2026-03-30", "2026-03-30 follow-up after the change"},
        {"", "2027-01-09 registration the priority list of the power company"},
        {"", "2027-01-09 certificate the need, for the power company"},
        {"", "2026-11-20 service Unit A"},
        {"", "2026-10-05 service Unit B"},
        {"", "2026-11-30 resuscitation-card caregiver 1"},
        {"", "2026-02-25 tube-change the neck tube"},  // 2026-01-26 and 30 days: GNU date
        {"", "2026-02-04 care-task Test the alarms"},  // 2026-01-28 and a week
        {"", "2028-06-30 expiry spare tube, same size"},
        {"", "2028-01-31 expiry suction catheter"},
        {"", "2028-01-31 expiry suction catheter 12 Fr, go-bag"},
    };
    for (const Row& row : rows) {
        const auto lines = dues_in("adult-tracheostomy", row.edits);
        CHECK_MESSAGE(holds(lines, row.expected), row.expected);
    }
}

TEST_CASE("what has no day to count from is due now, and is not lost") {
    struct Row {
        const char* edits;
        const char* expected;
    };
    constexpr Row rows[] = {
        {"remove: batteries.0.tested_on\nremove: batteries.0.tested_time",
         "now battery-test Unit A, built in, never timed"},
        {"remove: airway.neck_tube.last_changed", "now tube-change the neck tube, never recorded"},
        {"remove: care_tasks.9.last_done", "now care-task Test the alarms, never recorded"},
        {"supplies.0.on_hand: 14 days", "now reorder suction catheter"},
    };
    const auto before = dues_in("adult-tracheostomy");
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        CHECK_FALSE(holds(before, row.expected));
        CHECK(holds(dues_in("adult-tracheostomy", row.edits), row.expected));
    }
    CHECK_FALSE(holds(dues_in("adult-tracheostomy", "supplies.0.on_hand: 15 days"), "now reorder suction catheter"));
}

TEST_CASE("daily care and what the device's instructions ask of caregivers is not the clinic's to call about") {
    for (const char* home : kAllHomes)
        for (const std::string& line : dues_in(home)) {
            CAPTURE(line);
            CHECK(line.find("Mouth care") == std::string::npos);
            CHECK(line.find("Change the hose filters") == std::string::npos);
        }
    const auto daily = dues_in("adult-tracheostomy", "care_tasks.9.interval: 1 day");
    CHECK_FALSE(holds(daily, "2026-01-29 care-task Test the alarms"));
    const auto second = dues_in("adult-tracheostomy", "care_tasks.9.interval: 2 days");
    CHECK(holds(second, "2026-01-30 care-task Test the alarms"));
}

TEST_CASE("the list ends with its last day, and begins with what has none") {
    const Date first = *Date::parse("2026-02-01");
    std::vector<Due> dues{made("B", DueKind::service, first.plus_days(11)), made("C", DueKind::service, first),
                          made("B", DueKind::review, first.plus_days(10)), made("A", DueKind::service, first),
                          made("D", DueKind::reorder, std::nullopt)};
    keep_due_by(dues, first.plus_days(10));
    std::string order;
    for (const Due& due : dues) order += due.record_number;
    CHECK(order == "DACB");
}

TEST_CASE("what is overdue stands before what comes, with its days") {
    const Date on = *Date::parse("2026-02-03");
    std::vector<Due> dues{made("A", DueKind::service, on.plus_days(1)), made("B", DueKind::service, on),
                          made("C", DueKind::service, on.plus_days(-1)), made("D", DueKind::reorder, std::nullopt)};
    keep_due_by(dues, on.plus_days(30));
    CHECK(due_text(dues, on, false) ==
          "Overdue, or due now\n  now                D  reorder\n  2026-02-02  1 day  C  service\n\n"
          "Coming\n  2026-02-03  B  service\n  2026-02-04  A  service\n");
    CHECK(due_csv(dues, on, false) ==
          "record_number,kind,due,days_overdue,what\r\nD,reorder,now,,\r\nC,service,2026-02-02,1,\r\n"
          "B,service,2026-02-03,,\r\nA,service,2026-02-04,,\r\n");
    CHECK(due_text({}, on, false) == "Nothing is due.\n");
}

TEST_CASE("a caregiver has a number, and a name only where names are asked for") {
    const HomeValues values{"adult-tracheostomy"};
    std::vector<Due> dues = dues_of(values.household());
    keep_due_by(dues, *Date::parse("2027-12-31"));
    for (const bool names : {false, true})
        for (const std::string& text : {due_text(dues, demo_day(), names), due_csv(dues, demo_day(), names)})
            for (const char* name : {"Ferncastle", "Colm"}) CHECK((text.find(name) != std::string::npos) == names);
}
