#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "documents.hpp"
#include "layout/figures/qr_code.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr const char* kCard =
    "## EMERGENCY {.wallet}\n\n**Somebody**\n\n> [!ACT]\n> Do not.\n\n- **911**\n- **555-0100** doctor\n\n---\n\n"
    "| | |\n|---|---|\n| Rate | 14 |\n\nBelow. {.caption}\n\n---\n\n### It says\n\n- EMERGENCY\n- Call "
    "555-0100\n\n---\n\n"
    "### Before\n\nIs it 50 mm?\n";

const Finding* finding_named(const LaidOut& out, std::string_view rule) {
    const auto found = std::ranges::find(out.findings, rule, &Finding::rule);
    return found == out.findings.end() ? nullptr : &*found;
}

std::vector<Box> outlines(const PlacedSheet& sheet, double width) {
    std::vector<Box> boxes;
    for (const PlacedPage& page : sheet.pages)
        for (const PlacedItem& item : page.items)
            if (item.kind == PlacedItem::Kind::box && !item.box.filled && std::abs(item.box.width - width) < 0.02)
                boxes.push_back(item.box);
    return boxes;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != text.npos);
    return text.replace(at, from.size(), to);
}

constexpr double kMillimetre = 72 / 25.4;

}  // namespace

TEST_CASE(
    "the faces of a wallet card have the size of ISO/IEC 7810 ID-1 and one fold between them, in large print too") {
    // ISO/IEC 7810: 85.60 mm by 53.98 mm.
    for (const double scale : {1.0, 1.5}) {
        for (const Paper paper : {Paper::letter, Paper::a4}) {
            const LaidOut out = laid_out(document_of(kCard, {}, "type_size: fixed\n"), {paper, scale});
            CHECK(out.findings.empty());
            CHECK(misplaced(out.sheet).empty());
            const std::vector<Box> faces = outlines(out.sheet, 85.60 * kMillimetre);
            REQUIRE(faces.size() == 2);
            for (const Box& face : faces) CHECK(face.height == doctest::Approx(53.98 * kMillimetre).epsilon(0.0001));
            CHECK(faces[0].corner.y == faces[1].corner.y);
            CHECK(std::abs(faces[0].corner.x + faces[0].width - faces[1].corner.x) < 0.011);
        }
    }
}

TEST_CASE("the ruler beside the card is 50 mm long") {
    const LaidOut out = laid_out(document_of(kCard));
    std::size_t rulers = 0;
    for (const PlacedItem& item : out.sheet.pages.front().items)
        if (item.kind == PlacedItem::Kind::rule && item.origin.role == "figure" && item.rule.from.y == item.rule.to.y) {
            ++rulers;
            CHECK(item.rule.to.x - item.rule.from.x == doctest::Approx(50 * kMillimetre).epsilon(0.0002));
        }
    CHECK(rulers == 1);
}

TEST_CASE("all words of a wallet card are there once, in their order") {
    const LaidOut out = laid_out(document_of(kCard));
    const std::vector<std::string> words = body_words(out.sheet);
    const std::vector<std::string> expected{"EMERGENCY", "Somebody", "Do", "not.", "911",  "555-0100",  "doctor",
                                            "Below.",    "Rate",     "14", "It",   "says", "EMERGENCY", "Call",
                                            "555-0100",  "Before",   "Is", "it",   "50",   "mm?"};
    CHECK(words == expected);
}

TEST_CASE("a code text is refused above 287 bytes, with its bytes, and drawn at 287") {
    // 287 bytes: ISO/IEC 18004, version 12, level M.
    for (const std::size_t bytes : {std::size_t{287}, std::size_t{288}}) {
        const std::string item(bytes - std::string_view{"EMERGENCY\n"}.size(), 'a');
        std::string broken;  // words that a column holds
        for (std::size_t at = 0; at < item.size(); ++at) broken += at % 20 == 19 ? ' ' : 'a';
        if (broken.back() == ' ') broken.back() = 'a';
        const LaidOut out = laid_out(document_of(replaced(kCard, "Call 555-0100", broken)));
        const Finding* finding = finding_named(out, "code-text-too-long");
        CHECK((finding != nullptr) == (bytes > 287));
        if (finding == nullptr) continue;
        CHECK(finding->severity == Severity::refuse);
        CHECK(finding->message.find("288 bytes") != std::string::npos);
        CHECK(finding->marks.front().place.line > 0);
    }
}

TEST_CASE("bytes are counted, not letters") {
    std::string items;
    for (int at = 0; at < 9; ++at)
        items +=
            "\n- \u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9 \u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9";
    const LaidOut out = laid_out(document_of(replaced(kCard, "\n- Call 555-0100", items)));
    REQUIRE(finding_named(out, "code-text-too-long") != nullptr);
    CHECK(finding_named(out, "code-text-too-long")->message.find("315 bytes") != std::string::npos);
}

TEST_CASE("a face that is too full is refused and names the longest field") {
    struct Row {
        const char* where;
        const char* instead_of;
    };
    for (const Row& row : {Row{"front", "**Somebody**"}, Row{"back", "Below. {.caption}"}}) {
        std::string words = "{{a}} {{b}}";
        for (int at = 0; at < 40; ++at) words += " many words more";
        if (std::string_view{row.where} == "back") words += " {.caption}";
        const LaidOut out = laid_out(
            document_of(replaced(kCard, row.instead_of, words),
                        {{"a", value_of("person.short", {{PrintedPart::Kind::word, "a b"}})},
                         {"b", value_of("person.long", {{PrintedPart::Kind::word, "some words that are longer"}})}}));
        const Finding* finding = finding_named(out, "card-too-full");
        REQUIRE(finding != nullptr);
        CHECK(finding->message.find(row.where) != std::string::npos);
        CHECK(finding->marks.front().field == "person.long");
    }
}

TEST_CASE("a fifth part of a wallet card and words after its caption are refused") {
    for (const std::string& more : {std::string{kCard} + "\n---\n\nLost.\n",
                                    replaced(kCard, "Below. {.caption}", "Below. {.caption}\n\nLost.")}) {
        const LaidOut out = laid_out(document_of(more));
        CHECK(finding_named(out, "part-without-place") != nullptr);
    }
}

TEST_CASE("the modules of a code lie on one grid inside a quiet zone of four") {
    // ISO/IEC 18004: finder patterns of 7 modules in three corners, 4 modules of quiet zone.
    const Document document = document_of("- EMERGENCY");
    std::vector<Finding> findings;
    Measurer measurer;
    LayoutContext context{measurer, findings, document};
    const auto frame = qr_code("EMERGENCY", 290, context);
    REQUIRE(frame);
    REQUIRE(frame->items.size() == 1);
    const Path& path = frame->items.front().path;
    REQUIRE(path.filled);
    const double module = 290.0 / (21 + 8);  // version 1 has 21 modules
    double least = 290;
    double most = 0;
    bool finder = false;
    for (std::size_t at = 0; at < path.segments.size(); at += 5) {
        const Point from = path.segments[at].a;
        const Point to = path.segments[at + 2].a;
        for (const double edge : {from.x, from.y, to.x, to.y})
            CHECK(std::abs(edge / module - std::round(edge / module)) < 1e-6);
        least = std::min({least, from.x, from.y});
        most = std::max({most, to.x, to.y});
        finder = finder || (from.x < 4.5 * module && from.y < 4.5 * module && std::abs(to.x - 11 * module) < 1e-6);
    }
    CHECK(least == doctest::Approx(4 * module));
    CHECK(most == doctest::Approx(25 * module));
    CHECK(finder);
}
