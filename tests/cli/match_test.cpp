#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;
using Json = nlohmann::json;

namespace {

Json record_in(const Scratch& folder, const char* name) {
    return Json::parse(contents(folder.path(name) / "packet.json"));
}

std::string code_in(const Json& record, std::string_view name, std::string_view place) {
    for (const Json& sheet : record.at("sheets"))
        if (sheet.at("name") == name && sheet.at("place") == place) return sheet.at("code");
    FAIL("no such sheet");
    return {};
}

Ran match(const Scratch& folder, std::string_view packet, std::string_view code, std::string_view at) {
    return ventfolio_in(folder, fmt::format("match {} {} --on '{}'", packet, code, at));
}

/// R1 and R2 of a demo home in the folders R1 and R2.
void put_both(const Scratch& folder) {
    REQUIRE(ventfolio_in(folder, fmt::format("print '{}' --on 2026-02-03 -o R1", profile_path("adult-tracheostomy")))
                .status == 0);
    const Ran update = ventfolio_in(folder, fmt::format("update '{}' --from R1 --on 2026-03-15 -o R2",
                                                        profile_path("adult-tracheostomy-revision-2")));
    REQUIRE_MESSAGE(update.status == 0, update.err);
}

}  // namespace

TEST_CASE("match answers in one line and by its status, before and after the new time") {
    const Scratch folder;
    put_both(folder);
    const Json first = record_in(folder, "R1");
    const Json second = record_in(folder, "R2");
    const std::string old_card = code_in(first, "bedside-card", "bed");
    const std::string new_card = code_in(second, "bedside-card", "bed");
    const std::string hookup = code_in(second, "hookup", "bed");
    REQUIRE(old_card != new_card);
    REQUIRE(hookup == code_in(first, "hookup", "bed"));
    struct Row {
        std::string code;
        const char* at;
        int status;
        std::string line;
    };
    // R2 counts from 2 PM on 16 March 2026: profiles/adult-tracheostomy-revision-2.yaml.
    const Row rows[] = {
        {new_card, "2026-03-17", 0, ": current; bedside-card/bed, R2, in force from 16 March 2026, 2 PM."},
        {new_card, "2026-03-16 13:59", 1,
         ": not yet; bedside-card/bed, R2, in force from 16 March 2026, 2 PM: until then the old one stays up."},
        {old_card, "2026-03-16 13:59", 0,
         ": right until 16 March 2026, 2 PM; bedside-card/bed, R1, then " + new_card +
             " of R2, in force from 16 March 2026, 2 PM."},
        {old_card, "2026-03-16 14:00", 1,
         ": replaced; bedside-card/bed of R1, take it down: the right one is " + new_card +
             " of R2, in force from 16 March 2026, 2 PM."},
        {hookup, "2026-03-16 13:00", 0, ": current; hookup/bed, R1, in force from 12 January 2026, 10 AM."},
        {hookup, "2026-03-17", 0, ": current; hookup/bed, R1, in force from 12 January 2026, 10 AM."},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.at});
        const Ran ran = match(folder, "R2", row.code, row.at);
        CHECK(ran.status == row.status);
        CHECK(ran.out == row.code + row.line + "\n");
        CHECK(ran.err == "");
    }
    const Ran unknown = match(folder, "R2", "000000", "2026-03-17");
    CHECK(unknown.status == 1);
    CHECK(holds(unknown.out, "000-000: unknown; no paper of DEMO-1 has this code"));
}

TEST_CASE("a code is understood however it was read out") {
    const Scratch folder;
    REQUIRE(
        ventfolio_in(folder, fmt::format("print '{}' --on 2026-02-03 -o papers", profile_path("adult-mask"))).status ==
        0);
    const Json record = record_in(folder, "papers");
    for (const Json& sheet : record.at("sheets")) {
        const std::string code = sheet.at("code");
        std::string misread = lower_ascii(code);
        misread = with_replaced(with_replaced(misread, "0", "O"), "1", "l");
        const std::string apart = fmt::format("{} {}", misread.substr(0, 3), misread.substr(4));
        for (const std::string& said : {code, misread, apart, with_replaced(misread, "-", "")}) {
            CAPTURE(said);
            const Ran ran = match(folder, "papers", said, "2026-02-04");
            CHECK(ran.status == 0);
            CHECK(ran.out.starts_with(code + ": current; "));
        }
    }
    for (const char* wrong : {"U7M-2QD", "K7M", "K7M-2QD-1", "K7M_2QD"}) {
        CAPTURE(std::string{wrong});
        const Ran ran = match(folder, "papers", wrong, "2026-02-04");
        CHECK(ran.status == 2);
        CHECK(ran.out == "");
        CHECK(holds(ran.err, "have it read out again"));
    }
}

TEST_CASE("an old packet does not answer when a newer one stands beside it") {
    const Scratch folder;
    put_both(folder);
    const std::string code = code_in(record_in(folder, "R1"), "bedside-card", "bed");
    const Ran ran = match(folder, "R1", code, "2026-03-17");
    CHECK(ran.status == 1);
    CHECK(holds(ran.out, "not asked of the newest packet"));
    CHECK(holds(ran.out, "R2: ask there"));
}

TEST_CASE("match says which link is broken, and gives no answer from a record that was edited") {
    struct Row {
        const char* damage;
        int status;
        const char* told;
    };
    const Row rows[] = {
        {"rm -r R1", 0, "the chain of packets is broken: R1: No such file or directory"},
        {"rm R1/packet.pdf", 0, "the chain of packets is broken: R1/packet.pdf: is missing"},
        {"echo >> R1/profile.yaml", 0, "the chain of packets is broken: R1/profile.yaml: was changed"},
        {"echo >> R1/packet.json", 0, "the chain of packets is broken: R1/packet.json: was changed"},
        {"rm R2/packet.pdf", 0, "R2/packet.pdf: is missing"},
        {"sed -i s/printed/kept/ R2/packet.json", 3, "R2/packet.json: was changed after it was written"},
        {"rm R2/SHA256SUMS", 3, "R2/SHA256SUMS: is missing"},
        {"truncate -s 100 R2/packet.json", 3, "R2/packet.json: was changed"},
        {"rm -r R2", 3, "R2: No such file or directory"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.damage});
        const Scratch folder;
        put_both(folder);
        const std::string code = code_in(record_in(folder, "R2"), "bedside-card", "bed");
        REQUIRE(folder.run(row.damage).status == 0);
        const Ran ran = match(folder, "R2", code, "2026-03-17");
        CHECK(ran.status == row.status);
        CHECK(ran.out.empty() == (row.status == 3));
        CHECK_MESSAGE(holds(ran.err, row.told), ran.err);
    }
}
