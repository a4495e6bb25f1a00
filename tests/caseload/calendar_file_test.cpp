#include "caseload/calendar_file.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <set>

#include "pdf/programs.hpp"
#include "sheets/home_values.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::vector<Due> dues_until(const char* home, const char* last) {
    const HomeValues values{home};
    std::vector<Due> dues = dues_of(values.household());
    keep_due_by(dues, *Date::parse(last));
    return dues;
}

/// What python3-icalendar of Debian reads: a line for each event, its fields with | between.
trial::Ran read_back(const std::string& calendar) {
    const trial::Scratch folder;
    folder.save("due.ics", calendar);
    folder.save(
        "read.py",
        "import icalendar\n"
        "calendar = icalendar.Calendar.from_ical(open('due.ics', 'rb').read())\n"
        "assert calendar['VERSION'] == '2.0' and calendar['PRODID']\n"
        "for event in calendar.walk('VEVENT'):\n"
        "    assert not event.errors, event.errors\n"
        "    text = str(event.get('DESCRIPTION', '')).replace('\\n', '/')\n"
        "    print(event['UID'], event['DTSTART'].dt, event['DTSTAMP'].dt.isoformat(), event['SUMMARY'], text,\n"
        "          sep='|')\n");
    return folder.run("/usr/bin/python3 read.py");
}

Due made(const char* what, const char* named, const char* by) {
    Due due;
    due.record_number = "DEMO-9";
    due.person = "Ana; \"Ani\", Ruiz";
    due.kind = DueKind::battery_test;
    due.what = what;
    due.named = named;
    due.by = Date::parse(by);
    return due;
}

}  // namespace

TEST_CASE("a line of more than 75 octets is folded, and no letter is broken") {
    // RFC 5545, 3.1: "Lines of text SHOULD NOT be longer than 75 octets, excluding the line break"; a long line is
    // split with CRLF and one blank; the text is whole again when each CRLF and blank is taken out.
    for (std::size_t length = 0; length < 320; ++length)
        for (const char* letter : {"x", "é", "€", "𝄞"}) {
            std::string line(length % 4, 'a');
            for (std::size_t at = 0; at < length; ++at) line += letter;
            const std::string folded = folded_line(line);
            REQUIRE(folded.ends_with("\r\n"));
            CHECK(with_replaced(folded, "\r\n ", "") == line + "\r\n");
            const std::vector<std::string> parts = split(folded.substr(0, folded.size() - 2), '\n');
            for (std::size_t at = 0; at < parts.size(); ++at) {
                const std::size_t octets = parts[at].size() - (at + 1 < parts.size() ? 1 : 0);
                CHECK(octets <= 75);
                CHECK_FALSE(first_invalid_utf8(parts[at]));
                if (at > 0) CHECK(parts[at].starts_with(' '));
            }
            if (line.size() <= 75) CHECK(parts.size() == 1);
        }
}

TEST_CASE("a text is escaped as RFC 5545 says") {
    struct Row {
        const char* given;
        const char* expected;  // RFC 5545, 3.3.11: ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n")
    };
    constexpr Row rows[] = {
        {"Unit A, built in", "Unit A\\, built in"},
        {"a; b", "a\\; b"},
        {"a\\b", "a\\\\b"},
        {"one\ntwo", "one\\ntwo"},
        {"one\r\ntwo", "one\\ntwo"},
        {"8:30 \"now\"", "8:30 \"now\""},
    };
    for (const Row& row : rows) CHECK(calendar_text(row.given) == row.expected);
}

TEST_CASE("a reader of another make finds the events of the demo home") {
    const std::string calendar = calendar_file(dues_until("adult-tracheostomy", "2026-03-05"), demo_day(), false);
    const trial::Ran ran = read_back(calendar);
    CHECK(ran.err == "");
    // Days: 2026-01-28 and a week; 2026-01-26 and 30 days (GNU date).
    CHECK(ran.out ==
          "DEMO-1.care-task.2026-02-04@ventfolio|2026-02-04|2026-02-03T00:00:00+00:00|DEMO-1: care task|\n"
          "DEMO-1.tube-change.2026-02-25@ventfolio|2026-02-25|2026-02-03T00:00:00+00:00|DEMO-1: tube change|\n");
}

TEST_CASE("things of one kind and day are one event, whose UID stays") {
    const std::vector<Due> dues{made("pack, large", "", "2026-12-15"), made("slide-in", "", "2026-12-15"),
                                made("pack; small", "Bo", "2026-12-16")};
    for (const char* on : {"2026-02-03", "2026-12-01"}) {
        const trial::Ran ran = read_back(calendar_file(dues, *Date::parse(on), true));
        CHECK(ran.err == "");
        CHECK(ran.out == fmt::format("DEMO-9.battery-test.2026-12-15@ventfolio|2026-12-15|{0}T00:00:00+00:00|DEMO-9: "
                                     "battery test (2)|Ana; \"Ani\", Ruiz/pack, large/slide-in\n"
                                     "DEMO-9.battery-test.2026-12-16@ventfolio|2026-12-16|{0}T00:00:00+00:00|DEMO-9: "
                                     "battery test|Ana; \"Ani\", Ruiz/pack; small (Bo)\n",
                                     on));
    }
}

TEST_CASE("without names, an event says nothing about a person but the record number") {
    for (const char* home : kAllHomes) {
        const std::vector<Due> dues = dues_until(home, "2030-12-31");
        const std::string calendar = calendar_file(dues, demo_day(), false);
        CHECK(calendar.find("DESCRIPTION") == std::string::npos);
        const std::set<std::string> parts{
            "BEGIN:", "VERSION:", "PRODID:", "UID:", "DTSTAMP:", "DTSTART;", "SUMMARY:", "TRANSP:", "END:"};
        for (const std::string& line : split(calendar, '\n')) {
            if (line.empty()) continue;
            CAPTURE(line);
            CHECK(line.ends_with('\r'));
            CHECK(parts.contains(line.substr(0, line.find_first_of(":;") + 1)));
        }
        CHECK(read_back(calendar).status == 0);
        CHECK(read_back(calendar_file(dues, demo_day(), true)).status == 0);
    }
}

TEST_CASE("where nothing has a day there is no calendar") {
    Due due = made("catheter", "", "2026-02-03");
    due.by.reset();
    CHECK(calendar_file({&due, 1}, demo_day(), false).empty());
}
