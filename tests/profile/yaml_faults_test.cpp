#include <doctest/doctest.h>

#include "profile/sample_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace std::string_literals;

namespace {

std::string found(const std::string& yaml) {
    return joined(sample::names_and_places(sample::read(yaml).findings), ", ");
}

}  // namespace

TEST_CASE("what YAML offers and a profile does not take is refused at its place") {
    struct Row {
        const char* yaml;
        const char* expected;
    };
    constexpr Row rows[] = {
        {"room: &a x\nslot: *a\n", "anchor-in-file 1:7, alias-in-file 2:7"},
        {"slot: *nowhere\n", "alias-in-file 1:7"},
        {"slot: *\n", "alias-in-file 1:8"},
        {"alarms: &a\n  low_rate: off\n", "anchor-in-file 1:9"},
        {"room: &a\n", "anchor-in-file 1:7"},
        {"room: !!str x\n", "tag-in-file 1:7"},
        {"room: ! x\n", "tag-in-file 1:7"},
        {"alarms: !x {low_rate: off}\n", "tag-in-file 1:9"},
        {"%TAG ! x\n---\nroom: !y z\n", "tag-in-file 3:7"},
        {"<<: {room: x}\n", "merge-key-in-file 1:1"},
        {"room: x\n---\nroom: y\n", "second-document-in-file 2:1"},
        {"room: x\n---\n", "second-document-in-file 2:1"},
        {"room: x\nslot: a\nroom: y\n", "duplicate-key 3:1"},
        {"room: x\n\"room\": y\n", "duplicate-key 2:1"},
        {"? [a]\n: b\n", "key-not-a-word 1:3"},
        {"{[1, 2]: 3}\n", "key-not-a-word 1:2"},
        {"~: x\n", "key-not-a-word 1:1"},
        {": x\n", "key-not-a-word 1:1"},
        {"room: a: b\n", "yaml-unreadable 1:8"},
        {"room: x\n  slot: y\n", "yaml-unreadable 2:7"},
        {"  room: x\nslot: y\n", "yaml-unreadable 2:1"},
        {"alarms:\n    low_rate: off\n  low_pressure: off\n", "yaml-unreadable 3:3"},
        {"allergies: [a, b\n", "yaml-unreadable 2:1"},
        {"leak: {from: 1 L/min\n", "yaml-unreadable 2:1"},
        {"room: ]\n", "yaml-unreadable 1:7"},
        {"room: - x\n", "yaml-unreadable 1:7"},
        {"room: @x\n", "yaml-unreadable 1:7"},
        {"room: `x\n", "yaml-unreadable 1:7"},
        {"room: \"x\n", "quotation-mark-not-closed 1:7"},
        {"room: 'x\n", "quotation-mark-not-closed 1:7"},
        {"room: \"x", "quotation-mark-not-closed 1:9"},
        // YAML 1.2.2, section 6.6: a blank and # begin a comment, also where an address goes on.
        {"room: Apt #2\n", "text-cut-at-number-sign 1:11"},
        {"room: Apt  # 2", "text-cut-at-number-sign 1:12"},
        {"room: up\n  stairs #2\n", "text-cut-at-number-sign 2:10"},
        {"room: Apt#2\n", ""},
        {"room: \"Apt #2\"\n", ""},
        {"room: \"Apt 2\" #2\n", ""},
        {"room: Apt 2  # the green door\n", ""},
        {"room: Apt 2 #\n", ""},
        {"room: >\n  Apt #2\n", ""},
        {"room: \"x\" y\n", "yaml-unreadable 1:11"},
        {"room: \"\\q\"\n", "yaml-unreadable 1:10"},
        {"room: |z\n  x\n", "yaml-unreadable 1:8"},
        {"- room\n", "profile-without-keys 1:1"},
        {"room\n", "profile-without-keys 1:1"},
        {"room:x\n", "profile-without-keys 1:1"},
        {"", "file-empty 1:1"},
        {"# only a remark\n", "file-empty 1:1"},
        {"\r\n\r\n", "file-empty 1:1"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.yaml});
        CHECK(found(row.yaml) == std::string{row.expected});
    }
}

TEST_CASE("a quotation mark that closes lines later is named as the likely cause") {
    const auto read = sample::read("room: \"bed\nslot: \"a\"\n");
    REQUIRE(read.findings.size() == 1);
    CHECK(read.findings[0].rule == "yaml-unreadable");
    CHECK(read.findings[0].to_do ==
          "A quotation mark opens on line 1 and closes on a later line. Is one missing there?");
}

TEST_CASE("a duplicate key names the line of the first, which is the one that is read") {
    const auto read = sample::read("room: bed\nroom: chair\n");
    REQUIRE(read.findings.size() == 1);
    CHECK(read.findings[0].marks[0].label == "already on line 1");
    CHECK(*read.home.room == "bed");
}

TEST_CASE("what a text file must not hold is refused before anything is parsed") {
    struct Row {
        std::string yaml;
        const char* expected;
    };
    const Row rows[] = {
        {"alarms:\n\tlow_rate: off\n\tlow_pressure: off\n", "tab-in-file 2:1"},
        {"room: a\tb\n", "tab-in-file 1:8"},
        {"room: a\0b\n"s, "control-character-in-file 1:8"},
        {"room: \x1B[31m\n", "control-character-in-file 1:7"},
        {"room: a\rslot: b\n", "control-character-in-file 1:8"},  // a bare CR hides a line from most editors
        {"room: a\u0085b\n", "control-character-in-file 1:8"},
        {"room: a\u2028b\n", "control-character-in-file 1:8"},
        {"room: \u202E41 kg\n",
         "control-character-in-file 1:7"},  // turns the direction of writing: paper would read 14
        {"room: a\uFEFFb\n", "control-character-in-file 1:8"},
        {"room: a\uFFFFb\n", "control-character-in-file 1:8"},
        {"room: a\uE001b\uE002\n", "private-use-character-in-file 1:8, private-use-character-in-file 1:10"},
        {"room: \U000F0000\n", "private-use-character-in-file 1:7"},
        {"room: \xFF\n", "text-not-utf8 1:7"},
        {"room: Zo\xEB\n", "text-not-utf8 1:9"},            // Latin-1
        {"room: \xC0\xAF\n", "text-not-utf8 1:7"},          // overlong slash
        {"room: \xED\xA0\x80\n", "text-not-utf8 1:7"},      // lone surrogate, RFC 3629 section 3
        {"room: \xF4\x90\x80\x80\n", "text-not-utf8 1:7"},  // above U+10FFFF
        {"room: \xE2\x82", "text-not-utf8 1:7"},            // cut off
        {"\xFF\xFEr\0o\0"s, "text-not-utf8 1:1"},           // UTF-16
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.yaml});
        CHECK(found(row.yaml) == std::string{row.expected});
    }
}

TEST_CASE("escapes cannot bring in what the file may not hold") {
    CHECK(found("room: \"a\\0b\"\n") == "control-character-in-text 1:7");
    CHECK(found("room: \"a\\tb\"\n") == "control-character-in-text 1:7");
    CHECK(found("room: \"\\uE000\"\n") == "control-character-in-text 1:7");
    CHECK(found("room: \"\\u202E\"\n") == "control-character-in-text 1:7");
    CHECK(found("room: \"\\x1B\"\n") == "control-character-in-text 1:7");
    CHECK(found("room: \"\\ud800\"\n") == "yaml-unreadable 1:14");
    CHECK(found("room: \"\\u00e9\"\n") == "");
}

TEST_CASE("a byte-order mark and CRLF line ends change nothing, not even the columns") {
    const auto read = sample::read("\xEF\xBB\xBFweight: 35\r\nroom: bed\r\nalarms:\r\n  low_rate: 8\r\n");
    CHECK(joined(sample::names_and_places(read.findings), ", ") == "unit-missing 1:9, unit-missing 4:13");
    CHECK(*read.home.room == "bed");
    const auto block = sample::read("allergies:\r\n  - |\r\n    one\r\n    two\r\n");
    CHECK(block.findings.empty());
    CHECK(*block.home.allergies == TextList{"one\ntwo"});
}

TEST_CASE("the column counts what the user sees") {
    // Vietnamese, composed and with combining marks: ten cells before the value either way.
    CHECK(found("{room: Việt Nam, weight: 35}\n") == "unit-missing 1:26");
    CHECK(found("{room: Vie\u0323\u0302t Nam, weight: 35}\n") == "unit-missing 1:26");
    // East Asian wide letters take two cells each (Unicode Standard Annex 11).
    CHECK(found("{room: 東京, weight: 35}\n") == "unit-missing 1:22");
}

TEST_CASE("nothing hostile takes long or falls over") {
    CHECK(found("room: " + std::string(2 * 1024 * 1024, 'x')) == "file-too-large 1:1");
    CHECK(found(std::string(10000, '[')).starts_with("nested-too-deep 1:"));
    CHECK(found("room: " + std::string(10000, '{')) == "nested-too-deep 1:38");
    CHECK(found(std::string(1000000, '[')).starts_with("nested-too-deep 1:"));
    std::string indented;
    for (std::size_t depth = 0; depth < 1000; ++depth) indented += std::string(depth, ' ') + "a:\n";
    CHECK(found(indented) == "nested-too-deep 33:33");

    // The well-known bomb: each line repeats the one above ten times.
    std::string bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
    for (int level = 1; level < 10; ++level) {
        const std::string above = "*a" + std::to_string(level - 1);
        bomb += "a" + std::to_string(level) + ": &a" + std::to_string(level) + " [" + above;
        for (int copy = 1; copy < 10; ++copy) bomb += ", " + above;
        bomb += "]\n";
    }
    const auto read = sample::read(bomb);
    std::size_t aliases = 0;
    for (const Finding& finding : read.findings)
        if (finding.rule == "alias-in-file") ++aliases;
    CHECK(aliases == 90);
    CHECK(read.findings.size() < 130);

    std::string junk;
    for (int line = 0; junk.size() < 1000000; ++line) junk += "weigth" + std::to_string(line) + ": 35\n";
    const auto many = sample::read(junk);
    CHECK(many.findings.size() <= 501);
    CHECK(many.findings.back().rule == "more-faults-than-listed");
    std::string wide = "allergies: [";
    while (wide.size() < 1000000) wide += "a,";
    CHECK(found(wide + "b]\n") == "");
}

TEST_CASE("32 levels are read, 33 are not") {
    CHECK(found("room: " + std::string(31, '[') + std::string(31, ']')) == "one-value-expected 1:7");
    CHECK(found("room: " + std::string(32, '[') + std::string(32, ']')) == "nested-too-deep 1:38");
}
