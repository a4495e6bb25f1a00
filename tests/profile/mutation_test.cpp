#include <doctest/doctest.h>

#include <chrono>
#include <random>

#include "profile/read_profile.hpp"
#include "profile/starter.hpp"

using namespace ventfolio;

namespace {

void blank_profile(Visitor& visitor) {
    Profile blank;
    blank.describe(visitor);
}

/// What must hold of every finding, whatever the text was.
void check_finding(const Finding& finding, const SourceText& source) {
    REQUIRE(!finding.marks.empty());
    const Place& place = finding.marks.front().place;
    CHECK(place.known());
    CHECK(place.begin <= place.end);
    CHECK(place.end <= source.text.size());
    CHECK(!finding.rule.empty());
    CHECK(!finding.message.empty());
    CHECK(!finding.to_do.empty());
    CHECK(!finding.marks.front().label.empty());
}

std::string mutated(std::string text, std::mt19937& random) {
    constexpr std::string_view kPieces[] = {
        "\n", " ",     ":",         ": ",           "- ", "\"",   "'",       "{",   "}",    "[",     "]",
        ",",  "#",     "|\n",       ">\n",          "~",  "*a",   "&a ",     "!x ", "<<: ", "---\n", "...\n",
        "\t", "\r\n",  "\xC3",      "\xE2\x80\xAE", "? ", "none", "unknown", "off", "%",    "\\",    "\0x",
        "35", "cmH2O", "2026-02-30"};
    const std::size_t times = 1 + random() % 4;
    for (std::size_t time = 0; time < times; ++time) {
        const std::size_t at = random() % (text.size() + 1);
        switch (random() % 4) {
            case 0:
                text.insert(at, kPieces[random() % std::size(kPieces)]);
                break;
            case 1:
                text.erase(at, random() % 12);
                break;
            case 2:
                if (at < text.size()) text[at] = static_cast<char>(random() % 256);
                break;
            default:
                text.insert(at, text.substr(random() % (text.size() + 1), random() % 40));
                break;
        }
    }
    return text;
}

}  // namespace

TEST_CASE("no change of a few characters makes the reader fall over or point beside the text") {
    const std::string whole = example_profile(blank_profile);
    std::mt19937 random{19710713};  // fixed, so that a failure comes again
    for (int round = 0; round < 1500; ++round) {
        // A window of the longest profile: small enough to be quick, and cut at any place.
        const std::size_t begin = random() % whole.size();
        const SourceText source{"home.yaml", mutated(whole.substr(begin, 200 + random() % 3000), random)};
        CAPTURE(round);
        for (const Finding& finding : read_profile(source).findings) check_finding(finding, source);
    }
}

TEST_CASE("a whole profile with one change is answered or still means something") {
    const std::string whole = example_profile(blank_profile);
    std::mt19937 random{20260112};
    for (int round = 0; round < 40; ++round) {
        const SourceText source{"home.yaml", mutated(whole, random)};
        CAPTURE(round);
        for (const Finding& finding : read_profile(source).findings) check_finding(finding, source);
    }
}

TEST_CASE("every field of the dictionary, taken out or made unreadable, is answered or optional") {
    const std::string whole = example_profile(blank_profile);
    std::size_t lines = 0;
    for (std::size_t begin = 0; begin < whole.size();) {
        const std::size_t end = whole.find('\n', begin);
        const std::string line = whole.substr(begin, end - begin);
        const auto colon = line.find(": ");
        if (line.find('#') == std::string::npos && colon != std::string::npos && line.find("- ") == std::string::npos) {
            ++lines;
            CAPTURE(line);
            std::string empty = whole;
            empty.erase(begin + colon + 1, end - begin - colon - 1);
            const auto findings = read_profile({"home.yaml", empty}).findings;
            REQUIRE(findings.size() == 1);
            CHECK(findings[0].rule == "value-empty");
            CHECK(findings[0].severity == Severity::refuse);
        }
        begin = end + 1;
    }
    CHECK(lines > 300);
}
