#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr double kMm = 72 / 25.4;

constexpr const char* kHead = "## {.timeline}\n\n| Hours without power | | | |\n|---|---|---|---|\n";

std::string row(const std::string& name, int from, int to, const std::string& figure, const std::string& words) {
    return fmt::format("| {} | {} h {} min | {} h {} min | ![What it shows](figure:{}) {} |\n", name, from / 60,
                       from % 60, to / 60, to % 60, figure, words);
}

/// Outlines of bars: boxes that are neither text nor flags, in reading order.
std::vector<Box> bars(const PlacedSheet& sheet) {
    std::vector<Box> found;
    for (const PlacedItem& item : sheet.pages.front().items)
        if (item.kind == PlacedItem::Kind::box && !item.box.filled && item.origin.role == "figure")
            found.push_back(item.box);
    return found;
}

/// Black that a filling lays down inside its bar, without the outline, as a share of the bar.
double black_share(const PlacedSheet& sheet) {
    double black = 0;
    double whole = 0;
    for (const PlacedItem& item : sheet.pages.front().items) {
        if (item.origin.role != "figure") continue;
        if (item.kind == PlacedItem::Kind::box && !item.box.filled) whole = item.box.width * item.box.height;
        if (item.kind == PlacedItem::Kind::box && item.box.filled) black += item.box.width * item.box.height;
    }
    for (const PlacedItem& item : sheet.pages.front().items) {
        const bool hatch = item.kind == PlacedItem::Kind::rule && item.origin.role == "figure" &&
                           std::abs(item.rule.stroke - 0.35 * kMm) < 0.01;
        if (!hatch) continue;
        black += item.rule.stroke * std::hypot(item.rule.to.x - item.rule.from.x, item.rule.to.y - item.rule.from.y);
    }
    return whole > 0 ? black / whole : 1;
}

/// How a filling looks, whatever its place: slopes of its lines, dots, a solid field, dashes.
std::string look_of(const PlacedSheet& sheet) {
    std::set<std::string> traits;
    double axis = 0;
    for (const PlacedItem& item : sheet.pages.front().items)
        if (item.kind == PlacedItem::Kind::rule && std::abs(item.rule.stroke - 0.5 * kMm) < 0.01 &&
            std::abs(item.rule.from.y - item.rule.to.y) < 0.01 && item.origin.role == "figure")
            axis = std::max(axis, item.rule.from.y);
    for (const PlacedItem& item : sheet.pages.front().items) {
        if (item.origin.role != "figure") continue;
        if (item.kind == PlacedItem::Kind::box && item.box.filled)
            traits.insert(item.box.width < 2 * kMm ? "dots" : "solid");
        if (item.kind != PlacedItem::Kind::rule || item.rule.from.y > axis - 0.1) continue;
        const double across = item.rule.to.x - item.rule.from.x;
        const double down = item.rule.to.y - item.rule.from.y;
        if (item.rule.ink == Ink::grey) continue;  // lines of the hours
        const bool dash = std::abs(item.rule.stroke - 0.5 * kMm) < 0.01;
        traits.insert(dash                         ? "dashes"
                      : std::abs(across) < 0.01    ? "upright"
                      : std::abs(down) < 0.01      ? "level"
                      : (across > 0) == (down < 0) ? "rising"
                                                   : "falling");
    }
    std::string look;
    for (const std::string& trait : traits) look += trait + " ";
    return look;
}

const char* const kHatches[]{"bar-solid", "bar-rising", "bar-falling", "bar-upright",
                             "bar-level", "bar-cross",  "bar-dots",    "bar-open"};

}  // namespace

TEST_CASE("the bars of a chart are as long as their hours, on one scale, and begin where the one before ends") {
    std::mt19937 chance{1};
    for (int round = 0; round < 40; ++round) {
        std::string text = kHead;
        std::vector<std::pair<int, int>> times;
        int at = 0;
        const int rows = 2 + static_cast<int>(chance() % 4);
        for (int bar = 0; bar < rows; ++bar) {
            const int length = 30 + 15 * static_cast<int>(chance() % 30);
            times.emplace_back(at, at + length);
            text += row(fmt::format("Source {}", bar), at, at + length, bar % 2 ? "bar-rising" : "bar-dots", "words");
            at += length;
        }
        CAPTURE(text);
        const LaidOut out = laid_out(document_of(text));
        REQUIRE(out.findings.empty());
        const std::vector<Box> drawn = bars(out.sheet);
        REQUIRE(drawn.size() == times.size());
        const double points_per_minute = drawn[0].width / (times[0].second - times[0].first);
        for (std::size_t bar = 0; bar < drawn.size(); ++bar) {
            const double minutes = times[bar].second - times[bar].first;
            // Within 3 minutes: 0.05 h is what a reader can see at most.
            CHECK(drawn[bar].width / points_per_minute == doctest::Approx(minutes).epsilon(3 / minutes));
            if (bar > 0)
                CHECK(drawn[bar].corner.x ==
                      doctest::Approx(drawn[bar - 1].corner.x + drawn[bar - 1].width).epsilon(0.0005));
        }
        CHECK(misplaced(out.sheet).empty());
    }
}

TEST_CASE("each kind of bar has a filling of its own, and none is too fine for a fax") {
    // Lines of 0.35 mm at 2 mm stay distinct at 204 dots an inch; 0.2 mm at 0.8 mm do not: measured.
    std::map<std::string, std::string> looks;
    for (const char* hatch : kHatches) {
        const LaidOut out = laid_out(document_of(kHead + row("Source", 0, 120, hatch, "")));
        REQUIRE(out.findings.empty());
        const std::string look = look_of(out.sheet);
        CAPTURE(std::string{hatch});
        CAPTURE(look);
        CHECK_FALSE(look.empty());
        CHECK(looks.emplace(look, hatch).second);
        if (std::string{hatch} != "bar-solid" && std::string{hatch} != "bar-open") {
            CHECK(black_share(out.sheet) > 0.08);
            CHECK(black_share(out.sheet) < 0.45);
        }
    }
    CHECK(looks.size() == std::size(kHatches));
}

TEST_CASE("no line of a filling leaves its bar or crosses words in it") {
    for (const char* hatch : kHatches) {
        const LaidOut marked =
            laid_out(document_of(kHead + row("Source", 30, 700, hatch, "To 11 h 40 min") +
                                 "| LEAVE BY 6 h 0 min | | 6 h 0 min | ![A heavy line](figure:mark-heavy) |\n"
                                 "| 5 h 45 min: half | | 5 h 45 min | ![A line in dashes](figure:mark-dashed) |\n"));
        CAPTURE(std::string{hatch});
        REQUIRE(marked.findings.empty());
        const std::vector<Box> outlines = bars(marked.sheet);
        for (const PlacedItem& item : marked.sheet.pages.front().items) {
            const bool line = item.kind == PlacedItem::Kind::rule && item.origin.role == "figure" &&
                              std::abs(item.rule.stroke - 0.35 * kMm) < 0.01;
            if (!line || outlines.empty()) continue;
            const Box& bar = outlines.front();
            const bool tick = item.rule.from.y > bar.corner.y + bar.height + 1;
            if (tick) continue;
            for (const Point& end : {item.rule.from, item.rule.to}) {
                CHECK(end.x >= bar.corner.x - 0.02);
                CHECK(end.x <= bar.corner.x + bar.width + 0.02);
                CHECK(end.y >= bar.corner.y - 0.02);
                CHECK(end.y <= bar.corner.y + bar.height + 0.02);
            }
        }
        CHECK(misplaced(marked.sheet).empty());
    }
}

TEST_CASE("what cannot be drawn to scale is refused, never drawn wrong") {
    const struct {
        const char* row;
        const char* rule;
    } rows[] = {
        {"| A | 0 h 0 min | soon | ![x](figure:bar-rising) w |", "chart-time-unreadable"},
        {"| A | 0 h 0 min | 3 h | ![x](figure:bar-rising) w |", "chart-time-unreadable"},
        {"| A | | 3 h 0 min | ![x](figure:bar-rising) w |", "chart-time-unreadable"},
        {"| A | 4 h 0 min | 3 h 0 min | ![x](figure:bar-rising) w |", "chart-time-unreadable"},
        {"| A | 0 h 0 min | 3 h 75 min | ![x](figure:bar-rising) w |", "chart-time-unreadable"},
        {"| A | 0 h 0 min | 3 h 0 min | ![x](figure:bar-green) w |", "figure-unknown"},
        {"| A | 0 h 0 min | 3 h 0 min | w |", "figure-unknown"},
        {"| A | 1 h 0 min | 3 h 0 min | ![x](figure:mark-heavy) |", "chart-time-unreadable"},
        {"| A | | 3 h 0 min | ![x](figure:mark-heavy) w |", "part-without-place"},
    };
    for (const auto& one : rows) {
        CAPTURE(std::string{one.row});
        const LaidOut out = laid_out(document_of(std::string{kHead} + one.row + "\n"));
        REQUIRE(out.findings.size() == 1);
        CHECK(out.findings.front().rule == one.rule);
        CHECK(out.findings.front().severity == Severity::refuse);
    }
}

TEST_CASE("all words of a chart are there, in bars, beside them or below their names, and on no other") {
    std::mt19937 chance{3};
    for (int round = 0; round < 60; ++round) {
        std::string text = kHead;
        const int rows = 1 + static_cast<int>(chance() % 6);
        std::vector<std::string> said;
        for (int bar = 0; bar < rows; ++bar) {
            const int from = 15 * static_cast<int>(chance() % 60);
            const std::string words = fmt::format("To{}x and some words", bar);
            said.push_back(fmt::format("To{}x", bar));
            text += row(fmt::format("Source number {}", bar), from, from + 15 * static_cast<int>(chance() % 60),
                        kHatches[chance() % std::size(kHatches)], words);
        }
        for (int mark = 0; mark < static_cast<int>(chance() % 4); ++mark) {
            const int at = 15 * static_cast<int>(chance() % 60);
            said.push_back(fmt::format("Mark{}x", mark));
            text += fmt::format("| Mark{}x is here | | {} h {} min | ![A line](figure:{}) |\n", mark, at / 60, at % 60,
                                mark % 2 ? "mark-heavy" : "mark-dashed");
        }
        CAPTURE(text);
        const LaidOut out = laid_out(document_of(text, {}, round % 2 ? "orientation: landscape\n" : ""));
        REQUIRE(out.findings.empty());
        CHECK(misplaced(out.sheet).empty());
        const std::vector<std::string> placed = body_words(out.sheet);
        for (const std::string& word : said) CHECK(std::ranges::count(placed, word) == 1);
    }
}

TEST_CASE("what stands below a rule across does not lengthen the axis") {
    const std::string battery = row("Battery", 0, 330, "bar-rising", "To 5 h 30 min");
    const LaidOut alone = laid_out(document_of(kHead + battery));
    const LaidOut with_oxygen =
        laid_out(document_of(kHead + battery + "| | | | |\n" + row("Oxygen", 0, 6000, "bar-dots", "100 h 0 min")));
    REQUIRE(with_oxygen.findings.empty());
    // The same axis, or nearly: names of other lengths move where it begins.
    CHECK(bars(with_oxygen.sheet)[0].width == doctest::Approx(bars(alone.sheet)[0].width).epsilon(0.03));
    CHECK(bars(with_oxygen.sheet)[1].width > bars(with_oxygen.sheet)[0].width);
    const bool arrow = std::ranges::any_of(with_oxygen.sheet.pages.front().items, [](const PlacedItem& item) {
        return item.kind == PlacedItem::Kind::path && item.path.filled;
    });
    CHECK(arrow);
}

TEST_CASE("a landscape page is the portrait page turned, with the binding above") {
    const Document document = document_of("Words.", {}, "orientation: landscape\n");
    for (const Paper paper : {Paper::letter, Paper::a4}) {
        const PlacedPage turned = laid_out(document, {paper, 1}).sheet.pages.front();
        const PlacedPage upright = laid_out(document_of("Words."), {paper, 1}).sheet.pages.front();
        CHECK(turned.width == upright.height);
        CHECK(turned.height == upright.width);
        CHECK(turned.margin_top == doctest::Approx(20 * kMm));
        CHECK(turned.margin_left >= 0.5 * 72 - 0.01);
        CHECK(turned.width - turned.margin_left - turned.margin_right == doctest::Approx(254 * kMm));
    }
}

TEST_CASE("a week of a calendar holds its days and their tasks, one box each; what may not slip is white on black") {
    const LaidOut out =
        laid_out(document_of("## May {.calendar}\n\n| Mon | Tue |\n|---|---|\n"
                             "| **1 May** | **2** [ ] Filters [ ] **Tube change** |\n"));
    REQUIRE(out.findings.empty());
    int boxes = 0;
    int white = 0;
    for (const PlacedItem& item : out.sheet.pages.front().items) {
        boxes += item.origin.role == "check box";
        white += item.kind == PlacedItem::Kind::text && item.text.ink == Ink::white && item.origin.role == "calendar";
    }
    CHECK(boxes == 2);
    CHECK(white >= 1);
    CHECK(misplaced(out.sheet).empty());
    const std::vector<std::string> words = body_words(out.sheet);
    for (const char* word : {"Mon", "Tue", "1", "2", "Filters", "Tube", "change"})
        CHECK_MESSAGE(std::ranges::count(words, word) == 1, std::string{word});
}
