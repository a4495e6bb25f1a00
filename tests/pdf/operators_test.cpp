#include <doctest/doctest.h>
#include <limits>
#include <sstream>
#include <string>

#include "drawings.hpp"
#include "pdf/content.hpp"
#include "pdf/number.hpp"

using namespace ventfolio;
using namespace ventfolio::trial;
using namespace std::string_literals;

namespace {

std::string number(double value) {
    std::string out;
    append_number(out, value);
    return out;
}

std::string operators(std::vector<PlacedItem> items) {
    const std::string all = page_content(page(200, 100, std::move(items)), {.regular = "F1", .bold = "F2"}).operators;
    // What belongs to no element is an artifact; the rows below are about what stands inside.
    const std::string begin = "/Artifact BMC\n";
    const std::string end = "EMC\n";
    if (all.empty()) return all;
    REQUIRE(all.starts_with(begin));
    REQUIRE(all.ends_with(end));
    return all.substr(begin.size(), all.size() - begin.size() - end.size());
}

PlacedItem plain(std::u32string text, Face face = Face::regular) {
    PlacedItem item;
    item.text.text = std::move(text);
    item.text.size = 12;
    item.text.face = face;
    item.text.origin = {10, 20};
    return item;
}

}  // namespace

TEST_CASE("header and footer are artifacts that say what they are, a line beside them is one that does not") {
    const auto in_role = [](PlacedItem item, const char* role) {
        item.origin.role = role;
        return item;
    };
    const std::string all =
        page_content(page(200, 100,
                          {in_role(plain(U"a"), "header"), in_role(plain(U"b"), "header"), rule({0, 20}, {99, 20}, 1),
                           in_role(plain(U"c"), "footer"), in_role(plain(U"d"), "code")}),
                     {.regular = "F1", .bold = "F2"})
            .operators;
    std::string marks;
    std::istringstream lines{all};
    for (std::string text; std::getline(lines, text);)
        if (text.ends_with("BDC") || text.ends_with("BMC") || text == "EMC") marks += text + "\n";
    // ISO 32000-1, 14.8.2.2.2 and table 330 with its Subtype for running heads.
    CHECK(marks ==
          "/Artifact <</Type /Pagination /Subtype /Header>> BDC\nEMC\n"
          "/Artifact BMC\nEMC\n"
          "/Artifact <</Type /Pagination /Subtype /Footer>> BDC\nEMC\n");
}

TEST_CASE("numbers are written as ISO 32000-1, 7.3.3 allows, to 1/100") {
    struct Row {
        double value;
        const char* printed;
    };
    for (const Row& row :
         {Row{0, "0"}, Row{-0.0, "0"}, Row{1, "1"}, Row{-1, "-1"}, Row{0.5, "0.5"}, Row{-0.05, "-0.05"},
          Row{0.004, "0"}, Row{-0.004, "0"}, Row{0.006, "0.01"}, Row{12.3, "12.3"}, Row{12.34, "12.34"},
          Row{841.8898, "841.89"}, Row{1.999, "2"}, Row{1e-9, "0"}, Row{123456.78, "123456.78"}, Row{1e6, "1000000"}}) {
        CAPTURE(row.value);
        CHECK(number(row.value) == row.printed);
    }
}

TEST_CASE("what is not a place on paper is refused") {
    for (const double value : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                               -std::numeric_limits<double>::infinity(), 1e7}) {
        CAPTURE(value);
        CHECK_THROWS_AS(number(value), std::logic_error);
        CHECK_THROWS_AS(operators({rule({0, 0}, {value, 0}, 1)}), std::logic_error);
        CHECK_THROWS_AS(operators({box(0, value, 10, 10, 0, true)}), std::logic_error);
        CHECK_THROWS_AS(operators({box(0, 0, 10, 10, value, false)}), std::logic_error);
    }
    CHECK_THROWS_AS(operators({rule({0, 0}, {1, 0}, 0)}), std::logic_error);
    CHECK_THROWS_AS(operators({rule({0, 0}, {1, 0}, -1)}), std::logic_error);
    CHECK_THROWS_AS(operators({path({{Path::Segment::Kind::line, {1, 1}, {}, {}}}, 1, false)}), std::logic_error);
    PlacedItem without_size = plain(U"abc");
    without_size.text.size = 0;
    CHECK_THROWS_AS(operators({without_size}), std::logic_error);
    PlacedItem short_of_kerns = plain(U"abc");
    short_of_kerns.text.kerns = {1, 2};
    CHECK_THROWS_AS(operators({short_of_kerns}), std::logic_error);
}

// The operators are those of ISO 32000-1, annex A; y runs upwards from the bottom edge.
TEST_CASE("each item becomes its operators") {
    using Kind = Path::Segment::Kind;
    PlacedItem kerned = plain(U"ToA");
    kerned.text.kerns = {-45, 0, 12.5};
    struct Row {
        std::string what;
        std::vector<PlacedItem> items;
        std::string expected;
    };
    const Row rows[] = {
        {"nothing", {}, ""},
        {"a kern moves the next letter; positive numbers in TJ move left",
         {kerned},
         "BT\n/F1 12 Tf\n10 80 Td\n[(" + "\0T"s + ")45(" + "\0o\0A"s + ")] TJ\nET\n"},
        {"signs of the string syntax are escaped",
         {plain(U"\u0128\u0129\u015C\u010D")},
         "BT\n/F1 12 Tf\n10 80 Td\n[(\x01\\(\x01\\)\x01\\\\\x01\\r)] TJ\nET\n"},
        {"an outline", {box(10, 20, 30, 40, 0.5, false)}, "0.5 w\n10 40 30 40 re S\n"},
        {"an area", {box(10, 20, 30, 40, 0, true)}, "10 40 30 40 re f\n"},
        {"both", {box(10, 20, 30, 40, 1, true)}, "10 40 30 40 re B\n"},
        {"a white area", {box(10, 20, 30, 40, 0, true, Ink::white)}, "1 g\n10 40 30 40 re f\n"},
        {"neither", {box(10, 20, 30, 40, 0, false)}, ""},
        {"a grey rule, #595959", {rule({10, 20}, {30, 20}, 0.25, Ink::grey)}, "0.35 G\n0.25 w\n10 80 m 30 80 l S\n"},
        {"a curve with round corners",
         {path({{Kind::move, {0, 0}, {}, {}},
                {Kind::line, {5, 0}, {}, {}},
                {Kind::curve, {6, 1}, {7, 2}, {8, 3}},
                {Kind::close, {}, {}, {}}},
               2, false)},
         "2 w\n1 j\n0 100 m\n5 100 l\n6 99 7 98 8 97 c\nh\nS\n"},
        {"the state is written once",
         {rule({0, 0}, {1, 0}, 2), rule({0, 1}, {1, 1}, 2), box(0, 0, 1, 1, 2, false)},
         "2 w\n0 100 m 1 100 l S\n0 99 m 1 99 l S\n0 99 1 1 re S\n"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        CHECK(operators(row.items) == row.expected);
    }
}

TEST_CASE("items are drawn in the order in which they stand") {
    const std::string drawn =
        operators({box(0, 0, 10, 10, 0, true), plain(U"a"), box(0, 0, 10, 10, 0, true, Ink::white)});
    CHECK(drawn.find("re f") < drawn.find("TJ"));
    CHECK(drawn.find("TJ") < drawn.rfind("re f"));
}

TEST_CASE("a picture is stretched over its area, and one without a name is refused") {
    PlacedItem item;
    item.kind = PlacedItem::Kind::picture;
    item.picture = {{10, 20}, 30, 15, std::make_shared<const Picture>(Picture{1, 1, "x", "digest"})};
    const Picture* picture = item.picture.picture.get();
    const PlacedPage placed = page(200, 100, {item});
    // ISO 32000-1, 8.3.4 and 8.9.5: the unit square becomes 30 x 15 with its lower left corner at 10, 100 - 35.
    CHECK(page_content(placed, {}, {{picture, "X1"}}).operators ==
          "/Artifact BMC\nq 30 0 0 15 10 65 cm /X1 Do Q\nEMC\n");
    CHECK_THROWS_AS(page_content(placed, {}), std::logic_error);
}
