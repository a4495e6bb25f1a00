#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <map>

#include "caseload/outage_report.hpp"
#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr const char* kOn = "--on 2026-02-03";

/// The lines of a list of comma-separated values, each by the names of its columns, as Python's own reader finds them.
std::vector<std::map<std::string, std::string>> records(const Scratch& folder, const std::string& csv) {
    folder.save("list.csv", csv);
    const Ran ran = folder.run(
        "/usr/bin/python3 -c \"import csv\n"
        "for row in csv.DictReader(open('list.csv', newline=''), strict=True):\n"
        "    print('|'.join(key + '=' + value for key, value in row.items()))\"");
    REQUIRE_MESSAGE(ran.err == "", ran.err);
    std::vector<std::map<std::string, std::string>> all;
    for (const std::string& line : split(ran.out, '\n')) {
        if (line.empty()) continue;
        auto& record = all.emplace_back();
        for (const std::string& cell : split(line, '|')) {
            const auto equals = cell.find('=');
            record[cell.substr(0, equals)] = cell.substr(equals + 1);
        }
    }
    return all;
}

std::string without_blanks(std::string text) {
    text = with_replaced(std::move(text), std::string{kNoBreakSpace}, "");
    std::erase_if(text, [](char letter) { return letter == ' ' || letter == '\n'; });
    return text;
}

/// A demo home in the folder of the test, one line of it changed by sed.
void save_home(const Scratch& folder, const char* home, const std::string& name, const std::string& edit) {
    REQUIRE(folder.run(fmt::format("sed '{}' '{}' > '{}'", edit, profile_path(home), name)).status == 0);
}

}  // namespace

TEST_CASE("the list has the hours that the printed outage plan of each demo home shows") {
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"}) {
        CAPTURE(std::string{home});
        const Scratch folder;
        const std::string profile = profile_path(home);
        REQUIRE(ventfolio_in(folder, fmt::format("print '{}' {} --sheet outage-plan -o papers", profile, kOn)).status ==
                0);
        const std::string paper = without_blanks(folder.run("pdftotext papers/outage-plan.pdf -").out);
        const Ran ran = ventfolio_in(folder, fmt::format("outage '{}' {} --hours 8 --format csv", profile, kOn));
        CHECK(ran.status == 0);
        const auto record = records(folder, ran.out).at(0);
        for (const char* column : {"minutes_left", "power_minutes", "leave_by_minutes"}) {
            const std::string time = hours_and_minutes(std::stoll(record.at(column)));
            CHECK_MESSAGE(holds(paper, without_blanks(time)), time);
        }
        const std::string leave = hours_and_minutes(std::stoll(record.at("leave_by_minutes")));
        CHECK(holds(paper, without_blanks("Leave by " + leave)));
    }
}

TEST_CASE("a profile that cannot be read or is refused stands at the head, is named, and does not stop the rest") {
    struct Row {
        std::string profiles;
        int status;
        std::string order;
        std::string told;
    };
    const std::string good = fmt::format("'{}' '{}'", profile_path("adult-tracheostomy"), profile_path("adult-mask"));
    const std::string fault = fmt::format("'{}/tests/faults/misspelt-key.yaml'", VENTFOLIO_SOURCE_DIR);
    const Row rows[] = {
        {good, 0, "DEMO-3 DEMO-1 ", ""},
        {good + " " + fault, 1, "FAULT-1 DEMO-3 DEMO-1 ", "misspelt-key.yaml: refused: 1 refuse"},
        {good + " not-there.yaml", 3, " DEMO-3 DEMO-1 ", "not-there.yaml: cannot be read"},
        {fault + " not-there.yaml " + good, 3, " FAULT-1 DEMO-3 DEMO-1 ", "not-there.yaml: cannot be read"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.profiles);
        const Scratch folder;
        const Ran ran = ventfolio_in(folder, fmt::format("outage {} {} --hours 8 --format csv", row.profiles, kOn));
        CHECK(ran.status == row.status);
        CHECK(holds(ran.err, row.told));
        CHECK(ran.err.empty() == row.told.empty());
        std::string order;
        for (const auto& record : records(folder, ran.out)) order += record.at("record_number") + " ";
        CHECK(order == row.order);
        const Ran paper =
            ventfolio_in(folder, fmt::format("outage {} {} --hours 8 --paper -o list.pdf", row.profiles, kOn));
        CHECK(paper.status == row.status);
        const std::string text = folder.run("pdftotext -raw list.pdf -").out;
        CHECK(holds(text, "DEMO-3"));
        CHECK(holds(text, "not-there.yaml") == holds(row.profiles, "not-there.yaml"));
    }
}

TEST_CASE("a refused profile is on the list with its phone number") {
    const Scratch folder;
    save_home(folder, "adult-tracheostomy", "home.yaml", "s/tested_time: 220 min/tested_time: 220/");
    const Ran ran = ventfolio_in(folder, fmt::format("outage home.yaml {} --hours 8 --format csv", kOn));
    CHECK(ran.status == 1);
    const auto record = records(folder, ran.out).at(0);
    CHECK(record.at("standing") == "not judged");
    CHECK(record.at("leave_by_minutes") == "now");
    CHECK(record.at("phone") == "555-0156");  // family in profiles/adult-tracheostomy.yaml
}

TEST_CASE("with a start, the list says by the clock when to leave") {
    const Scratch folder;
    const Ran ran =
        ventfolio_in(folder, fmt::format("outage '{}' {} --hours 8 --starting '2026-02-03 22:30' --format csv",
                                         profile_path("adult-tracheostomy"), kOn));
    CHECK(ran.status == 0);
    CHECK(records(folder, ran.out).at(0).at("leave_at") == "2026-02-04 07:45");  // 9 h 15 min later, by hand
}

TEST_CASE("the options of outage and due are refused where they make no sense") {
    const Scratch folder;
    const std::string home = profile_path("adult-mask");
    for (const char* words :
         {"outage '{}'", "outage '{}' --hours 0", "outage '{}' --hours many",
          "outage '{}' --hours 8 --starting '2026-02-30 22:30'", "outage '{}' --hours 8 --format json",
          "outage --hours 8", "due '{}' --within -1", "due '{}' --format pdf", "due"}) {
        CAPTURE(std::string{words});
        CHECK(ventfolio_in(folder, fmt::format(fmt::runtime(words), home)).status == 2);
    }
}

TEST_CASE("due lists what its days ask for, and writes it as text, values and a calendar") {
    const Scratch folder;
    const std::string words = fmt::format("due '{}' {}", profile_path("adult-tracheostomy"), kOn);
    CHECK(ventfolio_in(folder, words + " --within 0").out == "Nothing is due.\n");
    const Ran text = ventfolio_in(folder, words + " --within 1");
    CHECK(text.status == 0);
    CHECK(text.out == "Coming\n  2026-02-04  DEMO-1  care task  Test the alarms\n");
    const auto all = records(folder, ventfolio_in(folder, words + " --within 1 --format csv").out);
    REQUIRE(all.size() == 1);
    CHECK(all[0].at("due") == "2026-02-04");
    CHECK(all[0].at("kind") == "care-task");
    const Ran calendar = ventfolio_in(folder, words + " --within 1 --format ics -o due.ics");
    CHECK(calendar.status == 0);
    CHECK(calendar.out == "");
    CHECK(std::filesystem::status(folder.path("due.ics")).permissions() ==
          (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
    CHECK(holds(contents(folder.path("due.ics")), "DTSTART;VALUE=DATE:20260204\r\n"));
    const Ran none = ventfolio_in(folder, words + " --within 0 --format ics -o none.ics");
    CHECK(none.status == 0);
    CHECK(holds(none.err, "there is no calendar to write"));
    CHECK_FALSE(std::filesystem::exists(folder.path("none.ics")));
}

TEST_CASE("what is due without a day is left out of the calendar aloud") {
    const Scratch folder;
    save_home(folder, "adult-tracheostomy", "home.yaml", "0,/on_hand: 30 days/s//on_hand: 10 days/");
    const Ran text = ventfolio_in(folder, fmt::format("due home.yaml {} --within 1", kOn));
    CHECK(holds(text.out, "DEMO-1  reorder  suction catheter"));
    const Ran calendar = ventfolio_in(folder, fmt::format("due home.yaml {} --within 1 --format ics", kOn));
    CHECK_FALSE(holds(calendar.out, "reorder"));
    CHECK(holds(calendar.err, "1 due now has no day and is not in the calendar"));
}

TEST_CASE("a packet that is behind its profile is due, and one that is not is not") {
    struct Row {
        const char* home;
        const char* edit;
        const char* damage;
        const char* told;
    };
    constexpr Row rows[] = {
        {"adult-tracheostomy", "", "true", ""},
        {"adult-tracheostomy", "s/^# An invented adult/# A note of nobody/", "true", ""},
        {"adult-tracheostomy", "s/rate: 14 breaths/rate: 15 breaths/", "true", "changed since the papers were printed"},
        {"adult-tracheostomy", "s/^  revision: R1/  revision: R1a/", "true", "the papers are R1, the profile is R1a"},
        {"adult-tracheostomy", "", "rm -r packets/DEMO-1", "No such file or directory"},
        {"adult-tracheostomy", "", "rm packets/DEMO-1/SHA256SUMS", "is missing"},
    };
    const Scratch folder;
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edit});
        CAPTURE(std::string{row.damage});
        REQUIRE(folder.run("rm -rf packets && mkdir packets").status == 0);
        REQUIRE(
            ventfolio_in(folder, fmt::format("print '{}' {} -o packets/DEMO-1 --quiet", profile_path(row.home), kOn))
                .status == 0);
        save_home(folder, row.home, "home.yaml", row.edit);
        REQUIRE(folder.run(row.damage).status == 0);
        const Ran ran = ventfolio_in(folder, fmt::format("due home.yaml {} --within 0 --packets packets", kOn));
        CHECK(holds(ran.out, "DEMO-1  packet") == (*row.told != '\0'));
        CHECK_MESSAGE(holds(ran.out, row.told), ran.out << ran.err);
    }
}

TEST_CASE("due goes on behind a profile that cannot be read or is refused, and its status tells") {
    const Scratch folder;
    const std::string good = fmt::format("'{}'", profile_path("adult-tracheostomy"));
    const std::string fault = fmt::format("'{}/tests/faults/misspelt-key.yaml'", VENTFOLIO_SOURCE_DIR);
    for (const auto& [profiles, status] : {std::pair{fault + " " + good, 1}, {"not-there.yaml " + good, 3}}) {
        const Ran ran = ventfolio_in(folder, fmt::format("due {} {} --within 1", profiles, kOn));
        CHECK(ran.status == status);
        CHECK(holds(ran.out, "Test the alarms"));
        CHECK(holds(ran.err, status == 1 ? "misspelt-key.yaml: refused" : "not-there.yaml: cannot be read"));
    }
}
