#include "packet/print_slip.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <string>

#include "packet/translation_note.hpp"
#include "sheets/inline_pieces.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// From so many parts on a sheet has one line for all of them.
constexpr std::size_t kGroupFrom = 5;

Inlines said(std::string text, bool strong = false) { return {text_piece(std::move(text), strong)}; }

std::size_t front_sides(std::size_t pages) { return (pages + 1) / 2 * 2; }

/// A run of sheets that stand on one line.
using Run = std::span<const SlipEntry>;

std::vector<Run> runs_of(Run sheets) {
    std::vector<Run> runs;
    for (std::size_t first = 0; first < sheets.size();) {
        std::size_t end = first + 1;
        while (end < sheets.size() && sheets[end].document->sheet == sheets[first].document->sheet) ++end;
        const std::size_t step = end - first >= kGroupFrom ? end - first : 1;
        for (; first < end; first += step) runs.push_back(sheets.subspan(first, step));
    }
    return runs;
}

std::size_t copies_of(const Run& run, const Household& home) {
    double copies = 0;
    for (const PaperCopy& copy : home.profile.copies) {
        if (!copy.sheet.given()) continue;
        const bool meant =
            *copy.sheet == run.front().document->sheet ||
            std::ranges::any_of(run, [&](const SlipEntry& one) { return one.document->name == *copy.sheet; });
        if (meant) copies += copy.number.given() ? (*copy.number).in(unit::pieces) : 1;
    }
    return std::max<std::size_t>(1, static_cast<std::size_t>(copies));
}

class Slip {
  public:
    Slip(const Household& home, const Stationery& stationery) : home_{home}, words_{stationery.words} {}

    /// `start`: the page of the file on which the first sheet begins.
    Document document(Run sheets, std::size_t start, Paper paper) const {
        Document document;
        document.name = document.sheet = "print-slip";
        document.language = words_.language();
        document.template_file = "words.yaml";
        document.title = said(word("title"));
        document.blocks = {heading("head", {}), steps(paper), heading("sheets", {})};
        document.blocks.push_back(table(sheets, start));
        return document;
    }

    Furniture furniture() const {
        Furniture furniture;
        furniture.who = said(home_.profile.record_number.or_else(""));
        furniture.identifier = said(word("who"));
        furniture.page_of = words_.at("page_of");
        furniture.foot = {said(word("foot"))};
        add_translation_note(words_, furniture);
        return furniture;
    }

  private:
    std::string word(std::string_view key) const { return std::string{words_.at(fmt::format("slip.{}", key))}; }

    Block heading(std::string_view key, std::vector<std::string> classes) const {
        Block block;
        block.kind = Block::Kind::heading;
        block.level = 2;
        block.attributes.classes = std::move(classes);
        block.inlines = said(word(key));
        return block;
    }

    Block steps(Paper paper) const {
        Block list;
        list.kind = Block::Kind::list;
        list.ordered = true;
        for (const char* key : {"scaling", "sides", "paper", "check"}) {
            Block item;
            item.kind = Block::Kind::item;
            item.inlines = said(with_replaced(word(key), "{paper}", word(paper == Paper::letter ? "letter" : "a4")));
            list.children.push_back(std::move(item));
        }
        return list;
    }

    std::string paper_for(const Document& document) const {
        const auto audience = document.front("audience").value_or("");
        return word(audience == "wall" ? "on_wall" : audience == "wallet" ? "on_card" : "on_plain");
    }

    TableRow row(const Run& run, std::size_t start) const {
        std::size_t end = start;
        std::size_t most = 0;
        for (const SlipEntry& one : run) {
            if (&one != &run.back()) end += front_sides(one.pages);
            most = std::max(most, one.pages);
        }
        end += run.back().pages - 1;
        const Document& first = *run.front().document;
        const std::string title =
            run.size() == 1 ? plain_text(first.title) : std::string{words_.at("sheets." + first.sheet)};
        const std::string pages =
            end == start ? fmt::format("{}", start) : fmt::format("{} {} {}", start, word("to"), end);
        TableRow row;
        row.cells = {{said(title, true)},
                     {said(with_replaced(pages, " ", kNoBreakSpace))},
                     {said(word(most == 1 ? "front" : "both"))},
                     {said(fmt::format("{}", copies_of(run, home_)))},
                     {said(paper_for(first))}};
        return row;
    }

    Block table(Run sheets, std::size_t start) const {
        Block table;
        table.kind = Block::Kind::table;
        for (const char* key : {"sheet", "pages", "printed", "copies", "on"})
            table.head.cells.push_back({said(word(key))});
        table.alignments.assign(table.head.cells.size(), Alignment::automatic);
        for (const Run& run : runs_of(sheets)) {
            table.rows.push_back(row(run, start));
            for (const SlipEntry& one : run) start += front_sides(one.pages);
        }
        return table;
    }

    const Household& home_;
    const WordBook& words_;
};

}  // namespace

PlacedSheet print_slip(std::span<const SlipEntry> sheets, const Household& home, const Stationery& stationery,
                       const PageSetup& setup, Measurer& measurer, std::vector<Finding>& findings) {
    const Slip slip{home, stationery};
    // The slip's own length moves the pages that it names, and their names hardly change its length.
    std::size_t own = 2;
    for (;;) {
        std::vector<Finding> faults;
        PlacedSheet placed =
            lay_out(slip.document(sheets, own + 1, setup.paper), slip.furniture(), setup, measurer, faults);
        if (front_sides(placed.pages.size()) <= own) {
            findings.insert(findings.end(), faults.begin(), faults.end());
            return placed;
        }
        own = front_sides(placed.pages.size());
    }
}

}  // namespace ventfolio
