#include "record/match_code.hpp"

#include <doctest/doctest.h>

#include "record/history.hpp"

namespace ventfolio {
namespace {

using Answer = CodeMatch::Answer;

RecordedSheet sheet(const char* name, const char* code, const PacketRecord& packet) {
    RecordedSheet one;
    one.name = name;
    one.title = name;
    one.code = code;
    one.revision = packet.revision;
    one.effective = packet.effective;
    one.folder = ".";
    return one;
}

PacketRecord packet(const char* revision, const char* effective) {
    PacketRecord record;
    record.record_number = "DEMO-1";
    record.revision = revision;
    record.effective = effective;
    return record;
}

/// Three revisions of a home: the card changes twice and then back, the plan stays, the switch sheet goes in R3.
struct Home {
    PacketRecord first = packet("R1", "2026-01-12 10:00");
    PacketRecord second = packet("R2", "2026-03-16 14:00");
    PacketRecord third = packet("R3", "2026-05-01 08:00");

    Home() {
        first.sheets = {sheet("card", "AAA-111", first), sheet("plan", "BBB-222", first),
                        sheet("switch", "CCC-333", first)};
        second.sheets = {sheet("card", "DDD-444", second), first.sheets[1], sheet("switch", "EEE-555", second)};
        second.sheets[1].state = RecordedSheet::State::kept;
        take_history(second, first);
        third.sheets = {sheet("card", "FFF-666", third), second.sheets[1], sheet("log", "GGG-777", third)};
        take_history(third, second);
    }
};

Moment at(const char* text) { return *Moment::parse(text); }

}  // namespace

TEST_CASE("a code is current, right until a time, not yet right, replaced, withdrawn or unknown") {
    const Home home;
    struct Row {
        const PacketRecord* asked;
        const char* code;
        const char* at;
        Answer answer;
        const char* until;
    };
    // Design: before the new effective time the old paper is right.
    const Row rows[] = {
        {&home.first, "AAA-111", "2026-02-03 00:00", Answer::current, ""},
        {&home.second, "DDD-444", "2026-03-16 14:00", Answer::current, ""},
        {&home.second, "DDD-444", "2026-03-16 13:59", Answer::not_yet, "2026-03-16 14:00"},
        {&home.second, "AAA-111", "2026-03-16 13:59", Answer::until, "2026-03-16 14:00"},
        {&home.second, "AAA-111", "2026-03-16 14:00", Answer::replaced, ""},
        {&home.second, "BBB-222", "2026-03-16 13:59", Answer::current, ""},  // kept: right before and after
        {&home.second, "BBB-222", "2026-03-16 14:00", Answer::current, ""},
        {&home.third, "AAA-111", "2026-06-01 00:00", Answer::replaced, ""},
        {&home.third, "DDD-444", "2026-04-01 00:00", Answer::until, "2026-05-01 08:00"},
        {&home.third, "AAA-111", "2026-04-01 00:00", Answer::replaced, ""},  // R2 counts by then
        {&home.third, "EEE-555", "2026-04-01 00:00", Answer::until, "2026-05-01 08:00"},
        {&home.third, "EEE-555", "2026-05-01 08:00", Answer::withdrawn, ""},
        {&home.third, "CCC-333", "2026-05-01 08:00", Answer::withdrawn, ""},
        {&home.third, "GGG-777", "2026-05-01 08:00", Answer::current, ""},
        {&home.third, "ZZZ-999", "2026-05-01 08:00", Answer::unknown, ""},
        {&home.first, "DDD-444", "2026-02-03 00:00", Answer::unknown, ""},
    };
    for (const Row& row : rows) {
        CAPTURE(row.code);
        CAPTURE(row.at);
        CAPTURE(row.asked->revision);
        const CodeMatch match = match_code(*row.asked, row.code, at(row.at));
        CHECK(match.answer == row.answer);
        CHECK(match.until == row.until);
        CHECK((match.sheet == nullptr) == (row.answer == Answer::unknown));
    }
}

TEST_CASE("an old code names what it was and what replaces it") {
    const Home home;
    const CodeMatch match = match_code(home.third, "AAA-111", at("2026-06-01 00:00"));
    REQUIRE(match.sheet);
    REQUIRE(match.earlier);
    CHECK(match.sheet->code == "FFF-666");
    CHECK(match.earlier->revision == "R1");
    CHECK(match.earlier->until == "2026-03-16 14:00");
    CHECK(home.third.find("card")->earlier.size() == 2);
    CHECK(home.third.find("card")->earlier.front().code == "DDD-444");
}

TEST_CASE("words that come back are current again, and keep their history") {
    Home home;
    PacketRecord fourth = packet("R4", "2026-06-01 08:00");
    fourth.sheets = {sheet("card", "AAA-111", fourth), sheet("switch", "EEE-555", fourth)};
    take_history(fourth, home.third);
    CHECK(match_code(fourth, "AAA-111", at("2026-07-01 00:00")).answer == Answer::current);
    CHECK(match_code(fourth, "FFF-666", at("2026-07-01 00:00")).answer == Answer::replaced);
    CHECK(match_code(fourth, "EEE-555", at("2026-07-01 00:00")).answer == Answer::current);
    CHECK(match_code(fourth, "CCC-333", at("2026-07-01 00:00")).answer == Answer::replaced);
    CHECK(match_code(fourth, "BBB-222", at("2026-07-01 00:00")).answer == Answer::withdrawn);
}

TEST_CASE("an unknown code that is one character away from a current one says so") {
    const Home home;
    const CodeMatch near = match_code(home.third, "FFF-668", at("2026-06-01 00:00"));
    CHECK(near.answer == Answer::unknown);
    REQUIRE(near.nearest);
    CHECK(near.nearest->full_name() == "card");
    CHECK(match_code(home.third, "FFF-688", at("2026-06-01 00:00")).nearest == nullptr);
}

}  // namespace ventfolio
