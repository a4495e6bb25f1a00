#include "value_reader.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>

using namespace ventfolio;
using namespace ventfolio::testing;

// What is not on paper must not come back, or the other tests here prove nothing.

namespace {

const PlacedSheet& settings_table() {
    return *sheets_named(set_demo_home("adult-tracheostomy"), {"setting-check"}).front();
}

/// Reads one value from a settings table after a change of what is drawn of it.
ReadValue read_changed(const WrittenValue& value, const std::function<void(PlacedItem&)>& change) {
    static PlacedSheet changed;
    changed = settings_table();
    std::size_t changes = 0;
    for (PlacedPage& page : changed.pages)
        for (PlacedItem& item : page.items)
            if (is_text(item) && item.origin.field == value.field) {
                change(item);
                ++changes;
            }
    REQUIRE(changes > 0);
    LetterReader reader{{&changed}, kFax};
    return read_values(reader, {value}).front();
}

void swap_letter(PlacedItem& item, char32_t from, char32_t to) { std::ranges::replace(item.text.text, from, to); }

constexpr const char* kPressure = "prescriptions.0.alarms.high_pressure";
constexpr const char* kTime = "prescriptions.0.inspiratory_time";

}  // namespace

TEST_CASE("another number, another unit and no ink are not taken for the value") {
    const WrittenValue pressure{kPressure, kPressure, {"31 cmH2O"}, "31"};
    struct Row {
        const char* what;
        std::function<void(PlacedItem&)> change;
        bool comes_back;
    };
    const Row rows[] = {
        {"as it is", [](PlacedItem&) {}, true},
        {"37 for 31", [](PlacedItem& item) { swap_letter(item, U'1', U'7'); }, false},
        {"81 for 31", [](PlacedItem& item) { swap_letter(item, U'3', U'8'); }, false},
        {"cmHgO for cmH2O", [](PlacedItem& item) { swap_letter(item, U'2', U'g'); }, false},
        {"nothing", [](PlacedItem& item) { item.text.ink = Ink::white; }, false},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.what});
        const ReadValue read = read_changed(pressure, row.change);
        REQUIRE(!read.places.empty());
        for (const ReadPlace& place : read.places) CHECK_MESSAGE(place.whole == row.comes_back, place.looks);
    }
}

TEST_CASE("a decimal point that is not read counts only where its ink is seen") {
    const WrittenValue time{kTime, kTime, {"1.2 s"}, "1.2"};
    for (const ReadPlace& place : read_changed(time, [](PlacedItem&) {}).places)
        CHECK_MESSAGE(place.whole, place.looks);
    // A blank in its place leaves 1 and 2; the kerns keep the 2 where it was.
    const ReadValue read = read_changed(time, [](PlacedItem& item) { swap_letter(item, U'.', U'\u00A0'); });
    for (const ReadPlace& place : read.places) CHECK_MESSAGE(!place.whole, place.looks);
}

TEST_CASE("the points of the figures on paper are seen, those that are not there are not") {
    const PlacedSheet& sheet = settings_table();
    const LetterReader reader{{&sheet}, kFax};
    PlacedSheet without = sheet;
    for (PlacedPage& page : without.pages)
        std::erase_if(page.items, [](const PlacedItem& item) {
            return is_text(item) && item.text.text.find(U'.') != std::u32string::npos;
        });
    const std::vector<trial::DrawnPage> blank = copied({&without}, kFax);
    std::size_t points = 0;
    for (std::size_t box = 0; box < reader.boxes().size(); ++box) {
        if (reader.boxes()[box].points.empty()) continue;
        ++points;
        CHECK(reader.points_are_seen(box, reader.pages()));
        CHECK(!reader.points_are_seen(box, blank));
    }
    CHECK(points >= 6);  // the times and volumes with a point on two sides
}
