#include "document_from_bytes.hpp"

#include <fmt/format.h>
#include <array>

#include "layout/trial_furniture.hpp"
#include "placed_sheet.hpp"

namespace ventfolio::fuzz {
namespace {

constexpr std::array kClasses{
    "act",          "back",        "banner",      "bare",      "box",         "calendar", "calls",   "caption",
    "cells",        "codes",       "dated",       "dense",     "even",        "form",     "half",    "hookup",
    "index",        "ladder",      "large",       "line",      "log",         "onward",   "page",    "place",
    "plain",        "pointer",     "rescue",      "ruled",     "signatures",  "signs",    "small",   "steps",
    "strip",        "tasks",       "tight",       "timeline",  "units-below", "wallet",   "was-now", "whole",
    "inline-steps", "half-in-two", "full-in-two", "unheard-of"};
constexpr std::array kOptions{"span", "columns", "row", "write",    "week",  "lying",
                              "tags", "person",  "yes", "overleaf", "again", "start"};
constexpr std::array kOptionValues{"1",  "2",  "3",   "4",   "6",   "8",
                                   "12", "20", "40",  "0",   "-1",  "99999999999999999999",
                                   "x",  "",   "3.5", "255", "Yes", "page 1"};
constexpr std::array kFigures{"action",    "question", "short-question", "board",      "end",
                              "hand",      "nod",      "bar-solid",      "hose",       "ventilator",
                              "neck-tube", "y-piece",  "mask",           "wall-power", "no-such-figure"};
/// Pieces that are no words of ours: odd letters, and what the layout is told never to take apart.
constexpr std::array kOddTexts{" ",       "\u00A0",     "10\u00A0mL", "H\u2082O", "\u202E", "\u4E2D",
                               "e\u0301", "-",          "\u2013",     ". ",       "(",      "\u2022",
                               "\uE000",  "\U0001F600", "A/C",        "\n",       "1."};

class Maker {
  public:
    explicit Maker(std::span<const std::uint8_t> bytes) : bytes_{bytes} {}

    MadeDocument made() {
        Document& document = made_.document;
        document.name = document.sheet = "trial";
        document.language = "en";
        document.template_file = "trial.md";
        document.title = {text("Trial")};
        made_.furniture = testing::trial_furniture();
        add_setup();
        while (more()) document.blocks.push_back(top_block());
        return std::move(made_);
    }

  private:
    bool more() const { return at_ < bytes_.size() && blocks_ < kMostBlocks; }
    std::size_t below(std::size_t limit) { return at_ < bytes_.size() ? bytes_[at_++] % limit : 0; }
    bool one_in(std::size_t times) { return below(times) + 1 == times; }
    template <std::size_t Count>
    std::string pick(const std::array<const char*, Count>& all) {
        return all[below(Count)];
    }

    void add_setup() {
        made_.setup.paper = one_in(2) ? Paper::a4 : Paper::letter;
        made_.setup.scale = one_in(2) ? 1.5 : 1;
        Document& document = made_.document;
        if (one_in(4)) document.front_matter.emplace_back("orientation", "landscape");
        if (one_in(8)) document.front_matter.emplace_back("type_size", "fixed");
        if (one_in(8)) document.front_matter.emplace_back("pages", pick(kOptionValues));
        if (one_in(4)) document.second_language = "es";
        if (one_in(8)) made_.furniture.who = {text(std::string(1 + below(70), 'W'))};
        if (one_in(8)) made_.furniture.mark = {text("Not yet checked: do not use")};
    }

    static Inline text(std::string words) {
        Inline piece;
        piece.text = std::move(words);
        return piece;
    }

    /// Ends in a letter that no other part of it holds, so that none is found inside another.
    std::string word() {
        const std::size_t length = one_in(16) ? below(60) : below(9);
        std::string word = fmt::format("w{}{}z", made_.words.size(), std::string(length, "aeimnoru"[length % 8]));
        made_.words.push_back(word);
        return word;
    }

    std::string words(std::size_t most) {
        std::string all;
        for (std::size_t count = below(most); count > 0; --count) all += one_in(24) ? pick(kOddTexts) : word() + " ";
        return all;
    }

    Inline value() {
        Inline piece;
        piece.kind = Inline::Kind::value;
        piece.value.field = one_in(3) ? "calc.trial" : "prescriptions.0.rate";
        piece.value.parts.push_back({PrintedPart::Kind::number, word()});
        if (one_in(2)) piece.value.parts.push_back({PrintedPart::Kind::unit, "\u00A0mL"});
        if (one_in(3)) piece.value.parts.push_back({PrintedPart::Kind::word, " " + word()});
        return piece;
    }

    Inline piece() {
        Inline piece;
        switch (below(16)) {
            case 0:
                piece.kind = Inline::Kind::line_break;
                break;
            case 1:
                piece.kind = Inline::Kind::figure;
                piece.text = pick(kFigures);
                piece.alternative = "a picture";
                break;
            case 2:
                piece.kind = Inline::Kind::check_box;
                break;
            case 3:
                piece.kind = Inline::Kind::write_in;
                piece.text = std::string(3 + below(40), '_');
                break;
            case 4:
            case 5:
            case 6:
                piece = value();
                break;
            default:
                piece = text(words(8));
                break;
        }
        piece.strong = one_in(4);
        piece.second = !made_.document.second_language.empty() && one_in(2);
        piece.line = 1 + blocks_;
        return piece;
    }

    Inlines inlines(std::size_t most) {
        Inlines all;
        for (std::size_t count = below(most); count > 0; --count) all.push_back(piece());
        return all;
    }

    Attributes attributes() {
        Attributes made;
        for (std::size_t count = below(4); count > 0; --count) made.classes.push_back(pick(kClasses));
        for (std::size_t count = below(6) / 2; count > 0; --count)
            made.options.emplace_back(pick(kOptions), pick(kOptionValues));
        return made;
    }

    /// Sections follow one another as headings do in a template: without them there would be none of their looks.
    Block top_block() {
        if (one_in(3)) return heading(2);
        return block(2);
    }

    Block started(Block::Kind kind) {
        Block block;
        block.kind = kind;
        block.line = 1 + ++blocks_;
        return block;
    }

    Block heading(int level) {
        Block block = started(Block::Kind::heading);
        block.level = level;
        block.inlines = inlines(3);
        block.attributes = attributes();
        if (one_in(4)) block.aside = inlines(3);
        return block;
    }

    Block block(int depth) {
        switch (below(depth > 0 ? 8 : 3)) {
            case 1:
                return heading(1 + static_cast<int>(below(6)));
            case 2:
                return table();
            case 3:
                return started(Block::Kind::rule);
            case 4: {
                Block call_out = started(Block::Kind::call_out);
                call_out.label = "WARNING";
                call_out.attributes = attributes();
                call_out.children = blocks(depth - 1);
                return call_out;
            }
            case 5:
            case 6:
                return list(depth - 1);
            default: {
                Block paragraph = started(Block::Kind::paragraph);
                paragraph.inlines = inlines(6);
                return paragraph;
            }
        }
    }

    std::vector<Block> blocks(int depth) {
        std::vector<Block> all;
        for (std::size_t count = below(3); count > 0 && more(); --count) all.push_back(block(depth));
        return all;
    }

    Block list(int depth) {
        Block list = started(Block::Kind::list);
        list.ordered = one_in(2);
        if (one_in(4)) list.attributes = attributes();
        for (std::size_t count = 1 + below(9); count > 0; --count) {
            Block item = started(Block::Kind::item);
            item.task = one_in(4);
            Block paragraph = started(Block::Kind::paragraph);
            paragraph.inlines = inlines(4);
            item.children.push_back(std::move(paragraph));
            if (one_in(8))
                for (Block& child : blocks(depth)) item.children.push_back(std::move(child));
            list.children.push_back(std::move(item));
        }
        return list;
    }

    Block table() {
        Block table = started(Block::Kind::table);
        const std::size_t columns = one_in(16) ? 1 + below(40) : 1 + below(5);
        const bool headless = one_in(2);
        for (std::size_t column = 0; column < columns; ++column)
            table.alignments.push_back(static_cast<Alignment>(below(4)));
        table.head = row(columns, headless);
        for (std::size_t rows = below(12); rows > 0; --rows) table.rows.push_back(row(columns, false));
        if (one_in(4)) table.attributes = attributes();
        return table;
    }

    TableRow row(std::size_t columns, bool blank) {
        TableRow row;
        row.line = 1 + ++blocks_;
        for (std::size_t column = 0; column < columns; ++column)
            row.cells.push_back({blank || !more() ? Inlines{} : inlines(3)});
        return row;
    }

    static constexpr std::size_t kMostBlocks = 200;

    std::span<const std::uint8_t> bytes_;
    std::size_t at_ = 0;
    std::size_t blocks_ = 0;
    MadeDocument made_;
};

}  // namespace

MadeDocument document_from(std::span<const std::uint8_t> bytes) { return Maker{bytes}.made(); }

std::string shown(const std::vector<Block>& blocks, std::size_t depth) {
    constexpr std::array kKinds{"heading", "paragraph", "list", "item", "table", "call-out", "rule"};
    std::string all;
    for (const Block& block : blocks) {
        all += fmt::format("{}{} {{{}}} {}", std::string(2 * depth, ' '), kKinds[static_cast<std::size_t>(block.kind)],
                           fmt::join(block.attributes.classes, " "), plain_text(block.inlines));
        if (!block.aside.empty()) all += " aside " + plain_text(block.aside);
        const auto add_row = [&](const TableRow& row) {
            for (const TableCell& cell : row.cells) all += " | " + plain_text(cell.inlines);
            all += " /";
        };
        if (block.kind == Block::Kind::table) add_row(block.head);
        for (const TableRow& row : block.rows) add_row(row);
        all += "\n" + shown(block.children, depth + 1);
    }
    return all;
}

}  // namespace ventfolio::fuzz
