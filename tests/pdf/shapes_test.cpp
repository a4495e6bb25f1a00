#include <doctest/doctest.h>
#include <string>
#include <vector>

#include "drawings.hpp"
#include "programs.hpp"

using namespace ventfolio;
using namespace ventfolio::trial;

namespace {

struct Probe {
    std::size_t x, y;
    int grey;
};

// At 72 dots an inch a point is a pixel, so edges on whole points give whole pixels.
void check(const std::vector<PlacedItem>& items, const std::vector<Probe>& probes) {
    const DrawnPage picture = DrawnPage::of(one_page(page(200, 100, items)), 72);
    REQUIRE(picture.width() == 200);
    REQUIRE(picture.height() == 100);
    for (const Probe& probe : probes) {
        CAPTURE(probe.x);
        CAPTURE(probe.y);
        CHECK(picture.at(probe.x, probe.y) == doctest::Approx(probe.grey).epsilon(0.01));
    }
}

}  // namespace

TEST_CASE("an area covers its points and no others") {
    check({box(10, 20, 30, 40, 0, true)}, {{10, 20, 0},
                                           {39, 20, 0},
                                           {10, 59, 0},
                                           {39, 59, 0},
                                           {25, 40, 0},
                                           {9, 20, 255},
                                           {40, 20, 255},
                                           {10, 19, 255},
                                           {10, 60, 255},
                                           {39, 60, 255}});
}

TEST_CASE("an outline lies half inside and half outside its edge, with square corners") {
    check({box(10, 20, 30, 40, 2, false)}, {{9, 19, 0},
                                            {10, 20, 0},
                                            {40, 60, 0},
                                            {39, 59, 0},
                                            {25, 19, 0},
                                            {25, 20, 0},
                                            {9, 40, 0},
                                            {11, 21, 255},
                                            {25, 40, 255},
                                            {8, 40, 255},
                                            {25, 18, 255},
                                            {41, 61, 255}});
}

TEST_CASE("a rule ends where it is told to") {
    check({rule({20, 50}, {120, 50}, 4), rule({150, 10}, {150, 90}, 2)}, {{20, 48, 0},
                                                                          {119, 51, 0},
                                                                          {19, 50, 255},
                                                                          {120, 50, 255},
                                                                          {70, 47, 255},
                                                                          {70, 52, 255},
                                                                          {149, 10, 0},
                                                                          {150, 89, 0},
                                                                          {149, 9, 255},
                                                                          {150, 90, 255}});
}

TEST_CASE("grey is #595959 and white covers black") {
    check(
        {rule({20, 50}, {120, 50}, 4, Ink::grey), box(0, 0, 40, 40, 0, true), box(10, 10, 20, 20, 0, true, Ink::white)},
        {{70, 50, 0x59}, {5, 5, 0}, {20, 20, 255}, {35, 35, 0}});
}

TEST_CASE("a path is filled up to its curves") {
    using Kind = Path::Segment::Kind;
    // A quarter of a disc of radius 60 about (20, 20). 0.5523 is the usual factor for a circle by Bezier curves:
    // the curve then stays within 0.03 % of the radius (value from memory).
    const double pull = 60 * 0.5523;
    const PlacedItem quarter = path({{Kind::move, {20, 20}, {}, {}},
                                     {Kind::line, {80, 20}, {}, {}},
                                     {Kind::curve, {80, 20 + pull}, {20 + pull, 80}, {20, 80}},
                                     {Kind::close, {}, {}, {}}},
                                    0, true);
    check({quarter}, {{21, 21, 0}, {60, 60, 0}, {64, 64, 255}, {79, 21, 0}, {21, 79, 0}, {81, 21, 255}, {19, 30, 255}});
    // An area of pi r^2 / 4.
    CHECK(DrawnPage::of(one_page(page(200, 100, {quarter})), 72).ink() ==
          doctest::Approx(3.14159 * 3600 / 4).epsilon(0.005));
}

TEST_CASE("a stroked path has round corners") {
    using Kind = Path::Segment::Kind;
    const PlacedItem corner = path(
        {{Kind::move, {20, 80}, {}, {}}, {Kind::line, {20, 20}, {}, {}}, {Kind::line, {80, 20}, {}, {}}}, 20, false);
    check({corner}, {{20, 11, 0}, {11, 20, 0}, {10, 10, 255}, {11, 11, 255}, {20, 81, 255}, {20, 78, 0}});
}
