#include <doctest/doctest.h>

#include "edited_home.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;
using ventfolio::testing::summary;

namespace {

constexpr const char* kAccepts =
    "prescriptions.0.alarms.no_breath: 35 s\n"
    "accepted: [{rule: no-breath-alarm-long, prescription: P1, by: Dr. Imelda Quarrow, date: 2026-01-10, reason: "
    "checked, ";

}  // namespace

TEST_CASE("an acceptance counts for the very number that it covers") {
    const auto judged =
        judged_home("adult-tracheostomy", std::string{kAccepts} + "covers: [{name: alarm, value: 35 s}]}]\n");
    CAPTURE(summary(judged.findings));
    REQUIRE(judged.finding("no-breath-alarm-long") != nullptr);
    CHECK(judged.finding("no-breath-alarm-long")->accepted);
    CHECK(!not_yet_checked(judged.findings, judged.read.profile));
}

TEST_CASE("an acceptance of another number no longer counts, and the finding says so") {
    const auto judged =
        judged_home("adult-tracheostomy", std::string{kAccepts} + "covers: [{name: alarm, value: 32 s}]}]\n");
    const Finding* finding = judged.finding("no-breath-alarm-long");
    REQUIRE(finding != nullptr);
    CHECK(!finding->accepted);
    REQUIRE(finding->marks.size() == 2);
    CHECK(finding->marks[1].field == "accepted.0.covers.0.value");
    CHECK(finding->marks[1].label == "no longer counts: alarm is now 35 s");
    CHECK(finding->to_do.find("Dr. Imelda Quarrow") != std::string::npos);
    CHECK(not_yet_checked(judged.findings, judged.read.profile));
}

TEST_CASE("an acceptance of a finding with figures that covers none of them does not count") {
    const auto judged = judged_home("adult-tracheostomy", std::string{kAccepts} + "}]\n");
    const Finding* finding = judged.finding("no-breath-alarm-long");
    REQUIRE(finding != nullptr);
    CHECK(!finding->accepted);
    CHECK(finding->marks.back().label == "does not count until it covers a number, such as alarm: 35 s");
}

TEST_CASE("an acceptance for one prescription does not cover the same finding of another") {
    const auto judged =
        judged_home("adult-tracheostomy", "prescriptions.1.alarms.no_breath: 35 s\n" + std::string{kAccepts} +
                                              "covers: [{name: alarm, value: 35 s}]}]\n");
    std::size_t accepted = 0;
    std::size_t open = 0;
    for (const Finding& finding : judged.findings)
        if (finding.rule == "no-breath-alarm-long") (finding.accepted ? accepted : open) += 1;
    CHECK(accepted == 1);
    CHECK(open == 1);
}

TEST_CASE("an acceptance for a prescription that does not exist covers nothing") {
    std::string accepts{kAccepts};
    accepts.replace(accepts.find("prescription: P1"), 16, "prescription: P9");
    const auto judged = judged_home("adult-tracheostomy", accepts + "covers: [{name: alarm, value: 35 s}]}]\n");
    const Finding* finding = judged.finding("no-breath-alarm-long");
    REQUIRE(finding != nullptr);
    CHECK(!finding->accepted);
}

TEST_CASE("acceptances of refusals, of unknown rules and of nothing are reported") {
    const auto unknown = judged_home("child-tracheostomy", "accepted.0.rule: backup-ventilator-mising");
    REQUIRE(unknown.finding("acceptance-of-unknown-rule") != nullptr);
    CHECK(unknown.finding("acceptance-of-unknown-rule")->to_do == "Write backup-ventilator-missing if that is meant.");
    CHECK(stopped_sheets(unknown.findings).size() == 16);
    CHECK(
        judged_home("child-tracheostomy", "accepted.0.rule: tap-water-in-humidifier").reports("acceptance-of-refusal"));
    CHECK(
        judged_home("child-tracheostomy", "accepted.0.rule: weight-out-of-date").reports("acceptance-without-finding"));
}
