#include <doctest/doctest.h>

#include <algorithm>
#include <array>

#include "documents.hpp"
#include "layout/measures.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::size_t boxes_on(const PlacedPage& page) {
    return static_cast<std::size_t>(std::ranges::count_if(page.items, [](const PlacedItem& item) {
        return item.kind == PlacedItem::Kind::box && item.origin.role == "check box";
    }));
}

/// Rules that go down the page, body only.
std::vector<double> column_rules(const PlacedPage& page) {
    std::vector<double> at;
    for (const PlacedItem& item : page.items)
        if (item.kind == PlacedItem::Kind::rule && item.rule.from.x == item.rule.to.x) at.push_back(item.rule.from.x);
    std::ranges::sort(at);
    at.erase(std::ranges::unique(at).begin(), at.end());
    return at;
}

}  // namespace

TEST_CASE("columns that say nothing are cells to write in, as wide as asked for") {
    const LaidOut out =
        laid_out(document_of("## Form {.form write=30 row=12}\n\n"
                             "| Look at | Found | Seen | Right |\n|---|---|---|---|\n"
                             "| Hose | | | [ ] |\n| Water | | | [ ] |\n"));
    CHECK_MESSAGE(out.findings.empty(), out.findings.front().message);
    CHECK(misplaced(out.sheet) == "");
    const PlacedPage& page = out.sheet.pages.front();
    CHECK(boxes_on(page) == 2);
    const std::vector<double> lines = column_rules(page);
    REQUIRE(lines.size() == 4);
    CHECK(lines[1] - lines[0] == doctest::Approx(mm(30)).epsilon(0.001));
    CHECK(lines[2] - lines[1] == doctest::Approx(mm(30)).epsilon(0.001));
    CHECK(lines[3] == doctest::Approx(page.width - page.margin_right).epsilon(0.001));
}

TEST_CASE("a group of a form stays on one page, and a head is set again on the next") {
    std::string form = "## Form {.form row=20}\n\n| | Skill | Tells |\n|---|---|---|\n";
    for (int group = 0; group < 6; ++group) {
        form += "| **Group" + std::to_string(group) + "** | first of " + std::to_string(group) + " | |\n";
        for (int row = 0; row < 3; ++row) form += "| | more of " + std::to_string(group) + " | |\n";
    }
    const LaidOut out = laid_out(document_of(form));
    CHECK_MESSAGE(out.findings.empty(), out.findings.front().message);
    CHECK(misplaced(out.sheet) == "");
    REQUIRE(out.sheet.pages.size() > 1);
    for (const PlacedPage& page : out.sheet.pages) {
        const std::string text = body_text(page);
        CHECK(text.find("Tells") != std::string::npos);
        for (int group = 0; group < 6; ++group) {
            const std::string number = std::to_string(group);
            const bool here = text.find("Group" + number) != std::string::npos;
            CHECK((text.find("more of " + number) != std::string::npos) == here);
        }
    }
}

TEST_CASE("a word that needs the room takes it from the cells to write in") {
    const std::string word(28, 'm');
    const LaidOut out = laid_out(
        document_of("## Form {.form write=50}\n\n| Look at | Found | Seen |\n|---|---|---|\n| " + word + " | | |\n"));
    CHECK_MESSAGE(out.findings.empty(), out.findings.front().message);
    const std::vector<double> lines = column_rules(out.sheet.pages.front());
    REQUIRE(lines.size() == 3);
    CHECK(lines[1] - lines[0] < mm(50));
    CHECK(lines[1] - lines[0] > mm(30));
}

TEST_CASE("signatures stand side by side, and below one another in large print") {
    const Document document = document_of("## Sign {.signatures}\n\n- Trainer\n- Date\n");
    struct Row {
        double scale;
        bool beside;
    };
    for (const Row& row : {Row{1, true}, Row{1.5, false}}) {
        PageSetup setup;
        setup.scale = row.scale;
        const LaidOut out = laid_out(document, setup);
        CHECK_MESSAGE(out.findings.empty(), out.findings.front().message);
        CHECK(misplaced(out.sheet) == "");
        std::vector<double> baselines;
        for (const PlacedItem& item : out.sheet.pages.front().items)
            if (item.kind == PlacedItem::Kind::text && item.origin.role == "list item")
                baselines.push_back(item.text.origin.y);
        REQUIRE(baselines.size() == 2);
        CHECK((baselines[0] == baselines[1]) == row.beside);
    }
}

TEST_CASE("a box to tick stays with the word behind it") {
    std::string line = "## A {.plain}\n\n| A | B |\n|---|---|\n| a | ";
    for (int at = 0; at < 30; ++at) line += "[ ] word" + std::to_string(at) + " ";
    const LaidOut out = laid_out(document_of(line + "|\n"));
    CHECK_MESSAGE(out.findings.empty(), out.findings.front().message);
    const auto& items = out.sheet.pages.front().items;
    std::size_t seen = 0;
    for (std::size_t at = 0; at < items.size(); ++at) {
        if (items[at].kind != PlacedItem::Kind::box || items[at].origin.role != "table cell") continue;
        const auto next = std::find_if(items.begin() + static_cast<std::ptrdiff_t>(at), items.end(),
                                       [](const PlacedItem& item) { return item.kind == PlacedItem::Kind::text; });
        REQUIRE(next != items.end());
        const double baseline = next->text.origin.y;
        CHECK(items[at].box.corner.y < baseline);
        CHECK(items[at].box.corner.y + items[at].box.height > baseline - next->text.size);
        ++seen;
    }
    CHECK(seen == 30);
}
