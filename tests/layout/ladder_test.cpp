#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "documents.hpp"
#include "sheets/two_languages.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// A flowchart of words that never come twice.
class RandomLadder {
  public:
    explicit RandomLadder(unsigned seed) : random_{seed} {
        steps = 2 + pick(13);
        markdown = "## {.ladder yes=\"Yes\" overleaf=\"Go on to page {page}\" again=\"on page 1\"}\n\n";
        if (pick(2) == 0) markdown += passage(14) + "\n\n";
        for (std::size_t at = 1; at < steps; ++at) add_step(at == 1);
        markdown += "1. ![Stop here](figure:end) " + passage(8) + "\n\n";
        if (pick(3) == 0) markdown += passage(9) + "\n\n";
        if (pick(2) == 0) markdown += "- ![A box](figure:action) " + passage(2) + "\n\n";
        if (pick(2) == 0) markdown += "## {.tight}\n\n" + passage(12) + "\n";
    }

    std::string markdown;
    std::size_t steps;
    std::vector<std::string> words;  ///< in the order of the text
    std::set<std::string> head;      ///< of the first question and its box: they come again on later sides

  private:
    std::size_t pick(std::size_t below) { return random_() % below; }

    std::string word() {
        constexpr std::string_view kLetters = "aeioumnrstl";
        std::string text = fmt::format("w{}", words.size());
        for (std::size_t more = pick(6); more > 0; --more) text += kLetters[pick(kLetters.size())];
        words.push_back(text);
        return text;
    }
    std::string passage(std::size_t most) {
        std::string text = word();
        for (std::size_t more = pick(most); more > 0; --more) text += " " + word();
        return text;
    }

    void add_step(bool first) {
        const bool box = first && pick(4) != 0;
        if (!box && pick(3) == 0) {
            markdown += "1. **" + passage(5) + "** ";
            markdown += passage(9) + "\n";
            return;
        }
        const std::size_t before = words.size();
        markdown += fmt::format("1. **{}?**\n", passage(pick(2) == 0 ? 2 : 9));
        if (box) return add_box(before);
        constexpr const char* kKinds[]{"", "", "![Stop here](figure:end) ", "![Go there](figure:chart) "};
        markdown += fmt::format("   - No: {}", kKinds[pick(4)]);
        markdown += passage(12) + "\n";
    }

    void add_box(std::size_t before) {
        markdown += "   - No: **" + passage(2) + "** ";
        markdown += passage(4) + "\n";
        for (std::size_t items = 1 + pick(5); items > 0; --items) markdown += "     1. " + passage(8) + "\n";
        head.insert(words.begin() + static_cast<std::ptrdiff_t>(before), words.end());
    }

    std::mt19937 random_;
};

struct Area {
    double left, top, right, bottom;
    bool overlaps(const Area& other, double tolerance) const {
        return std::min(right, other.right) - std::max(left, other.left) > tolerance &&
               std::min(bottom, other.bottom) - std::max(top, other.top) > tolerance;
    }
};

/// The corners of a symbol's outline. A rounded corner is cut off twice: what lies inside these lies inside the symbol.
std::vector<Point> corners_of(const PlacedItem& item) {
    if (item.kind == PlacedItem::Kind::box) {
        const Box& box = item.box;
        return {box.corner,
                {box.corner.x + box.width, box.corner.y},
                {box.corner.x + box.width, box.corner.y + box.height},
                {box.corner.x, box.corner.y + box.height}};
    }
    std::vector<Point> corners;
    for (const Path::Segment& segment : item.path.segments) {
        const bool curve = segment.kind == Path::Segment::Kind::curve;
        if (segment.kind == Path::Segment::Kind::close) continue;
        if (curve) {
            const Point from = corners.back();
            corners.push_back({(from.x + 3 * segment.a.x + 3 * segment.b.x + segment.c.x) / 8,
                               (from.y + 3 * segment.a.y + 3 * segment.b.y + segment.c.y) / 8});
        }
        corners.push_back(curve ? segment.c : segment.a);
    }
    return corners;
}

Area area_of(const std::vector<Point>& corners) {
    Area area{1e9, 1e9, -1e9, -1e9};
    for (const Point& corner : corners)
        area = {std::min(area.left, corner.x), std::min(area.top, corner.y), std::max(area.right, corner.x),
                std::max(area.bottom, corner.y)};
    return area;
}

/// The outlines here are convex and go round clockwise.
bool inside(const std::vector<Point>& corners, Point point) {
    for (std::size_t at = 0; at < corners.size(); ++at) {
        const Point& from = corners[at];
        const Point& to = corners[(at + 1) % corners.size()];
        if ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x) < -0.01) return false;
    }
    return true;
}

bool is_symbol(const PlacedItem& item) {
    static const std::set<std::string> kRoles{"question", "action", "end", "chart", "steps"};
    const bool outline = item.kind == PlacedItem::Kind::path ? item.path.stroke > 0
                                                             : item.kind == PlacedItem::Kind::box && !item.box.filled;
    return outline && kRoles.contains(item.origin.role);
}

/// The letters: capitals are 0.714 of the size high, a descender reaches 0.2 below.
Area letters_of(const PlacedItem& item) {
    const TextRun& run = item.text;
    return {run.origin.x, run.origin.y - 0.714 * run.size, run.origin.x + run.width, run.origin.y + 0.2 * run.size};
}

struct Sorted {
    std::vector<const PlacedItem*> symbols, texts, lines;
};
Sorted sorted(const PlacedPage& page) {
    Sorted all;
    for (const PlacedItem& item : page.items) {
        if (item.origin.node == Origin::kFurniture) continue;
        if (is_symbol(item)) all.symbols.push_back(&item);
        if (item.kind == PlacedItem::Kind::text) all.texts.push_back(&item);
        if (item.kind == PlacedItem::Kind::rule && item.origin.role == "arrow") all.lines.push_back(&item);
    }
    return all;
}

std::string shown(const PlacedItem& item) {
    std::string text = item.origin.role + " ";
    for (const char32_t letter : item.text.text) text += utf8(letter);
    return text;
}

void check_symbols(const Sorted& page) {
    for (const PlacedItem* one : page.symbols)
        for (const PlacedItem* two : page.symbols)
            if (one < two)
                CHECK_MESSAGE(!area_of(corners_of(*one)).overlaps(area_of(corners_of(*two)), 0),
                              shown(*one) << " over " << shown(*two));
}

/// Each text of a step in the symbol of its own number, or in a box of steps.
void check_texts(const Sorted& page) {
    for (const PlacedItem* text : page.texts) {
        if (text->origin.role != "step") continue;
        const Area letters = letters_of(*text);
        const bool held = std::ranges::any_of(page.symbols, [&](const PlacedItem* symbol) {
            if (symbol->origin.node != text->origin.node && symbol->origin.role != "steps") return false;
            const std::vector<Point> corners = corners_of(*symbol);
            return inside(corners, {letters.left, letters.top}) && inside(corners, {letters.right, letters.top}) &&
                   inside(corners, {letters.left, letters.bottom}) && inside(corners, {letters.right, letters.bottom});
        });
        CHECK_MESSAGE(held, shown(*text) << " leaves its symbol");
    }
}

/// A line as an area, its ends taken off: they touch what it joins.
Area line_area(const PlacedItem& line, double ends) {
    const double half = line.rule.stroke / 2;
    const bool level = line.rule.from.y == line.rule.to.y;
    const double left = std::min(line.rule.from.x, line.rule.to.x);
    const double top = std::min(line.rule.from.y, line.rule.to.y);
    const double right = std::max(line.rule.from.x, line.rule.to.x);
    const double bottom = std::max(line.rule.from.y, line.rule.to.y);
    return level ? Area{left + ends, top - half, right - ends, bottom + half}
                 : Area{left - half, top + ends, right + half, bottom - ends};
}

void check_lines(const Sorted& page) {
    constexpr double kEnds = 2.5;  // pt: a head, or half of a line that is joined
    for (const PlacedItem* line : page.lines) {
        CHECK(line->rule.to.y >= line->rule.from.y);  // none goes up
        const Area whole = line_area(*line, 0);
        const Area middle = line_area(*line, kEnds);
        for (const PlacedItem* text : page.texts)
            CHECK_MESSAGE(!whole.overlaps(letters_of(*text), 0), "an arrow runs through " << shown(*text));
        for (const PlacedItem* symbol : page.symbols)
            CHECK_MESSAGE(!middle.overlaps(area_of(corners_of(*symbol)), 0.5), "an arrow runs into " << shown(*symbol));
        for (const PlacedItem* other : page.lines)
            if (line < other) CHECK_MESSAGE(!middle.overlaps(line_area(*other, kEnds), 0), "two arrows cross");
    }
}

std::string text_of_role(const PlacedPage& page, std::string_view role) {
    std::string text;
    for (const PlacedItem& item : page.items)
        if (item.kind == PlacedItem::Kind::text && item.origin.role == role)
            for (const char32_t letter : item.text.text) text += utf8(letter);
    return text;
}

/// A page goes on at the letter that the page before it ends with, and that one says where: the third is not overleaf.
void check_connectors(const PlacedSheet& sheet, std::size_t sides) {
    for (std::size_t at = 0; at < sides; ++at) {
        const std::string in = at == 0 ? "" : std::string(1, static_cast<char>('A' + at - 1));
        const std::string out =
            at + 1 == sides ? "" : fmt::format("{}Go on to page {}", static_cast<char>('A' + at), at + 2);
        CHECK(text_of_role(sheet.pages[at], "connector") == in + out);
    }
}

std::size_t sides_of(const PlacedSheet& sheet) {
    std::size_t sides = 0;
    for (const PlacedPage& page : sheet.pages)
        if (!sorted(page).symbols.empty()) ++sides;
    return sides;
}

}  // namespace

TEST_CASE("whatever a chart holds, its symbols keep apart, its words keep inside, its arrows cross nothing") {
    std::size_t whole = 0;
    std::map<std::size_t, std::size_t> with_sides;
    for (unsigned seed = 1; seed <= 200; ++seed) {
        const RandomLadder made{seed};
        const Document document = document_of(made.markdown);
        for (const PageSetup setup : {PageSetup{Paper::letter, 1}, PageSetup{Paper::a4, 1.5}}) {
            CAPTURE(seed);
            CAPTURE(setup.scale);
            CAPTURE(made.markdown);
            const LaidOut out = laid_out(document, setup);
            for (const Finding& finding : out.findings)
                CHECK_MESSAGE((finding.rule == "part-taller-than-page" || finding.rule == "word-wider-than-column"),
                              finding.message);
            if (!out.findings.empty()) continue;
            ++whole;
            CHECK(misplaced(out.sheet) == "");
            for (const PlacedPage& page : out.sheet.pages) {
                const Sorted items = sorted(page);
                check_symbols(items);
                check_texts(items);
                check_lines(items);
            }
            const std::size_t sides = sides_of(out.sheet);
            ++with_sides[sides];
            check_connectors(out.sheet, sides);

            // Reading order: the text's own. The first question and its box come again on later sides.
            std::vector<std::string> placed;
            std::set<std::string> known;
            for (std::string word : body_words(out.sheet)) {
                if (word.ends_with('?')) word.pop_back();
                if (!word.starts_with("w")) continue;
                const bool again = !known.insert(word).second;
                if (again) CHECK_MESSAGE(made.head.contains(word), word);
                if (!again) placed.push_back(word);
            }
            CHECK(placed == made.words);
        }
    }
    CHECK(whole > 330);
    CHECK(with_sides[1] > 50);
    CHECK(with_sides[2] > 50);
    CHECK(with_sides[3] > 10);
}

namespace {

/// A chart of this many questions with exits of one line, and an end.
std::string ladder_of(std::size_t questions) {
    std::string text =
        "## {.ladder yes=\"Yes\" overleaf=\"Go on overleaf\"}\n\n"
        "1. **Moving?**\n   - No: **Box**\n     1. First.\n     1. Second.\n     1. Third.\n     1. Fourth.\n";
    for (std::size_t at = 1; at < questions; ++at)
        text += fmt::format("1. **Is it number {} that alarms?**\n   - No: Wait, number {}.\n", at, at);
    return text + "1. ![Stop here](figure:end) Done.\n";
}

std::size_t rungs_on(const PlacedPage& page) {
    std::set<std::size_t> nodes;
    for (const PlacedItem& item : page.items)
        if (is_symbol(item) && item.box.width == 0) nodes.insert(item.origin.node);
    return nodes.size();
}

}  // namespace

TEST_CASE("a chart takes one side as long as it fits, and at least two steps stand on each") {
    std::size_t before = 1;
    for (std::size_t questions = 2; questions <= 14; ++questions) {
        CAPTURE(questions);
        const LaidOut out = laid_out(document_of(ladder_of(questions)));
        CHECK(out.findings.empty());
        const std::size_t sides = out.sheet.pages.size();
        CHECK(sides >= before);
        before = sides;
        if (questions <= 8) CHECK(sides == 1);
        if (questions >= 13) CHECK(sides == 2);
        // The first question stands on each side.
        for (const PlacedPage& page : out.sheet.pages) {
            CHECK(body_text(page).find("Moving?") != std::string::npos);
            CHECK(body_text(page).find("Fourth.") != std::string::npos);
            CHECK(rungs_on(page) >= 3);
        }
    }
}

namespace {

/// A chart under a strip, whose first step of rescue has so many words more, as the reader of one language gets it.
std::string chart_of(const std::string& rescue, const std::string& again, std::size_t more) {
    std::string longer;
    for (std::size_t at = 0; at < more; ++at) longer += " more";
    return fmt::format(
        "## Alarm {{.strip .large}}\n\n## {{.ladder yes=\"Yes\" overleaf=\"Go on\" again=\"{} {{page}}\"}}\n\nUse "
        "when.\n\n"
        "1. **Moving, {}?**\n   - No: **{}** Help.\n     1. First{}.\n     1. Second.\n     1. Third.\n     1. Fourth "
        "{}.\n"
        "1. **Hose on?**\n   - No: Put it on.\n1. **Still ringing?**\n   - No: Stay.\n"
        "1. **Water out?**\n   - No: Shake it.\n1. ![Stop here](figure:end) Done.\n",
        again, rescue, rescue, longer, rescue);
}

/// Where the box of steps with this name ends, from 1; 0: nowhere.
std::size_t page_of(const PlacedSheet& sheet, const std::string& passage) {
    for (std::size_t at = 0; at < sheet.pages.size(); ++at)
        if (body_text(sheet.pages[at]).find(passage) != std::string::npos) return at + 1;
    return 0;
}

}  // namespace

TEST_CASE("in large print a chart's title has its box beside it or the words that lead there, never nothing") {
    for (std::size_t more = 0; more <= 60; more += 4) {
        CAPTURE(more);
        const LaidOut out = laid_out(document_of(chart_of("Rescue", "on page", more)), {Paper::letter, 1.5});
        CHECK(out.findings.empty());
        CHECK(body_text(out.sheet.pages.front()).find("Use when.") != std::string::npos);
        const std::size_t box = page_of(out.sheet, "Fourth Rescue.");
        REQUIRE(box > 0);
        std::size_t sent = 0;
        for (const PlacedPage& page : out.sheet.pages) {
            const std::string text = body_text(page);
            if (text.find("on page") == std::string::npos) continue;
            CHECK_MESSAGE(text.find(fmt::format("on page {}", box)) != std::string::npos, text);
            ++sent;
        }
        CHECK(sent == out.sheet.pages.size() - box);
    }
}

TEST_CASE("in two languages and large print each reader finds question and box on one side, and is sent there") {
    std::vector<Finding> findings;
    Document second = document_of(chart_of("Rescate", "en la pagina", 60));
    second.language = "es";
    const auto both = in_two_languages(document_of(chart_of("Rescue", "on page", 60)), second, findings);
    REQUIRE(both);
    const LaidOut out = laid_out(*both, {Paper::letter, 1.5});
    CHECK(out.findings.empty());
    const std::size_t english = page_of(out.sheet, "Fourth Rescue.");
    const std::size_t spanish = page_of(out.sheet, "Fourth Rescate.");
    CHECK(english > 0);
    CHECK(spanish == english + 1);
    CHECK(page_of(out.sheet, "Moving, Rescue?") == english);
    CHECK(page_of(out.sheet, "Moving, Rescate?") == spanish);
    for (std::size_t at = spanish; at < out.sheet.pages.size(); ++at) {
        const std::string text = body_text(out.sheet.pages[at]);
        CAPTURE(text);
        CHECK(text.find(fmt::format("Rescue on page {}", english)) != std::string::npos);
        CHECK(text.find(fmt::format("Rescate en la pagina {}", spanish)) != std::string::npos);
    }
}

TEST_CASE("a short question in two languages has a symbol that holds both") {
    const auto chart = [](const char* question) {
        return document_of(fmt::format(
            "## {{.ladder yes=\"Yes\"}}\n\n1. **{}?**\n   - No: Wait.\n1. ![Stop](figure:end) End.\n", question));
    };
    std::vector<Finding> findings;
    const auto both = in_two_languages(chart("Still ringing"), chart("Aun suena"), findings);
    REQUIRE(both);
    for (const double scale : {1.0, 1.5}) {
        const LaidOut out = laid_out(*both, {Paper::letter, scale});
        CHECK(out.findings.empty());
        check_texts(sorted(out.sheet.pages.front()));
    }
}

TEST_CASE("a chart that leads nowhere, or where a step has no place, is refused") {
    struct Row {
        const char* steps;
        const char* rule;
    };
    const Row rows[]{
        {"1. **A?**\n   - No: b.\n1. c.", "chart-leads-nowhere"},
        {"1. **A?**\n   - No: b.", "chart-leads-nowhere"},
        {"1. ![Stop](figure:end) A.\n1. ![Stop](figure:end) B.", "chart-leads-nowhere"},
        {"1. **A?**\n   - b.\n1. ![Stop](figure:end) C.", "chart-leads-nowhere"},
        {"1. **A?**\n   - No: b.\n   - Perhaps: c.\n1. ![Stop](figure:end) D.", "chart-leads-nowhere"},
        {"1. A.\n1. **B?**\n   - No: **C**\n     1. d.\n1. ![Stop](figure:end) E.", "chart-leads-nowhere"},
        {"Words only.", "chart-leads-nowhere"},
        {"1. ![Stop](figure:end) A.\n\n| | |\n|---|---|\n| a | b |", "part-without-place"},
        {"1. A.\n\n   More.\n1. ![Stop](figure:end) B.", "part-without-place"},
        {"1. ![Stop](figure:nod) A.\n1. ![Stop](figure:end) B.", "part-without-place"},
        {"1. ![Stop](figure:end) A.\n\n- ![B](figure:nod) b", "figure-unknown"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.steps});
        const LaidOut out = laid_out(document_of(fmt::format("## {{.ladder yes=\"Yes\"}}\n\n{}\n", row.steps)));
        REQUIRE(!out.findings.empty());
        CHECK(out.findings.front().rule == row.rule);
        CHECK(out.findings.front().marks.front().place.line > 0);
    }
}

TEST_CASE("a chart that is higher than any page before its first step is refused, and comes to an end") {
    std::string words;
    for (int word = 0; word < 2000; ++word) words += "word ";
    const std::string rows[]{words + "\n", "1. **A?**\n   - No: **B**\n     1. " + words + "\n"};
    for (const std::string& row : rows) {
        const LaidOut out = laid_out(document_of(fmt::format("## {{.ladder yes=\"Yes\"}}\n\n{}\n", row)));
        const auto tall = std::ranges::find(out.findings, "part-taller-than-page", &Finding::rule);
        REQUIRE(tall != out.findings.end());
        CHECK(tall->severity == Severity::refuse);
    }
}
