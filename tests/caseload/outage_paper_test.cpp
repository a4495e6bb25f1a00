#include "caseload/outage_paper.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "pdf/programs.hpp"
#include "sheets/home_values.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr std::array kHomesInTurn{"adult-tracheostomy", "child-tracheostomy", "adult-mask", "adult-mains-only"};

/// So many homes: copies of the demo homes under record numbers of their own, some of them never timed or refused.
std::vector<HomeInOutage> caseload(std::size_t count) {
    std::vector<HomeInOutage> demo;
    for (const char* name : kHomesInTurn) demo.push_back(home_in_outage("home.yaml", HomeValues{name}.household()));
    std::vector<HomeInOutage> homes;
    for (std::size_t at = 0; at < count; ++at) {
        homes.push_back(demo[at % demo.size()]);
        homes.back().record_number = fmt::format("CL-{:05}", at + 1);
        if (at % 7 == 3) homes.back().time_left.reset();
        if (at % 11 == 5) homes.back().not_judged = "refused: 1 refuse";
    }
    sort_for_calls(homes, 480);
    return homes;
}

std::size_t count_of(const std::string& text, std::string_view part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

}  // namespace

TEST_CASE("the printed list holds each home once, with its number, on both papers, and repeats its head") {
    Measurer measurer;
    for (const Paper paper : kPapers)
        for (const std::size_t count : {1U, 3U, 6U, 60U})
            for (const bool names : {false, true}) {
                CAPTURE(count);
                CAPTURE(names);
                const std::vector<HomeInOutage> homes = caseload(count);
                const OutageQuestion question{.needed = 480, .starting = {}, .on = demo_day(), .names = names};
                std::vector<Finding> findings;
                const std::string pdf = outage_paper(homes, question, stationery(), paper, measurer, findings);
                CHECK(findings.empty());
                const trial::Scratch folder;
                folder.save("list.pdf", pdf);
                const std::string text = folder.run("pdftotext -raw list.pdf -").out;
                for (const HomeInOutage& home : homes) {
                    CAPTURE(home.record_number);
                    CHECK(count_of(text, home.record_number) == 1);
                }
                const std::size_t pages = count_of(text, "\f");
                CHECK((count == 60) == (pages > 1));
                for (std::size_t page = 1; page <= pages; ++page)
                    CHECK(count_of(text, fmt::format("Page {} of {}", page, pages)) == 1);
                CHECK(count_of(text, "Spoke") >= pages);
                CHECK(count_of(text, "local protocol come first") == pages);
                CHECK((count_of(text, "Ferncastle") > 0) == names);
            }
}

TEST_CASE("a row of the list is never split, and has a box to tick and room to write") {
    Measurer measurer;
    const std::vector<HomeInOutage> homes = caseload(60);
    const OutageQuestion question{.needed = 480, .starting = {}, .on = demo_day()};
    const Document document = outage_document(homes, question, stationery());
    std::size_t rows = 0;
    for (const Block& block : document.blocks)
        for (const TableRow& row : block.rows) {
            ++rows;
            REQUIRE(row.cells.size() >= 7);
            const auto& cells = row.cells;
            CHECK(cells[cells.size() - 4].inlines.front().kind == Inline::Kind::check_box);
            for (std::size_t by_hand = 1; by_hand <= 3; ++by_hand) CHECK(cells[cells.size() - by_hand].inlines.empty());
        }
    CHECK(rows == homes.size());
    std::vector<Finding> findings;
    const PlacedSheet placed = lay_out(document, {}, {Paper::letter, 1.0}, measurer, findings);
    CHECK(placed.pages.size() > 1);
    for (const PlacedPage& page : placed.pages) {
        const std::string words = words_of(page);
        CHECK(count_of(words, "CL-") > 0);
        CHECK(count_of(words, "555-") == 2 * count_of(words, "CL-"));  // the numbers end the row that a record begins
    }
}

TEST_CASE("with a start, leave-by is a time of the clock") {
    Measurer measurer;
    const std::vector<HomeInOutage> homes{home_in_outage("home.yaml", HomeValues{"adult-tracheostomy"}.household())};
    const OutageQuestion question{.needed = 480, .starting = Moment::parse("2026-02-03 22:30"), .on = demo_day()};
    const Document document = outage_document(homes, question, stationery());
    std::string said;
    for (const TableCell& cell : document.blocks.back().rows.front().cells)
        said += plain_blanks(plain_text(cell.inlines)) + "|";
    // 9 h 15 min after Tuesday 3 February 2026, 22:30.
    CHECK_MESSAGE(said.find("|Wed 7:45 AM") != std::string::npos, said);
}
