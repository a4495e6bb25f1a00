#include <doctest/doctest.h>

#include "edited_home.hpp"
#include "rules/revisions.hpp"

using namespace ventfolio;
using ventfolio::testing::demo_home;
using ventfolio::testing::Judged;
using ventfolio::testing::judged_home;
using ventfolio::testing::judged_update;
using ventfolio::testing::summary;

TEST_CASE("the second revision of a home follows its first without a finding") {
    const ReadResult was = read_profile({"was.yaml", demo_home("adult-tracheostomy")});
    const SourceText source{"now.yaml", demo_home("adult-tracheostomy-revision-2")};
    const ReadResult now = read_profile(source);
    const Date on = *Date::parse("2026-03-14");
    CHECK_MESSAGE(judge_update(was.profile, now.profile, source, on).empty(),
                  summary(judge_update(was.profile, now.profile, source, on)));
    // The other way round it is no update at all.
    std::vector<std::string> rules;
    for (const Finding& finding : judge_update(now.profile, was.profile, source, on)) rules.push_back(finding.rule);
    CHECK(rules == std::vector<std::string>{"revision-not-raised", "effective-before-packet"});
}

TEST_CASE("a backup machine whose slot still says the old revision refuses all paper") {
    const Judged home = judged_home("adult-tracheostomy-revision-2", "devices.1.slots.1.revision: R1", "2026-03-14");
    const Finding* finding = home.finding("units-hold-different-revisions");
    REQUIRE_MESSAGE(finding != nullptr, summary(home.findings));
    CHECK(finding->severity == Severity::refuse);
    CHECK(stopped_sheets(home.findings).size() > 10);
    CHECK(!judged_home("adult-tracheostomy-revision-2", "", "2026-03-14").reports("units-hold-different-revisions"));
}

TEST_CASE("a revision that is not raised is told the next ones") {
    const Judged same = judged_update("adult-tracheostomy", "");
    REQUIRE(same.findings.size() == 1);
    CHECK(same.findings[0].rule == "revision-not-raised");
    CHECK(same.findings[0].to_do == "Write R2, or R1a for a correction without a new order.");
    CHECK(same.findings[0].marks.front().field == "orders.revision");

    const ReadResult was =
        read_profile({"was.yaml", testing::edited(demo_home("adult-tracheostomy"), "orders.revision: R1a")});
    const SourceText source{"now.yaml", demo_home("adult-tracheostomy")};
    const auto findings = judge_update(was.profile, read_profile(source).profile, source, *Date::parse("2026-02-03"));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].to_do == "Write R2, or R1b for a correction without a new order.");
}

TEST_CASE("whatever is set, read or connected must carry the new revision; what only names it need not") {
    struct Row {
        const char* what;
        const char* edits;
        const char* named;  ///< in the message; empty: no finding
    };
    // Source: slots and battery tests are stamped with the revision (common practice, no source).
    constexpr Row rows[] = {
        {"a setting", "prescriptions.0.rate: 16 breaths/min", "(rate)"},
        {"an alarm that is switched off", "prescriptions.0.alarms.high_rate: off", "(alarms high rate)"},
        {"an expected value", "prescriptions.0.expected.leak: {from: 30 L/min, to: 36 L/min}", "(expected leak)"},
        {"the interface", "prescriptions.0.interface.kind: mask", "(interface kind)"},
        {"the hose", "prescriptions.0.circuit.bore: 15 mm", "(circuit bore)"},
        {"a filter less", "remove: prescriptions.0.circuit.filters.1",
         "(circuit filters 1 position, circuit filters 1 change interval)"},
        {"oxygen", "prescriptions.0.oxygen.flow: 2 L/min", "(oxygen flow)"},
        {"oxygen that is gone", "prescriptions.0.oxygen: none", "(oxygen flow)"},
        {"more than three things",
         "prescriptions.0.rate: 16 breaths/min\nprescriptions.0.rise: 3 of 5\n"
         "prescriptions.0.trigger: flow 2 L/min\nprescriptions.0.inspiratory_time: 1.1 s",
         "(rate, inspiratory time, rise and 1 more)"},
        {"its name", "prescriptions.0.label: Bed, on the side", ""},
        {"a note", "prescriptions.0.note: turn at 2 AM", ""},
        {"the other prescription, marked", "prescriptions.1.rate: 15 breaths/min\nprescriptions.1.changed_in: R2", ""},
        {"nothing of it", "person.weight: 62 kg", ""},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const Judged home = judged_update("adult-tracheostomy", std::string{"orders.revision: R2\n"} + row.edits);
        const Finding* finding = home.finding("changed-prescription-not-marked");
        const std::string message = finding ? finding->message : "";
        CHECK((finding != nullptr) == (*row.named != '\0'));
        CHECK_MESSAGE(message.find(row.named) != std::string::npos, message);
        if (finding != nullptr) CHECK(finding->marks.front().field == "prescriptions.0.changed_in");
    }
}

TEST_CASE("a prescription that is new must be marked, one that only moved in the list must not") {
    const ReadResult one =
        read_profile({"was.yaml", testing::edited(demo_home("adult-tracheostomy"), "remove: prescriptions.0")});
    const SourceText two{"now.yaml", testing::edited(demo_home("adult-tracheostomy"), "orders.revision: R2")};
    const auto findings = judge_update(one.profile, read_profile(two).profile, two, *Date::parse("2026-02-03"));
    std::vector<std::string> fields;
    for (const Finding& finding : findings)
        if (finding.rule == "changed-prescription-not-marked") fields.push_back(finding.marks.front().field);
    CHECK(fields == std::vector<std::string>{"prescriptions.0.changed_in"});
}
