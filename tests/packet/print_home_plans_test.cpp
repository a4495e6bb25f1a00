#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// The sheets that a family uses by the day and in an outage: outage plan, care schedule, supplies, changing over.
const SetSheet* sheet_of(const SetHome& home, std::string_view name) {
    const auto found = std::ranges::find(home.sheets, name, [](const SetSheet& one) { return one.document.sheet; });
    return found == home.sheets.end() ? nullptr : &*found;
}

/// A value and the words around it are items of their own: blanks between them do not count.
std::string without_blanks(std::string text) {
    std::erase(text, ' ');
    return text;
}

const SetHome& demo(const char* home) {
    const SetHome& set = set_demo_home(home);
    REQUIRE_MESSAGE((!set.refused_by_profile() && !set.refused_by_sheets()), set.refusals());
    return set;
}

}  // namespace

TEST_CASE("outage plan, care schedule, supplies and changing over keep to their sides") {
    const std::map<std::string, std::size_t> sides{
        {"outage-plan", 2}, {"care-schedule", 2}, {"supplies", 2}, {"settings-switch", 1}};
    for (const char* name : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"}) {
        const SetHome& home = demo(name);
        CAPTURE(std::string{name});
        for (const auto& [sheet, most] : sides) {
            const SetSheet* found = sheet_of(home, sheet);
            CAPTURE(sheet);
            const bool one_prescription = std::string{name} == "child-tracheostomy";
            if (sheet == "settings-switch" && one_prescription) {
                CHECK(found == nullptr);  // nothing to change over to
                continue;
            }
            REQUIRE(found != nullptr);
            CHECK(found->placed.pages.size() <= most);
        }
    }
}

TEST_CASE("what a family reads there is of grade 6 or lower, in short sentences") {
    // The rule of finished sheets counts words and syllables; it reports what is harder.
    for (const char* name : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"})
        for (const Finding& finding : demo(name).of_sheets)
            for (const char* rule : {"family-text-hard-to-read", "emergency-sentence-too-long"})
                CHECK_MESSAGE(finding.rule != rule, finding.message);
}

TEST_CASE("each sheet says what this home has") {
    struct Row {
        const char* home;
        const char* sheet;
        std::vector<std::string> words;
    };
    const Row rows[] = {
        {"adult-tracheostomy",
         "outage-plan",
         {"Look at Toby first", "Leave by 9 h 15 min", "large pack beside the bed", "6 h 15 min", "12 h 0 min",
          "hall cupboard, left door", "oxygen concentrator, 310 W", "humidifier heater, 110 W", "555-0144",
          "Larkmoor Falls General", "Local fire and electrical codes come first", "12 V cable for Unit B"}},
        {"child-tracheostomy",
         "outage-plan",
         {"Look at Juno first", "Leave by 2 h 45 min", "No backup ventilator in this home", "garage wall, by the door",
          "2 h 0 min at 1 L/min", "grandparents in Corvane"}},
        {"adult-mask",
         "outage-plan",
         {"Look at Dell first", "Leave by 3 h 30 min", "Unit D, spare", "accessible taxi", "humidifier heater, 85 W"}},
        {"adult-tracheostomy",
         "care-schedule",
         {"Test the alarms", "Wed 4 Feb 2026", "Change the neck tube", "Wed 25 Feb 2026", "Every shift",
          "Priya or Colm", "warm soapy water, rinse, dry in air", "Mon 5 Oct 2026", "2 February 2026"}},
        {"child-tracheostomy", "care-schedule", {"Fri 6 Feb 2026", "Mira and Jonas together", "Mira"}},
        {"adult-mask", "care-schedule", {"New mask cushion", "Sun 12 Apr 2026", "Sasha", "Imre"}},
        {"adult-tracheostomy",
         "supplies",
         {"Suction catheter", "12 Fr", "300", "140", "31 Jan 2028", "Larkmoor Pharmacy", "Letter board",
          "red box on the bedside shelf", "hook at the head of the bed"}},
        {"child-tracheostomy", "supplies", {"8 Fr", "450", "210", "blue pouch on the crib", "playroom shelf"}},
        {"adult-mask", "supplies", {"Angled mouthpiece", "Nasal mask cushion", "bedside drawer"}},
        {"adult-tracheostomy",
         "settings-switch",
         {"Unit B, choose slot 1", "Pressure A/C with volume target", "37 cmH2O", "31 cmH2O", "14 to 22 cmH2O",
          "HME on", "555-0120"}},
        {"adult-mask", "settings-switch", {"Mouthpiece volume", "900 mL", "120 s", "Unit D, choose slot 2", "OFF"}},
    };
    std::map<std::string, SetHome> homes;
    for (const Row& row : rows) {
        if (!homes.contains(row.home)) homes.emplace(row.home, demo(row.home));
        const SetSheet* sheet = sheet_of(homes.at(row.home), row.sheet);
        REQUIRE(sheet != nullptr);
        const std::string said = without_blanks(words_of(sheet->placed));
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.sheet});
        for (const std::string& words : row.words)
            CHECK_MESSAGE(said.find(without_blanks(words)) != std::string::npos, words);
    }
}

TEST_CASE("chart, table and list of the outage plan print the same times") {
    for (const char* name : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"}) {
        const SetHome& home = demo(name);
        const SetSheet* sheet = sheet_of(home, "outage-plan");
        REQUIRE(sheet != nullptr);
        std::vector<std::string> ends;      // of the sources, from the table
        std::vector<std::string> drawn;     // from the chart
        std::vector<std::string> by_clock;  // from the list
        for (const Block& block : sheet->document.blocks) {
            if (block.kind != Block::Kind::table) continue;
            const std::string head = plain_text(block.head.cells.front().inlines);
            for (const TableRow& row : block.rows) {
                const auto said = [&](std::size_t at) { return plain_blanks(plain_text(row.cells.at(at).inlines)); };
                if (head == "Use" && !said(0).empty()) ends.push_back(said(4));
                const Inlines& first = row.cells.front().inlines;
                const bool source = !first.empty() && first.front().strong;
                if (head == "Hours without power" && source) drawn.push_back(said(2));
                if (head == "After") by_clock.push_back(said(0));
            }
        }
        CAPTURE(std::string{name});
        REQUIRE(ends.size() >= 2);
        CHECK(ends == drawn);
        // Every source but the last ends with a swap.
        for (std::size_t at = 0; at + 1 < ends.size(); ++at) CHECK(std::ranges::count(by_clock, ends[at]) == 1);
    }
}

TEST_CASE("hatches stay apart on a fax: 204 by 196 dots an inch, black or white") {
    const SourceText profile = demo_profile("adult-tracheostomy");
    PrintOrder order;
    order.sheets = {"outage-plan"};
    const PrintedHome printed = printed_home(profile, order);
    const trial::Scratch scratch;
    scratch.save("plan.pdf", file_named(printed, "outage-plan.pdf"));
    REQUIRE(scratch.run("pdftoppm -rx 204 -ry 196 -mono -f 1 -l 1 plan.pdf page && test -s page-1.pbm").status == 0);
    // The bars as they are placed, in order: rising, falling, dots, upright.
    const SetHome home = demo("adult-tracheostomy");
    const SetSheet* sheet = sheet_of(home, "outage-plan");
    REQUIRE(sheet != nullptr);
    std::vector<Box> bars;
    for (const PlacedItem& item : sheet->placed.pages.front().items)
        if (item.kind == PlacedItem::Kind::box && !item.box.filled && item.origin.role == "figure" &&
            item.box.width > 40)
            bars.push_back(item.box);
    REQUIRE(bars.size() >= 4);
    const trial::Ran raw = scratch.run("cat page-1.pbm");
    // P4: two numbers, then rows of bits, 1 is black (netpbm).
    std::size_t at = raw.out.find('\n') + 1;
    while (raw.out[at] == '#') at = raw.out.find('\n', at) + 1;
    const std::size_t width = std::stoul(raw.out.substr(at));
    at = raw.out.find('\n', at) + 1;
    const std::size_t stride = (width + 7) / 8;
    const auto black = [&](std::size_t x, std::size_t y) {
        return (static_cast<unsigned char>(raw.out.at(at + y * stride + x / 8)) >> (7 - x % 8)) & 1U;
    };
    // The flag of the half is an outline, too: it holds words and no hatch.
    std::vector<std::pair<double, double>> shares;  // black in all, and the most in one column
    for (const Box& bar : bars) {
        const auto left = static_cast<std::size_t>((bar.corner.x + 3) / 72 * 204);
        const auto right = left + static_cast<std::size_t>(24.0 / 72 * 204);
        const auto top = static_cast<std::size_t>((bar.corner.y + 2) / 72 * 196);
        const auto bottom = static_cast<std::size_t>((bar.corner.y + bar.height - 2) / 72 * 196);
        double all = 0;
        double most = 0;
        for (std::size_t x = left; x < right; ++x) {
            double column = 0;
            for (std::size_t y = top; y < bottom; ++y) column += black(x, y);
            all += column;
            most = std::max(most, column / static_cast<double>(bottom - top));
        }
        shares.emplace_back(all / static_cast<double>((right - left) * (bottom - top)), most);
    }
    // Neither white nor mud, and lines that stand upright show as full columns where slanted ones never do.
    int upright = 0;
    int filled = 0;
    for (const auto& [share, most] : shares) {
        if (share < 0.05) continue;
        ++filled;
        CHECK(share < 0.6);
        upright += most > 0.95;
    }
    CHECK(filled >= 4);
    CHECK(upright == 1);
}

TEST_CASE("where it is recorded that there is no battery, no paper of the home counts on one") {
    // Found by reading: the hook-up of a chair said "Check battery", the outage plan "half of the time is used".
    const SetHome& without = demo("adult-mains-only");
    const SetHome& with = demo("adult-mask");
    struct Row {
        const char* sheet;
        const char* with_batteries;  ///< only where there are some
        const char* without;         ///< only where there are none
    };
    const Row rows[]{
        {"hookup/day", "Check battery.", "Plug in the machine."},
        {"outage-plan", "Half of the time is used", "There is no battery here."},
        {"outage-plan", "Start bars", "There is no firm repair time"},
        {"responder-sheet", "All batteries and the charger", ""},
        {"notice-letters/utility", "once the batteries are empty", "at once: there is no battery"},
    };
    const auto words = [](const SetHome& home, std::string_view name) {
        const auto found = std::ranges::find(home.sheets, name, [](const SetSheet& one) { return one.document.name; });
        REQUIRE_MESSAGE(found != home.sheets.end(), std::string{name});
        return without_blanks(words_of(found->placed));
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.sheet});
        const std::string here = words(without, row.sheet);
        const std::string there = words(with, row.sheet);
        const std::string of_batteries = without_blanks(row.with_batteries);
        CHECK(there.find(of_batteries) != std::string::npos);
        CHECK(here.find(of_batteries) == std::string::npos);
        CHECK(here.find(without_blanks(row.without)) != std::string::npos);
    }
}
