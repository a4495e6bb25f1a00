#include <doctest/doctest.h>

#include "profile/sample_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

struct Row {
    const char* yaml;
    const char* expected;  ///< name and place of each finding, commas between
    const char* says;      ///< a piece of the message or of what to do
};

void check(const Row& row) {
    CAPTURE(std::string{row.yaml});
    const auto read = sample::read(row.yaml);
    CHECK(joined(sample::names_and_places(read.findings), ", ") == std::string{row.expected});
    REQUIRE(!read.findings.empty());
    const Finding& first = read.findings.front();
    const std::string words = first.message + " " + first.to_do;
    CAPTURE(words);
    CHECK(words.find(row.says) != std::string::npos);
}

}  // namespace

TEST_CASE("a quantity that cannot be read is answered with its place and the right spelling") {
    constexpr Row rows[] = {
        {"weight: 35\n", "unit-missing 1:9", "Write 35 kg, 35 g or 35 lb"},
        {"weight: 35kg\n", "blank-before-unit-missing 1:9", "Write 35 kg."},
        {"tidal_volume: 350ml\n", "unit-unknown 1:15", "Did you mean 350 mL?"},
        {"tidal_volume: 3,5 L\n", "number-unreadable 1:15", "Write 3.5 L."},
        {"tidal_volume: 1,200 mL\n", "number-unreadable 1:15", "Write 1200 or 1.200, whichever is meant"},
        {"tidal_volume: 350 ml\n", "unit-unknown 1:15", "Did you mean 350 mL?"},
        {"tidal_volume: 350 cc\n", "unit-unknown 1:15", "Did you mean 350 mL?"},
        {"tidal_volume: 350 l/min\n", "unit-unknown 1:15", "Units accepted here: mL and L."},
        {"tidal_volume: 20 cmH2O\n", "unit-of-wrong-kind 1:15", "takes a volume, but cmH2O is the unit of a pressure"},
        {"alarms: {high_pressure: 3 kPa}\n", "unit-not-accepted-here 1:25", "Write it in cmH2O and hPa"},
        {"alarms: {high_pressure: 35cmH2O}\n", "blank-before-unit-missing 1:25", "Write 35 cmH2O."},
        {"alarms: {high_pressure: 35 cmH20}\n", "unit-unknown 1:25", "Did you mean 35 cmH2O?"},
        {"alarms: {high_pressure: 35 CMH2O}\n", "unit-unknown 1:25", "Did you mean 35 cmH2O?"},
        {"alarms: {high_pressure: 35 cm H2O}\n", "unit-unknown 1:25", "Did you mean 35 cmH2O?"},
        {"alarms: {low_rate: 8 bpm}\n", "unit-unknown 1:20", "Did you mean 8 breaths/min?"},
        {"alarms: {low_rate: 8 beats/min}\n", "unit-of-wrong-kind 1:20", "beats/min is the unit of a pulse rate"},
        {"weight: about 35 kg\n", "number-unreadable 1:9", "Write a number, a blank and a unit"},
        {"weight: <35 kg\n", "number-unreadable 1:9", "without a sign for more or less"},
        {"weight: 30-35 kg\n", "number-unreadable 1:9", "one number is due here, not two"},
        {"weight: 30 - 35 kg\n", "number-unreadable 1:9", "one number is due here, not two"},
        {"weight: 30 to 35 kg\n", "number-unreadable 1:9", "one number is due here, not two"},
        {"weight: 30\u201335 kg\n", "number-unreadable 1:9", "one number is due here, not two"},
        {"tidal_volume: 1 200 mL\n", "number-unreadable 1:15", "this is not a number and a unit"},
        {"weight: 1e3 g\n", "number-unreadable 1:9", "not a number"},
        {"weight: +35 kg\n", "number-unreadable 1:9", "Write 35 kg."},
        {"weight: .nan\n", "number-unreadable 1:9", "cannot be read"},
        {"weight: 0x10 kg\n", "unit-unknown 1:9", "Units accepted here: kg, g and lb."},
        {"weight: 700 kg\n", "outside-typing-range 1:9", "only 0.5 kg to 350 kg is possible"},
        {"weight: 0.4 kg\n", "outside-typing-range 1:9", "only 0.5 kg to 350 kg is possible"},
        {"weight: 400000 g\n", "outside-typing-range 1:9", "400000 g, but only"},
        {"humidifier: 20 °C\n", "outside-typing-range 1:13", "25 °C to 41 °C"},
        {"weight: [35 kg]\n", "one-value-expected 1:9", "not a list"},
        {"weight: {from: 1 kg, to: 2 kg}\n", "one-value-expected 1:9", "not a group"},
    };
    for (const Row& row : rows) check(row);
}

TEST_CASE("a range needs both ends, with units, the lower one first") {
    constexpr Row rows[] = {
        {"leak: 20 L/min\n", "range-expected 1:7", "Write {from: 20 L/min, to: 20 L/min}."},
        {"leak: 20 to 30 L/min\n", "range-expected 1:7", "Write {from: 20 L/min, to: 30 L/min}."},
        {"leak: [20 L/min, 30 L/min]\n", "range-expected 1:7", "Write {from: 20 L/min, to: 30 L/min}."},
        {"leak: {from: 30 L/min, to: 20 L/min}\n", "range-upside-down 1:7", "begins at 30 L/min and ends at 20 L/min"},
        {"leak: {from: 30 L/min}\n", "range-end-missing 1:7", "has no \"to\" value"},
        {"leak: {from: 30 L/min, to: }\n", "range-end-missing 1:24", "has no \"to\" value"},
        {"leak: {from: 20, to: 30 L}\n", "unit-missing 1:14, unit-of-wrong-kind 1:22", "Write 20 L/min"},
        {"leak: {from: 20 L/min, to: [1]}\n", "one-value-expected 1:28", "takes one value"},
        {"leak: {from: 20 L/min, upto: 30 L/min}\n", "range-end-missing 1:7, unknown-key 1:24", "has no \"to\" value"},
    };
    for (const Row& row : rows) check(row);
}

TEST_CASE("a date, a time or an interval that cannot be is answered") {
    constexpr Row rows[] = {
        {"last_visit: 2026-02-29\n", "date-that-does-not-exist 1:13", "that month has 28 days"},
        {"last_visit: 2024-02-30\n", "date-that-does-not-exist 1:13", "that month has 29 days"},
        {"last_visit: 2026-13-01\n", "date-that-does-not-exist 1:13", "there is no month 13"},
        {"last_visit: 03/04/2026\n", "date-unreadable 1:13", "year with four digits"},
        {"last_visit: 2026-2-3\n", "date-unreadable 1:13", "the day with two"},
        {"last_visit: 2026-02-03 10:00\n", "date-unreadable 1:13", "2026-02-03"},
        {"last_visit: 1826-02-03\n", "date-unreadable 1:13", "Check the year"},
        {"effective_at: 2026-02-03\n", "time-missing 1:15", "a day but no time"},
        {"effective_at: 2026-02-30 10:00\n", "date-that-does-not-exist 1:15", "28 days"},
        {"effective_at: 2026-02-03T10:00\n", "time-unreadable 1:15", "2026-01-12 10:00"},
        {"effective_at: 2026-02-03 25:00\n", "time-unreadable 1:15", "2026-01-12 10:00"},
        {"night: 8 PM\n", "clock-span-unreadable 1:8", "8 PM to 9 AM"},
        {"tube_change: weekly\n", "interval-unreadable 1:14", "30 days"},
        {"tube_change: 0 days\n", "interval-unreadable 1:14", "30 days"},
        {"revision: 2\n", "revision-unreadable 1:11", "R1"},
    };
    for (const Row& row : rows) check(row);
}

TEST_CASE("a word, a flag or a text that does not fit is answered") {
    constexpr Row rows[] = {
        {"position: half siting\n", "word-not-in-list 1:11", "Write half_sitting."},
        {"position: standing\n", "word-not-in-list 1:11", "Words accepted here: lying, half_sitting"},
        {"stairs: yes\n", "flag-not-true-or-false 1:9", "Write true"},
        {"stairs: off\n", "flag-not-true-or-false 1:9", "Write false"},
        {"stairs: \"true\"\n", "flag-not-true-or-false 1:9", "without quotation marks"},
        {"stairs: 2\n", "flag-not-true-or-false 1:9", "Write true or false"},
        {"room: the second room on the left\n", "text-too-long 1:7", "holds 27 letters; there is room for 20"},
        {"room: \"\"\n", "text-empty 1:7", "paper would show a blank"},
        {"room: \"  \"\n", "text-empty 1:7", "paper would show a blank"},
        // Unicode 15, general categories: U+00A0 is Zs, U+200B and U+00AD are Cf, U+0301 is Mn; none of them has ink of
        // its own.
        {"room: \"\u00A0\"\n", "text-empty 1:7", "paper would show a blank"},
        {"room: \"\u200B\u200B\"\n", "text-empty 1:7", "paper would show a blank"},
        {"room: \"\u00AD \u2060\"\n", "text-empty 1:7", "paper would show a blank"},
        {"room: \"\u0301\"\n", "text-empty 1:7", "paper would show a blank"},
        {"room: a\n\n  b\n", "line-break-in-plain-text 1:7", "quotation marks"},
        {"record_number: mia/1\n", "record-number-unusable 1:16", "names folders"},
        {"record_number: ../X\n", "record-number-unusable 1:16", "capital letters"},
        {"record_number: ABCDEFGHIJKLMNOPQRSTUVWXYZ-012345\n", "record-number-unusable 1:16", "at most 32"},
        {"slot: Bed 1\n", "identifier-unusable 1:7", "small letters"},
        {"contacts: [{name: A, phone: call me}]\n", "phone-number-unreadable 1:29", "digits, blanks and hyphens"},
        {"contacts: [{name: A, phone: 5}]\n", "phone-number-unreadable 1:29", "2 to 20"},
        {"contacts: [{name: A, phone: 1+555}]\n", "phone-number-unreadable 1:29", "only in front"},
        {"allergies: latex\n", "list-expected 1:12", "with a dash and a blank in front"},
        {"allergies: []\n", "list-empty 1:12", "or unknown or none"},
        {"allergies: [latex, {a: b}]\n", "list-item-not-a-text 1:20", "one text"},
        {"allergies: [latex, ]\n", "", ""},
    };
    for (const Row& row : rows)
        if (*row.expected != '\0') check(row);
    CHECK(sample::read("allergies: [latex, ]\n").findings.empty());
}

TEST_CASE("unknown, none and off are answers only where they can be") {
    constexpr Row rows[] = {
        {"weight: none\n", "answer-not-possible-here 1:9", "or unknown"},
        {"weight: off\n", "answer-not-possible-here 1:9", "not an answer to \"weight\""},
        {"room: off\n", "answer-not-possible-here 1:7", "If the word itself is meant, put it in quotation marks."},
        {"room: None\n", "answer-in-capitals 1:7", "Write none."},
        {"room: UNKNOWN\n", "answer-in-capitals 1:7", "Write unknown."},
        {"alarms: off\n", "answer-not-possible-here 1:9", "not an answer to \"alarms\""},
        {"room:\n", "value-empty 1:1", "or unknown or none"},
        {"room: ~\n", "value-empty 1:7", "or unknown or none"},
        {"room: null\n", "value-empty 1:7", "If the word itself is meant"},
        {"room: Null\n", "value-empty 1:7", "If the word itself is meant"},
        {"room:\nslot:\n", "value-empty 1:1, value-empty 2:1", "no value"},
        {"alarms:\n", "value-empty 1:1", "no value"},
        {"contacts:\n", "value-empty 1:1", "or unknown or none"},
    };
    for (const Row& row : rows) check(row);
}

TEST_CASE("the five states of a field are told apart") {
    const auto read = sample::read(
        "room: none\nweight: unknown\nalarms:\n  high_pressure: off\n  low_pressure: 0 cmH2O\nhumidity: none\n"
        "contacts: none\n");
    CHECK(read.findings.empty());
    CHECK(read.home.room.state == FieldState::none);
    CHECK(read.home.weight.state == FieldState::unknown);
    CHECK(read.home.alarms->high_pressure.state == FieldState::off);
    CHECK(read.home.alarms->low_pressure.given());
    CHECK((*read.home.alarms->low_pressure).in(unit::cmH2O) == 0);
    CHECK(read.home.alarms->low_rate.state == FieldState::absent);
    CHECK(read.home.humidity.is(sample::Humidity::none));  // a word of the list comes before the answer
    CHECK(read.home.contacts.is_none());
    CHECK(read.home.tube_change.state == FieldState::absent);
}

TEST_CASE("scalars are text until a field says what they are") {
    const auto read = sample::read(
        "room: 010\nrecord_number: 0123\nslot: yes\nstairs: False\nallergies: [1.50, true, 'none', \"~\", 0x1F]\n"
        "contacts:\n  - name: .inf\n    phone: 911\n");
    CHECK(read.findings.empty());
    CHECK(*read.home.room == "010");
    CHECK(*read.home.record_number == "0123");
    CHECK(*read.home.slot == "yes");
    CHECK(read.home.stairs.is(false));
    CHECK(*read.home.allergies == TextList{"1.50", "true", "none", "~", "0x1F"});
    CHECK(*read.home.contacts[0].name == ".inf");
    CHECK(*read.home.contacts[0].phone == "911");
}

TEST_CASE("a word in quotation marks is a text, not an answer") {
    const auto read = sample::read("room: \"none\"\ncontacts:\n  - name: 'unknown'\n    phone: '555-0101'\n");
    CHECK(read.findings.empty());
    CHECK(*read.home.room == "none");
    CHECK(*read.home.contacts[0].name == "unknown");
}

TEST_CASE("good values are kept as written, in their types") {
    const auto read = sample::read(
        "weight: 77.50 lb\ntidal_volume: .5 L\nhumidifier: 99 F\noxygen_level: 92%\nleak: {from: 20 L/min, to: 30 "
        "L/min}\n"
        "night: 8 PM to 9 AM\ntube_change: 2 weeks\nrevision: R2a\neffective_at: 2026-01-12 10:00 AM\nposition: lying\n"
        "room: \"two\\nlines\"\n");
    CHECK(read.findings.empty());
    CHECK(read.home.weight.measure().number.written() == "77.50");
    CHECK((*read.home.weight).in(unit::kg) == doctest::Approx(35.1534).epsilon(1e-5));  // 77.5 x 0.45359237, exact
    CHECK(read.home.tidal_volume.measure().text() == "0.5 L");
    CHECK(read.home.humidifier.measure().unit.symbol == "°F");
    CHECK(read.home.oxygen_level.measure().text() == "92 %");
    CHECK(read.home.leak.range().to.text() == "30 L/min");
    CHECK(read.home.night->minutes() == 13 * 60);
    CHECK(read.home.tube_change->text() == "2 weeks");
    CHECK(read.home.revision->text() == "R2a");
    CHECK(read.home.effective_at->iso() == "2026-01-12 10:00");
    CHECK(read.home.position.is(sample::Position::lying));
    CHECK(*read.home.room == "two\nlines");
}

TEST_CASE("a no-break space between number and unit is a space") {
    CHECK(sample::read("weight: 35\u00A0kg\n").findings.empty());
    CHECK(sample::read("weight: 35\u202Fkg\n").findings.empty());
}

TEST_CASE("a value exactly at a limit of typing is inside, in any unit") {
    CHECK(sample::read("weight: 350 kg\n").findings.empty());
    CHECK(sample::read("weight: 0.5 kg\n").findings.empty());
    CHECK(sample::read("weight: 350000 g\n").findings.empty());
    CHECK(sample::read("humidifier: 77 °F\n").findings.empty());     // 25 degrees Celsius
    CHECK(sample::read("humidifier: 105.8 °F\n").findings.empty());  // 41 degrees Celsius
}

TEST_CASE("text comes in normal form C and keeps the line breaks of a block") {
    // "Việt" with its marks as characters of their own; the composed form is the one of Unicode's own tables.
    const auto read =
        sample::read("room: Vie\u0323\u0302t\nallergies:\n  - |\n    one\n    two\n  - >-\n    one\n    two\n");
    CHECK(read.findings.empty());
    CHECK(*read.home.room == "Vi\u1EC7t");
    CHECK(*read.home.allergies == TextList{"one\ntwo", "one two"});
}

TEST_CASE("no message repeats what a person's texts and dates say") {
    for (const char* yaml : {"room: Quillfeather is a very long name\n", "record_number: quillfeather\n",
                             "contacts: [{name: A, phone: Quillfeather}]\n", "last_visit: Quillfeather\n"}) {
        CAPTURE(std::string{yaml});
        for (const Finding& finding : sample::read(yaml).findings) {
            CHECK(lower_ascii(finding.message).find("quillfeather") == std::string::npos);
            CHECK(lower_ascii(finding.to_do).find("quillfeather") == std::string::npos);
        }
    }
}
