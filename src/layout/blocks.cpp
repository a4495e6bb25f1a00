#include "layout/blocks.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <charconv>

#include "layout/calls.hpp"
#include "layout/figures/signs.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

constexpr double kParagraphGap = mm(1.6);

Piece piece_of(Frame frame, double gap, const Block& block) {
    Piece piece;
    piece.frame = std::move(frame);
    piece.gap = gap;
    piece.field = first_field(inlines_of(block));
    piece.line = block.line;
    return piece;
}

TextStyle body_style(const SectionStyle& style) {
    TextStyle text = plain_style(style.sizes.body);
    text.leading = 1.25;
    return text;
}

Pieces set_paragraph(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle text = body_style(style);
    if (block.attributes.has("large")) text.words.size = style.sizes.heading;
    return {piece_of(set_text(block.inlines, text, width, "paragraph", context), kParagraphGap, block)};
}

/// A black square with the number of the step in white.
Frame step_number(std::size_t number, double side, double size, LayoutContext& context) {
    Frame frame;
    frame.width = frame.height = side;
    frame.put_box({{0, 0}, side, side, 0, true, Ink::black}, {context.node, "step", {}});
    TextStyle style = plain_style(size, Face::bold);
    style.ink = Ink::white;
    style.alignment = Alignment::center;
    Frame text = set_text(words(fmt::format("{}", number)), style, side, "step number", context);
    const double cap = 0.714 * size;
    const double down = (side + cap) / 2 - first_baseline(text);
    frame.put(std::move(text), 0, down);
    return frame;
}

Pieces set_step(const Block& item, std::size_t number, const SectionStyle& style, double width,
                LayoutContext& context) {
    const auto [verb, result] = split_after_strong(inlines_of(item));
    const double gap = mm(3.6) * context.scale;
    const double text_width = width - style.sizes.step_box - gap;
    TextStyle verb_style = plain_style(style.sizes.verb, Face::bold);
    verb_style.leading = 1.1;
    TextStyle result_style = plain_style(style.sizes.result);
    result_style.leading = 1.22;
    Frame text = set_text(verb, verb_style, text_width, "step", context);
    text.width = text_width;
    if (!result.empty()) {
        Frame rest = set_text(result, result_style, text_width, "step", context);
        const double top = text.height;
        text.height += rest.height;
        text.put(std::move(rest), 0, top);
    }
    Frame frame;
    frame.width = width;
    frame.height = std::max(style.sizes.step_box, text.height);
    frame.put(step_number(number, style.sizes.step_box, style.sizes.verb, context), 0, mm(0.3));
    frame.put(std::move(text), style.sizes.step_box + gap, 0);
    return {piece_of(std::move(frame), mm(1.9) * context.scale, item)};
}

Frame bullet(const Block& list, std::size_t number, double size, double indent, LayoutContext& context) {
    if (list.ordered) {
        return set_text(words(fmt::format("{}.", number)), plain_style(size, Face::bold), indent, "list number",
                        context);
    }
    Frame frame;
    const double side = 0.36 * size;
    const double top = (1.25 * size - size) / 2 + 0.78 * size - side - 0.12 * size;
    frame.put_box({{0, top}, side, side, 0, true, Ink::black}, {context.node, "list mark", {}});
    return frame;
}

Frame check_box(double side, LayoutContext& context) {
    Frame frame;
    frame.width = frame.height = side;
    frame.put_box({{mm(0.25), mm(0.25)}, side - mm(0.5), side - mm(0.5), mm(0.5), false, Ink::black},
                  {context.node, "check box", {}});
    return frame;
}

Pieces set_task(const Block& item, const SectionStyle& style, double width, LayoutContext& context) {
    const double side = mm(5) * context.scale;
    const double gap = mm(3) * context.scale;
    Frame text = set_text(inlines_of(item), body_style(style), width - side - gap, "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = std::max(side, text.height);
    const double drop = std::max(0.0, (side - text.height) / 2);
    frame.put(check_box(side, context), 0, 0);
    frame.put(std::move(text), side + gap, drop);
    return {piece_of(std::move(frame), mm(1.6) * context.scale, item)};
}

Pieces set_item(const Block& list, const Block& item, std::size_t number, const SectionStyle& style, double width,
                LayoutContext& context) {
    if (style.steps && list.ordered) return set_step(item, number, style, width, context);
    if (item.task) return set_task(item, style, width, context);
    const double size = style.sizes.body;
    const double indent = size * (list.ordered ? 1.6 : 1.1);
    Frame text = set_text(inlines_of(item), body_style(style), width - indent, "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = text.height;
    frame.put(bullet(list, number, size, indent, context), 0, 0);
    frame.put(std::move(text), indent, 0);
    return {piece_of(std::move(frame), mm(style.has("tight") ? 0.5 : 1.0) * context.scale, item)};
}

/// Items in columns that are read downwards.
Pieces in_columns(Pieces pieces, std::size_t columns, double width, double gutter) {
    const double column_width = (width - gutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    const std::size_t per_column = (pieces.size() + columns - 1) / columns;
    Piece all;
    all.frame.width = width;
    if (!pieces.empty()) {
        all.field = pieces.front().field;
        all.line = pieces.front().line;
        all.gap = pieces.front().gap;
    }
    for (std::size_t column = 0; column * per_column < pieces.size(); ++column) {
        const auto begin = pieces.begin() + static_cast<std::ptrdiff_t>(column * per_column);
        const auto end = std::min(pieces.end(), begin + static_cast<std::ptrdiff_t>(per_column));
        Frame stack = stacked({std::make_move_iterator(begin), std::make_move_iterator(end)}, column_width);
        all.frame.height = std::max(all.frame.height, stack.height);
        all.frame.put(std::move(stack), static_cast<double>(column) * (column_width + gutter), 0);
    }
    return {std::move(all)};
}

/// Settings that a log only ticks off: small, one after the other, numbers bold.
Pieces set_log_facts(const Block& list, double width, LayoutContext& context) {
    TextStyle look = plain_style(9.5 * context.scale);
    look.number = TextStyle::Look{9.5 * context.scale, Face::bold};
    look.answer = look.number;
    look.leading = 1.2;
    const double gap = mm(5) * context.scale;
    Piece piece;
    piece.frame.width = width;
    piece.gap = mm(1.4);
    piece.line = list.line;
    double x = 0;
    double y = 0;
    for (const Block& item : list.children) {
        const double natural = natural_width(inlines_of(item), look, context);
        if (x > 0 && x + natural > width) {
            x = 0;
            y = piece.frame.height;
        }
        Frame fact = set_text(inlines_of(item), look, std::min(natural + 1, width), "list item", context);
        ++context.node;
        piece.frame.height = std::max(piece.frame.height, y + fact.height);
        piece.frame.put(std::move(fact), x, y);
        x += natural + gap;
        if (piece.field.empty()) piece.field = first_field(inlines_of(item));
    }
    return {std::move(piece)};
}

Pieces set_list(const Block& list, const SectionStyle& style, double width, LayoutContext& context) {
    if (style.has("calls")) return set_calls(list, style, width, context);
    if (style.has("signs")) return set_signs(list, style, width, context);
    if (style.has("log")) return set_log_facts(list, width, context);
    const std::size_t columns = std::max<std::size_t>(1, style.number("columns", 1));
    const double gutter = mm(8);
    const double column_width = (width - gutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    Pieces pieces;
    std::size_t number = 0;
    for (const Block& item : list.children) {
        for (Piece& piece : set_item(list, item, ++number, style, column_width, context)) {
            pieces.push_back(std::move(piece));
        }
        ++context.node;
    }
    if (!pieces.empty()) pieces.front().gap = kParagraphGap;
    return columns > 1 ? in_columns(std::move(pieces), columns, width, gutter) : std::move(pieces);
}

/// A black panel with white words: the one fact of its section that must not be missed.
Pieces set_solid(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    const double pad = mm(3);
    Frame frame;
    frame.width = width;
    double y = pad * 0.8;
    Frame text;
    for (const Block& child : block.children) {
        const bool key_line = !child.inlines.empty() && child.inlines.front().strong;
        TextStyle look = plain_style(key_line ? style.sizes.heading : style.sizes.body, Face::bold);
        look.ink = Ink::white;
        look.leading = 1.2;
        Frame line = set_text(child.inlines, look, width - 2 * pad, "call-out", context);
        const double height = line.height;
        text.put(std::move(line), pad, y);
        y += height + mm(0.4);
    }
    frame.height = y + pad * 0.6;
    frame.put_box({{0, 0}, width, frame.height, 0, true, Ink::black}, {context.node, "call-out", {}});
    frame.put(std::move(text), 0, 0);
    return {piece_of(std::move(frame), mm(2), block)};
}

/// A drawn triangle, then what is dangerous and what to do.
Pieces set_warning(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    const double side = mm(9) * context.scale;
    const double gap = mm(3);
    const double pad = mm(2);
    Frame text =
        stacked(set_blocks(block.children, style, width - side - gap - 2 * pad, context), width - side - gap - 2 * pad);
    Frame frame;
    frame.width = width;
    frame.height = std::max(side, text.height) + 2 * pad;
    constexpr double kLine = mm(0.35);
    frame.put_box({{kLine / 2, kLine / 2}, width - kLine, frame.height - kLine, kLine, false, Ink::black},
                  {context.node, "call-out", {}});
    frame.put(sign("warning", side, context), pad, (frame.height - side) / 2);
    frame.put(std::move(text), pad + side + gap, (frame.height - text.height) / 2);
    return {piece_of(std::move(frame), mm(2), block)};
}

Pieces set_table(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (style.has("log")) return set_log(table, style, width, context);
    if (style.has("cells")) return set_cells(table, style, width, context);
    const bool headless =
        std::ranges::all_of(table.head.cells, [](const TableCell& cell) { return cell.inlines.empty(); });
    return headless ? set_rows(table, style, width, context) : set_grid(table, style, width, context);
}

Pieces set_rule(double width, LayoutContext& context) {
    Piece piece;
    piece.frame.width = width;
    piece.frame.height = mm(0.25);
    piece.frame.put_rule({{0, 0}, {width, 0}, mm(0.25), Ink::black});
    piece.gap = mm(2.0) * context.scale;
    piece.keep_with_next = true;
    return {std::move(piece)};
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
            return block.label == "SOLID" ? set_solid(block, style, width, context)
                                          : set_warning(block, style, width, context);
        case Block::Kind::rule:
            return set_rule(width, context);
        case Block::Kind::heading:
        case Block::Kind::item:
            break;
    }
    TextStyle look = plain_style(style.sizes.body, Face::bold);
    return {piece_of(set_text(block.inlines, look, width, "heading", context), mm(2), block)};
}

}  // namespace

std::size_t SectionStyle::number(std::string_view name, std::size_t fallback) const {
    const auto text = attributes ? attributes->option(name) : std::nullopt;
    if (!text) return fallback;
    std::size_t value = fallback;
    std::from_chars(text->data(), text->data() + text->size(), value);
    return value;
}

const Inlines& inlines_of(const Block& block) {
    if (block.inlines.empty() && !block.children.empty()) return inlines_of(block.children.front());
    return block.inlines;
}

std::pair<Inlines, Inlines> split_after_strong(const Inlines& inlines) {
    auto rest = std::ranges::find_if(inlines, [](const Inline& piece) { return !piece.strong; });
    Inlines head{inlines.begin(), rest};
    while (rest != inlines.end() &&
           (rest->kind == Inline::Kind::line_break ||
            (rest->kind == Inline::Kind::text && rest->text.find_first_not_of(' ') == std::string::npos)))
        ++rest;
    Inlines tail{rest, inlines.end()};
    if (!tail.empty() && tail.front().kind == Inline::Kind::text)
        tail.front().text.erase(0, tail.front().text.find_first_not_of(' '));
    if (!head.empty() && head.back().kind == Inline::Kind::text)
        head.back().text.erase(head.back().text.find_last_not_of(' ') + 1);
    return {std::move(head), std::move(tail)};
}

Pieces set_blocks(std::span<const Block> blocks, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    for (const Block& block : blocks) {
        ++context.node;
        for (Piece& piece : set_block(block, style, width, context)) pieces.push_back(std::move(piece));
    }
    return pieces;
}

}  // namespace ventfolio
