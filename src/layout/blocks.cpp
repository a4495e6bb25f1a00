#include "layout/blocks.hpp"

#include <algorithm>
#include <charconv>

#include "layout/call_outs.hpp"
#include "layout/figures/calendar.hpp"
#include "layout/figures/timeline.hpp"
#include "layout/lists.hpp"
#include "layout/pictures.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

Pieces set_paragraph(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    if (is_picture(block)) return {piece_of(set_picture(block, width, context), kParagraphGap, block)};
    TextStyle text = body_style(style);
    if (block.attributes.has("large")) text.words.size = style.sizes.heading;
    return {piece_of(set_text(block.inlines, text, width, "paragraph", context), kParagraphGap, block)};
}

Pieces set_any_table(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (style.has("log")) return set_log(table, width, context);
    if (style.has("timeline")) return set_timeline(table, style, width, context);
    if (style.has("calendar")) return set_calendar(table, style, width, context);
    if (style.has("ruled")) return set_ruled(table, style, width, context);
    if (style.has("was-now")) return set_changes(table, style, width, context);
    if (style.has("form")) return set_form(table, style, width, context);
    if (style.has("index")) return set_index(table, width, context);
    if (style.has("cells")) return set_cells(table, style, width, context);
    const bool headless =
        std::ranges::all_of(table.head.cells, [](const TableCell& cell) { return cell.inlines.empty(); });
    return headless ? set_rows(table, style, width, context) : set_grid(table, style, width, context);
}

/// A table's head stands again above its rows only, not above what follows it.
Pieces set_table(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces = set_any_table(table, style, width, context);
    for (std::size_t at = 0; at + 1 < pieces.size(); ++at)
        if (pieces[at].repeats) pieces[at].repeats_for = pieces.size() - 1 - at;
    return pieces;
}

Pieces set_rule(double width, LayoutContext& context) {
    Piece piece;
    piece.frame.width = width;
    piece.frame.height = kThinLine;
    piece.frame.put_rule({{0, 0}, {width, 0}, kThinLine, Ink::black});
    piece.gap = mm(2) * context.scale;
    piece.keep_with_next = true;
    return {std::move(piece)};
}

/// A heading below those that make sections.
Pieces set_lesser_heading(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    const TextStyle look = plain_style(style.sizes.body, Face::bold);
    return {piece_of(set_text(block.inlines, look, width, "heading", context), mm(2), block)};
}

Pieces set_block(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    switch (block.kind) {
        case Block::Kind::paragraph:
            return set_paragraph(block, style, width, context);
        case Block::Kind::list:
            return set_list(block, style, width, context);
        case Block::Kind::table:
            return set_table(block, style, width, context);
        case Block::Kind::call_out:
            return {set_call_out(block, style, width, context)};
        case Block::Kind::rule:
            return set_rule(width, context);
        case Block::Kind::heading:
        case Block::Kind::item:
            break;
    }
    return set_lesser_heading(block, style, width, context);
}

}  // namespace

std::size_t SectionStyle::number(std::string_view name, std::size_t fallback) const {
    const auto text = attributes ? attributes->option(name) : std::nullopt;
    if (!text) return fallback;
    std::size_t value = fallback;
    std::from_chars(text->data(), text->data() + text->size(), value);
    return value;
}

Piece piece_of(Frame frame, double gap, const Block& block) {
    Piece piece;
    piece.frame = std::move(frame);
    piece.gap = gap;
    piece.field = first_field(inlines_of(block));
    piece.line = block.line;
    return piece;
}

const Inlines& inlines_of(const Block& block) {
    if (block.inlines.empty() && !block.children.empty()) return inlines_of(block.children.front());
    return block.inlines;
}

TextStyle body_style(const SectionStyle& style) { return plain_style(style.sizes.body); }

Pieces set_blocks(std::span<const Block> blocks, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    for (const Block& block : blocks) {
        ++context.node;
        std::ranges::move(set_block(block, style, width, context), std::back_inserter(pieces));
    }
    return pieces;
}

}  // namespace ventfolio
