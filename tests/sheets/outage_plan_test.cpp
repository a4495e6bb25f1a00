#include <algorithm>
#include <random>

#include "home_values.hpp"
#include "packet/documents.hpp"
#include "rules/edited_home.hpp"
#include "rules/outage_plan.hpp"
#include "rules/rule_book.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr const char* kAdult = "adult-tracheostomy";
constexpr const char* kChild = "child-tracheostomy";
constexpr const char* kMask = "adult-mask";

struct Row {
    const char* home;
    const char* edits;
    const char* name;
    const char* expected;
    const char* worked;
};

void check_rows(std::span<const Row> rows) {
    for (const Row& row : rows) {
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.edits});
        CAPTURE(std::string{row.name});
        CAPTURE(std::string{row.worked});
        CHECK(HomeValues(row.home, row.edits).said(row.name) == std::string{row.expected});
    }
}

/// Minutes of "6 h 15 min".
int minutes_of(const std::string& text) {
    int hours = 0;
    int minutes = 0;
    REQUIRE_MESSAGE(std::sscanf(text.c_str(), "%d h %d min", &hours, &minutes) == 2, text);
    return 60 * hours + minutes;
}

}  // namespace

TEST_CASE("the plan's hours agree with examples worked by hand") {
    // Common practice, no source: 80 % of the tested minutes, sources outside, sliding, built in; running total rounded
    // down to a quarter of an hour; leave by = time left - 2 x travel - 120 min.
    const Row rows[] = {
        {kAdult, "", "outage.batteries.0.label", "large pack beside the bed", "the outside one first"},
        {kAdult, "", "outage.batteries.0.to", "6 h 15 min", "480 x 0.8 = 384"},
        {kAdult, "", "outage.batteries.1.label", "Unit A, slide-in", ""},
        {kAdult, "", "outage.batteries.1.from", "6 h 15 min", "384, as the end before it"},
        {kAdult, "", "outage.batteries.1.to", "9 h 0 min", "384 + 210 x 0.8 = 552"},
        {kAdult, "", "outage.batteries.2.to", "12 h 0 min", "552 + 220 x 0.8 = 728, not 11 h 45 min"},
        {kAdult, "", "outage.time_left", "12 h 0 min", "728; the oxygen lasts 840"},
        {kAdult, "", "outage.half", "6 h 0 min", "364"},
        {kAdult, "", "outage.leave_by", "9 h 15 min", "728 - 2 x 25 - 120 = 558"},
        {kAdult, "", "outage.reserve", "2 h 50 min", "2 x 25 + 120"},
        {kAdult, "", "outage.spares.0.time", "5 h 45 min", "(240 + 200) x 0.8 = 352"},
        {kAdult, "", "outage.cylinders", "2", ""},
        {kAdult, "", "outage.cylinders.0.each", "7 h 0 min", "(2000 - 500) x 0.28 / 1 = 420"},
        {kAdult, "", "outage.cylinders.1.to", "14 h 0 min", "840"},
        {kAdult, "power.battery_derating: 100 %", "outage.batteries.2.to", "15 h 0 min", "480 + 210 + 220 = 910"},
        {kAdult, "batteries.0.made_on: 2023-01-01", "outage.batteries.2.to", "11 h 45 min",
         "552 + 220 x 0.7 = 706: over two years old"},
        {kAdult, "remove: batteries.2.tested_time", "outage.batteries.1.to", "5 h 30 min", "168 + 176 = 344"},
        {kAdult, "remove: batteries.2.tested_time", "outage.not_counted", "1", "an untimed battery counts nothing"},
        {kAdult, "oxygen.sources.1.gauge: 500 psi", "outage.leave_now", "yes", "no oxygen above the reserve"},
        {kAdult, "oxygen.sources.1.gauge: 1000 psi", "outage.time_left", "4 h 30 min", "2 x 500 x 0.28 = 280"},
        {kAdult, "oxygen.sources.1.gauge: 1000 psi", "outage.leave_by", "1 h 45 min", "280 - 170 = 110"},
        {kAdult, "oxygen.use: as_needed\noxygen.sources.1.gauge: 1000 psi", "outage.time_left", "12 h 0 min",
         "oxygen that is not ordered for hours does not end the wait"},
        {kAdult, "oxygen.sources.1.reserve: 200 psi", "outage.cylinders.0.each", "8 h 15 min", "1800 x 0.28 = 504"},
        {kAdult, "oxygen.sources.1.number: 8 pieces", "outage.cylinders", "1", "many of a kind are one line"},
        {kAdult, "oxygen.sources.1.number: 8 pieces", "outage.cylinders.0.to", "56 h 0 min", "8 x 420 = 3360"},
        {kAdult, "evacuation.travel_time: 304 min", "outage.leave_now", "yes", "728 - 608 - 120 = 0"},
        {kAdult, "evacuation.travel_time: 300 min", "outage.leave_now", "yes", "8 min: less than a quarter hour"},
        {kAdult, "evacuation.travel_time: 296 min", "outage.leave_by", "0 h 15 min", "728 - 592 - 120 = 16"},
        {kChild, "", "outage.batteries.0.to", "2 h 15 min", "180 x 0.8 = 144: the one that slides in first"},
        {kChild, "", "outage.batteries.1.to", "5 h 30 min", "144 + 240 x 0.8 = 336"},
        {kChild, "", "outage.leave_by", "2 h 45 min", "336 - 2 x 20 - 120 = 176"},
        {kChild, "", "outage.half", "missing", "168 is no earlier on paper than 176"},
        {kChild, "", "outage.cylinders.0.each", "2 h 0 min", "(2015 - 500) x 165 / 2015 / 1 = 124"},
        {kChild, "", "outage.spares", "0", "one machine"},
        {kMask, "", "outage.batteries.1.to", "6 h 30 min", "240 x 0.8 + 260 x 0.8 = 400"},
        {kMask, "", "outage.leave_by", "3 h 30 min", "400 - 2 x 30 - 120 = 220"},
        {kMask, "", "outage.half", "3 h 15 min", "200"},
        {kMask, "", "outage.cylinders", "0", "no oxygen"},
        {kMask, "batteries: none", "outage.leave_now", "yes", "no time is known"},
        {kMask, "batteries: none", "outage.power", "missing", "a time that nobody measured is not printed"},
    };
    check_rows(rows);
}

TEST_CASE("steps stand in the order of the clock, each with its time from the same series") {
    const HomeValues adult{kAdult};
    const char* expected[] = {"6 h 0 min is_half", "6 h 15 min is_swap",    "7 h 0 min is_cylinder",
                              "8 h 0 min is_call", "9 h 0 min is_takeover", "9 h 15 min is_leave",
                              "11 h 0 min is_last"};
    const std::size_t count = adult.at("outage.by_clock").items()->size();
    REQUIRE(count == std::size(expected));
    for (std::size_t at = 0; at < count; ++at) {
        const std::string step = fmt::format("outage.by_clock.{}.", at);
        std::string kinds;
        for (const char* kind : {"is_swap", "is_takeover", "is_cylinder", "is_half", "is_call", "is_leave", "is_last"})
            if (adult.said(step + kind) == "yes") kinds += fmt::format(" {}", kind);
        CHECK(adult.said(step + "after") + kinds == expected[at]);
    }
}

TEST_CASE("no plan promises more than the sum of what was timed, in homes made by chance") {
    std::mt19937 chance{20260203};  // always the same homes
    const auto draw = [&](int from, int to) { return std::uniform_int_distribution{from, to}(chance); };
    int with_leave_by = 0;
    for (int home = 0; home < 120; ++home) {
        std::string edits =
            fmt::format("power.battery_derating: {} %\nevacuation.travel_time: {} min\n", draw(30, 100), draw(0, 400));
        int tested[5];
        for (int at = 0; at < 5; ++at) {
            tested[at] = draw(1, 900);
            edits += fmt::format("batteries.{}.tested_time: {} min\n", at, tested[at]);
        }
        edits += fmt::format("oxygen.sources.1.gauge: {} psi\noxygen.sources.1.number: {} pieces\n", draw(0, 2015),
                             draw(1, 9));
        CAPTURE(edits);
        const HomeValues values{kAdult, edits};
        const OutagePlan plan = outage_plan(values.household());
        long long before = 0;
        long long sum = 0;
        for (const PlannedBattery& one : plan.batteries) {
            CHECK(one.from == before);
            CHECK(one.to >= one.from);
            CHECK(one.to % 15 == 0);
            sum += static_cast<long long>((*one.facts->battery->tested_time).in(unit::min) + 0.5);
            CHECK(one.to <= sum);
            before = one.to;
        }
        REQUIRE(plan.batteries.size() == 3);
        CHECK(sum == tested[0] + tested[1] + tested[2]);
        // One source alone is never promised longer than it was timed, but for the quarter hour that rounding moves.
        for (const PlannedBattery& one : plan.batteries)
            CHECK(one.to - one.from < (*one.facts->battery->tested_time).in(unit::min) + 15);
        REQUIRE(plan.time_left.has_value());
        CHECK(*plan.time_left <= before);
        if (!plan.oxygen.empty()) CHECK(*plan.time_left <= plan.oxygen.back().to);
        for (const auto& mark : {plan.half, plan.call_provider})
            if (mark) CHECK(*mark < *plan.leave_by);
        if (!plan.leave_by) continue;
        ++with_leave_by;
        CHECK(*plan.leave_by > 0);
        CHECK(*plan.leave_by % 15 == 0);
        CHECK(static_cast<double>(*plan.leave_by) <
              static_cast<double>(*plan.time_left + 15) - values.household().outage.leave_reserve->in(unit::min));
    }
    CHECK(with_leave_by > 20);
    CHECK(with_leave_by < 110);
}

TEST_CASE("hours of the clock run over midnight and over the end of a month") {
    struct Clock {
        const char* start;
        const char* name;
        const char* expected;
    };
    const Clock rows[] = {
        {"2026-02-03 22:30", "outage.leave_at", "Wed 7:45 AM"},   // + 9 h 15 min
        {"2026-02-03 14:45", "outage.leave_at", "Wed midnight"},  // the day that begins
        {"2026-02-28 20:00", "outage.leave_at", "Sun 5:15 AM"},
        {"2026-02-03 02:45", "outage.leave_at", "Tue noon"},
        {"2026-02-03 22:30", "outage.started", "Tue 3 Feb 2026, 10:30 PM"},
    };
    for (const Clock& row : rows) {
        CAPTURE(std::string{row.start});
        CHECK(HomeValues(kAdult, {}, demo_day(), Moment::parse(row.start)).said(row.name) == row.expected);
    }
    CHECK(HomeValues(kAdult).said("outage.leave_at") == "missing");
}

TEST_CASE("every step's hour agrees with GNU date") {
    for (const char* start : {"2026-02-03 22:30", "2026-12-31 17:05", "2028-02-28 23:59"}) {
        const HomeValues values{kAdult, {}, demo_day(), Moment::parse(start)};
        const std::size_t count = values.at("outage.by_clock").items()->size();
        REQUIRE(count > 5);
        for (std::size_t at = 0; at < count; ++at) {
            const std::string step = fmt::format("outage.by_clock.{}.", at);
            const std::string later =
                fmt::format("{} UTC + {} minutes", start, minutes_of(values.said(step + "after")));
            CAPTURE(later);
            std::string expected = oracle::printed_by("LC_ALL=C date --utc --date '" + later + "' '+%a %-I:%M %p'");
            for (const auto& [from, to] : {std::pair{"12:00 AM", "midnight"}, std::pair{"12:00 PM", "noon"}})
                if (const auto found = expected.find(from); found != std::string::npos) expected.replace(found, 8, to);
            if (const auto whole = expected.find(":00"); whole != std::string::npos) expected.erase(whole, 3);
            CHECK(values.said(step + "clock") == expected);
        }
    }
}

namespace {

/// The bold words of a sheet.
std::string bold_words(const std::vector<Block>& blocks) {
    std::string text;
    const auto add = [&](const Inlines& inlines) {
        for (const Inline& piece : inlines)
            if (piece.strong) text += plain_text({piece}) + " ";
    };
    for (const Block& block : blocks) {
        add(block.inlines);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) add(cell.inlines);
        text += bold_words(block.children);
    }
    return text;
}

std::string bold_words_with_gap(const std::string& sheet, const std::vector<Finding>& findings) {
    const Profile profile = read_profile(demo_profile(kAdult)).profile;
    const Household household{profile, demo_day()};
    std::vector<Finding> faults;
    const std::vector<Document> documents = make_documents(household, findings, stationery(), {sheet}, faults);
    REQUIRE(documents.size() == 1);
    return bold_words(documents.front().blocks);
}

}  // namespace

TEST_CASE("each gap that a rule puts on these sheets stands there in bold") {
    int gaps = 0;
    for (const std::string sheet : {"outage-plan", "supplies"}) {
        const std::string without = bold_words_with_gap(sheet, {});
        for (const RuleText& rule : rule_book()) {
            if (std::ranges::find(rule.bold_on, sheet) == rule.bold_on.end()) continue;
            CAPTURE(sheet);
            CAPTURE(std::string{rule.name});
            Finding finding;
            finding.rule = rule.name;
            CHECK(bold_words_with_gap(sheet, {finding}).size() > without.size() + 10);
            ++gaps;
        }
    }
    CHECK(gaps >= 11);
}
