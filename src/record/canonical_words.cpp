#include "record/canonical_words.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <iterator>
#include <stdexcept>

#include "sheets/own_code.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

// Raise the number when the form below changes: codes on paper then differ from new ones on purpose.
constexpr std::string_view kVersion = "ventfolio sheet words 1";

constexpr std::string_view kCalendar = "calendar";
// These set the size of a block or cell, not what it says.
constexpr std::array<std::string_view, 3> kSizes{"span", "row", "write"};
// Words at the right end of a heading; they stand in Block::aside once their values are resolved.
constexpr std::string_view kAside = "aside";

class Writer {
  public:
    explicit Writer(std::string& out) : out_{out} {}

    void write(const Document& document) {
        piece('V', kVersion);
        bracket('t', document.title);
        for (const PrintedValue& value : document.identifiers) piece('I', value.text());
        if (document.not_yet_checked) mark('M');
        write(document.blocks);
    }

  private:
    void mark(char kind) { out_ += kind; }

    void piece(char kind, std::string_view text) {
        fmt::format_to(std::back_inserter(out_), "{}{}:{}", kind, text.size(), text);
    }

    void bracket(char kind, const Inlines& inlines) {
        mark('(');
        mark(kind);
        write(inlines);
        mark(')');
    }

    // Words and values run together: where the template ends and a value begins is not seen on paper.
    void write(const Inlines& inlines) {
        std::string run;
        const auto end_run = [&] {
            if (!run.empty()) piece('T', run);
            run.clear();
        };
        for (const Inline& part : inlines) {
            switch (part.kind) {
                case Inline::Kind::text:
                    run += part.text;
                    break;
                case Inline::Kind::value:
                    if (!is_own_code(part.value)) run += part.value.text();
                    break;
                case Inline::Kind::line_break:
                    run += '\n';
                    break;
                case Inline::Kind::check_box:
                    end_run(), mark('B');
                    break;
                case Inline::Kind::write_in:
                    end_run(), mark('W');
                    break;
                case Inline::Kind::figure:
                    end_run(), piece('F', part.text), piece('A', part.alternative);
                    break;
                case Inline::Kind::picture:  // what it shows, not what its file is called
                    end_run(), piece('P', part.picture->digest), piece('A', part.alternative);
                    break;
            }
        }
        end_run();
    }

    void write(const Attributes& attributes, bool aside_is_resolved) {
        for (const auto& [key, value] : attributes.options) {
            if (std::ranges::find(kSizes, key) != kSizes.end() || (key == kAside && aside_is_resolved)) continue;
            if (std::ranges::any_of(code_points(value), is_private_use))
                throw std::logic_error{fmt::format("this is a bug in ventfolio: option {} holds a value token", key)};
            piece('K', key);
            piece('O', value);
        }
    }

    static bool is_private_use(char32_t point) {
        return (point >= 0xE000 && point <= 0xF8FF) || (point >= 0xF0000 && point <= 0x10FFFD);
    }

    void write(const TableRow& row) {
        mark('(');
        mark('r');
        for (const TableCell& cell : row.cells) bracket('c', cell.inlines);
        mark(')');
    }

    static char kind_of(const Block& block) {
        switch (block.kind) {
            case Block::Kind::heading:
                return 'h';
            case Block::Kind::paragraph:
                return 'p';
            case Block::Kind::list:
                return block.ordered ? 'o' : 'u';
            case Block::Kind::item:
                return block.task ? 'k' : 'i';
            case Block::Kind::table:
                return 'b';
            case Block::Kind::call_out:
                return 'q';
            case Block::Kind::rule:
                return 'l';
        }
        return '?';
    }

    void write(const Block& block) {
        mark('(');
        mark(kind_of(block));
        if (block.kind == Block::Kind::heading) piece('N', fmt::to_string(block.level));
        if (!block.label.empty()) piece('L', block.label);
        write(block.attributes, !block.aside.empty());
        write(block.inlines);
        if (!block.aside.empty()) bracket('a', block.aside);
        if (block.kind == Block::Kind::table) write(block.head);
        for (const TableRow& row : block.rows) write(row);
        write(block.children);
        mark(')');
    }

    void write(const std::vector<Block>& blocks) {
        for (auto block = blocks.begin(); block != blocks.end();) {
            if (block->attributes.has(kCalendar)) {
                block = after_calendar(block, blocks.end());
                continue;
            }
            write(*block);
            ++block;
        }
    }

    using BlockIterator = std::vector<Block>::const_iterator;
    static BlockIterator after_calendar(BlockIterator calendar, BlockIterator end) {
        if (calendar->kind != Block::Kind::heading) return std::next(calendar);
        return std::find_if(std::next(calendar), end, [&](const Block& block) {
            return block.kind == Block::Kind::heading && block.level <= calendar->level;
        });
    }

    std::string& out_;
};

}  // namespace

std::string canonical_words(const Document& document) {
    std::string words;
    Writer{words}.write(document);
    return words;
}

}  // namespace ventfolio
