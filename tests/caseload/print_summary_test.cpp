#include "caseload/print_summary.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

using namespace ventfolio;

namespace {

const Date kDay = *Date::parse("2026-02-03");

const HomeOutcome kHomes[] = {
    {"homes/a.yaml", Outcome::printed, "DEMO-1", "R1", 37, 66, "papers/DEMO-1", ""},
    {"homes/b.yaml", Outcome::current, "DEMO-2", "R3", 35, 60, "papers/DEMO-2", ""},
    {"=1+1, \"c\".yaml", Outcome::refused, "DEMO-3", "", 0, 0, "", "stopped by mode-unknown, pulse-oxygen"},
    {"d\xFF.yaml", Outcome::unusable, "", "", 0, 0, "", "cannot be read: Permission denied"},
};

std::string whole(PrintSummary summary, std::span<const HomeOutcome> homes, int status) {
    std::string text;
    for (const HomeOutcome& home : homes) text += summary.of(home);
    return text + summary.end(status);
}

}  // namespace

TEST_CASE("as text a summary has a line a home and one that counts") {
    CHECK(whole({SummaryForm::text, kDay, {}, false}, kHomes, 3) ==
          "homes/a.yaml: printed: DEMO-1, 37 sheets, 66 pages, in papers/DEMO-1\n"
          "homes/b.yaml: current: DEMO-2, in papers/DEMO-2\n"
          "=1+1, \"c\".yaml: refused: stopped by mode-unknown, pulse-oxygen\n"
          "d\xFF.yaml: unusable: cannot be read: Permission denied\n"
          "4 homes: 1 printed, 1 current, 1 refused, 1 unusable\n");
    CHECK(whole({SummaryForm::text, kDay, {}, true}, kHomes, 3) ==
          "=1+1, \"c\".yaml: refused: stopped by mode-unknown, pulse-oxygen\n"
          "d\xFF.yaml: unusable: cannot be read: Permission denied\n");
    CHECK(whole({SummaryForm::text, kDay, {}, false}, {}, 0) ==
          "0 homes: 0 printed, 0 current, 0 refused, 0 unusable\n");
}

TEST_CASE("as comma-separated values no cell breaks its row, and none is a formula") {
    // RFC 4180, section 2: lines end with CR LF; cells with commas or quotes stand in quotes, quotes are doubled.
    CHECK(whole({SummaryForm::csv, kDay, {}, false}, kHomes, 3) ==
          "file,outcome,record_number,revision,sheets,pages,folder,reason\r\n"
          "homes/a.yaml,printed,DEMO-1,R1,37,66,papers/DEMO-1,\r\n"
          "homes/b.yaml,current,DEMO-2,R3,35,60,papers/DEMO-2,\r\n"
          "\"'=1+1, \"\"c\"\".yaml\",refused,DEMO-3,,,,,\"stopped by mode-unknown, pulse-oxygen\"\r\n"
          "d\xFF.yaml,unusable,,,,,,cannot be read: Permission denied\r\n");
    CHECK(whole({SummaryForm::csv, kDay, {}, false}, {}, 0) ==
          "file,outcome,record_number,revision,sheets,pages,folder,reason\r\n");
}

TEST_CASE("as JSON it can be read, whatever bytes a file's name has, and even where there is no home") {
    const auto summary = nlohmann::json::parse(whole({SummaryForm::json, kDay, Shard{2, 8}, false}, kHomes, 3));
    CHECK(summary.at("on") == "2026-02-03");
    CHECK(summary.at("shard") == "2/8");
    CHECK(summary.at("status") == 3);
    CHECK(summary.at("counts").at("refused") == 1);
    REQUIRE(summary.at("homes").size() == 4);
    CHECK(summary.at("homes")[0].at("pages") == 66);
    CHECK(summary.at("homes")[2].at("file") == "=1+1, \"c\".yaml");  // only spreadsheets run it
    CHECK(summary.at("homes")[3].at("file") == "d\uFFFD.yaml");
    CHECK(!summary.at("homes")[3].contains("pages"));
    const auto none = nlohmann::json::parse(whole({SummaryForm::json, kDay, {}, true}, {}, 0));
    CHECK(none.at("homes").empty());
    CHECK(none.at("shard") == nullptr);
    CHECK(none.at("counts").at("printed") == 0);
}
