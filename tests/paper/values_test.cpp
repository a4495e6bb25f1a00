#include <doctest/doctest.h>

#include <algorithm>

#include "value_reader.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

// What the profile says must come back from paper that was sent, scanned or fitted. Expected are the profile's own
// words; tesseract is the reader, and each value is read alone, as someone reads who looks for one number.

namespace {

/// What is read in trouble, and the table of settings.
const std::vector<std::string> kSheets{"bedside-card", "responder-sheet", "wallet-card", "outage-plan",
                                       "setting-check"};

void all_come_back(const char* home, const std::vector<std::string>& names, const Copy& copy) {
    const SetHome& set = set_demo_home(home);
    REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
    CAPTURE(std::string{home});
    CAPTURE(std::string{copy.name});
    LetterReader reader{sheets_named(set, names), copy};
    std::size_t places = 0;
    std::size_t at_once = 0;
    for (const ReadValue& read : read_values(reader, written_values(home))) {
        CAPTURE(read.value.path);
        CAPTURE(read.value.whole.front());
        const bool setting = read.value.path.starts_with("prescriptions.");
        if (setting) {
            CHECK(!read.places.empty());
            CHECK(std::ranges::any_of(read.places, &ReadPlace::whole));
        }
        for (const ReadPlace& place : read.places) {
            ++places;
            at_once += place.at_once ? 1 : 0;
            CHECK_MESSAGE(place.number, "page " << reader.boxes()[place.boxes.front()].page + 1 << ": " << place.looks);
        }
    }
    CHECK(places >= 60);
    MESSAGE(std::string{home} << ", " << std::string{copy.name} << ": " << at_once << " of " << places
                              << " at the first look");
    // A reader who has to look closer at more than a few has paper that is hard to read.
    CHECK(static_cast<double>(at_once) >= 0.85 * static_cast<double>(places));
}

}  // namespace

TEST_CASE("every setting, alarm limit and phone number comes back from a fax, a grey scan and a page fitted to paper") {
    for (const Copy& copy : kCopies) all_come_back("adult-tracheostomy", kSheets, copy);
}

TEST_CASE("every value of every sheet of every demo home comes back from every copy" * doctest::skip()) {
    for (const char* home : kAllHomes)
        for (const Copy& copy : kCopies) all_come_back(home, {}, copy);
}
