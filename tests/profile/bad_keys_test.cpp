#include <doctest/doctest.h>

#include "profile/read_profile.hpp"
#include "profile/sample_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

/// What a therapist sees, on one line each: place, severity, message, rule, field, words under the caret, what to do.
std::string shown(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) {
        const Mark& mark = finding.marks.front();
        text += mark.file + ":" + std::to_string(mark.place.line) + ":" + std::to_string(mark.place.column) + ": " +
                std::string{name_of(finding.severity)} + ": " + finding.message + " [" + finding.rule + "] (" +
                mark.field + ") ^ " + mark.label + " > " + finding.to_do + "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("a misspelt key suggests the nearest one, others list what belongs there") {
    CHECK(shown(sample::read("alarms:\n  hihg_pressure: 31 cmH2O\n").findings) ==
          "home.yaml:2:3: refuse: \"hihg_pressure\" is not a key that belongs below \"alarms\". [unknown-key] "
          "(alarms.hihg_pressure) ^ did you mean \"high_pressure\"? > Write high_pressure.\n");
    CHECK(
        shown(sample::read("alarms:\n  volume: 31 cmH2O\n").findings) ==
        "home.yaml:2:3: refuse: \"volume\" is not a key that belongs below \"alarms\". [unknown-key] (alarms.volume) ^ "
        "unknown key > Keys that belong here: high_pressure, low_pressure, low_rate.\n");
}

TEST_CASE("a key that belongs to another group says where") {
    CHECK(
        shown(sample::read("alarms:\n  weight: 31 kg\nhigh_pressure: 31 cmH2O\n").findings) ==
        "home.yaml:2:3: refuse: \"weight\" is not a key that belongs below \"alarms\". [unknown-key] (alarms.weight) ^ "
        "belongs elsewhere > Move it to the top level, without indentation.\n"
        "home.yaml:3:1: refuse: \"high_pressure\" is not a key that belongs at the top level. [unknown-key] "
        "(high_pressure) ^ belongs elsewhere > Move it: it belongs below \"alarms\".\n");
}

TEST_CASE("a misspelt key beside the right one names the line of the right one") {
    const auto read = sample::read("alarms:\n  high_pressure: 31 cmH2O\n  high_presure: 35 cmH2O\n");
    REQUIRE(read.findings.size() == 1);
    CHECK(read.findings[0].to_do ==
          "\"high_pressure\" already stands on line 2. Keys that belong here: high_pressure, low_pressure, low_rate.");
}

TEST_CASE("a colon without its blank is recognised") {
    const auto read = sample::read("leak: {from:20 L/min, to: 30 L/min}\n");
    CHECK(joined(sample::names_and_places(read.findings), ", ") == "range-end-missing 1:7, unknown-key 1:8");
    const auto in_group = sample::read("alarms: {high_pressure:31 cmH2O}\n");
    REQUIRE(in_group.findings.size() == 1);
    CHECK(in_group.findings[0].to_do == "Write high_pressure: 31 cmH2O");
}

TEST_CASE("a field that is missing points at the key of its group and says what it is") {
    CHECK(shown(sample::read("contacts:\n  - name: Ada\n").findings) ==
          "home.yaml:2:5: refuse: \"phone\" is missing: number to dial. [essential-field-missing] (contacts.0.phone) ^ "
          "\"phone\" is missing > Write \"phone\" below \"contacts\", for example 555-0101.\n");
    CHECK(shown(sample::read("contacts:\n  - phone: 555-0101\n").findings) ==
          "home.yaml:2:5: warn: \"name\" is missing: full name. [expected-field-missing] (contacts.0.name) ^ "
          "\"name\" is missing > Write \"name\" below \"contacts\". Until then paper says NOT RECORDED.\n");
}

TEST_CASE("an answer of unknown counts as missing, at its own place") {
    CHECK(
        shown(sample::read("contacts:\n  - name: unknown\n    phone: unknown\n").findings) ==
        "home.yaml:2:11: warn: \"name\" is written as unknown: full name. [expected-field-missing] (contacts.0.name) ^ "
        "nobody knows it yet > Find out and write it here.\n"
        "home.yaml:3:12: refuse: \"phone\" is written as unknown: number to dial. [essential-field-missing] "
        "(contacts.0.phone) ^ nobody knows it yet > Find out and write it here.\n");
}

TEST_CASE("a broken or misspelt field is not reported as missing too") {
    CHECK(joined(sample::names_and_places(sample::read("contacts: [{name: A, phone: x}]\n").findings), ", ") ==
          "phone-number-unreadable 1:29");
    CHECK(joined(sample::names_and_places(sample::read("contacts: [{name: A, phon: 555-0101}]\n").findings), ", ") ==
          "unknown-key 1:22");
    CHECK(joined(sample::names_and_places(sample::read("contacts: [{name: A, phone: }]\n").findings), ", ") ==
          "value-empty 1:22");
    CHECK(joined(sample::names_and_places(sample::read("contacts: [{name: A, phone: *x}]\n").findings), ", ") ==
          "alias-in-file 1:29");
}

TEST_CASE("groups and lists that are not are answered, and their fields are not asked for") {
    CHECK(joined(sample::names_and_places(sample::read("alarms: 31 cmH2O\n").findings), ", ") == "group-expected 1:9");
    CHECK(joined(sample::names_and_places(sample::read("alarms:\n  - high_pressure: 31 cmH2O\n").findings), ", ") ==
          "group-expected 2:3");
    CHECK(joined(sample::names_and_places(sample::read("contacts:\n  phone: 555-0101\n").findings), ", ") ==
          "list-expected 2:3");
    CHECK(joined(sample::names_and_places(sample::read("contacts: []\n").findings), ", ") == "list-empty 1:11");
    CHECK(joined(sample::names_and_places(sample::read("contacts:\n  - Ada\n  -\n  - {}\n").findings), ", ") ==
          "list-item-not-a-group 1:1, list-item-not-a-group 2:5, list-item-not-a-group 4:5");
}

TEST_CASE("everything is reported in one run, in the order of the file") {
    const auto read = sample::read("slot: Bed\nweight: 35\nalarms:\n  low_rate: 8 bpm\n  hihg_pressure: x\nroom:\n");
    CHECK(joined(sample::names_and_places(read.findings), ", ") ==
          "identifier-unusable 1:7, unit-missing 2:9, unit-unknown 4:13, unknown-key 5:3, value-empty 6:1");
}

TEST_CASE("paths of findings count the items of a list") {
    const auto read = sample::read("contacts:\n  - {name: A, phone: 555-0101}\n  - {name: B, phone: x}\n");
    REQUIRE(read.findings.size() == 1);
    CHECK(read.findings[0].marks[0].field == "contacts.1.phone");
    CHECK(read.home.contacts.size() == 2);
    CHECK(!read.home.contacts[1].phone.given());
    CHECK(read.home.contacts[1].phone.place.column == 22);
}

TEST_CASE("a profile without anything is told what it lacks at its first line") {
    const ReadResult result = read_profile({"home.yaml", "record_number: DEMO-1\n"});
    REQUIRE(!result.findings.empty());
    bool person = false;
    for (const Finding& finding : result.findings) {
        CHECK(finding.marks[0].place.line == 1);
        person = person || (finding.marks[0].field == "person" && finding.severity == Severity::refuse);
    }
    CHECK(person);
    CHECK(*result.profile.record_number == "DEMO-1");
}
