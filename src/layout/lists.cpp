#include "layout/lists.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/calls.hpp"
#include "layout/facts.hpp"
#include "layout/figures/signs.hpp"
#include "layout/signatures.hpp"
#include "layout/state_tag.hpp"
#include "layout/steps.hpp"

namespace ventfolio {
namespace {

/// A black square that stands a little above the baseline, as a bullet of the type size would.
Frame bullet(const TextStyle& look, LayoutContext& context) {
    const double size = look.words.size;
    const double side = 0.36 * size;
    const double above_baseline = 0.12 * size;
    Frame frame;
    frame.put_box({{0, baseline_at(size, look.leading) - above_baseline - side}, side, side, 0, true, Ink::black},
                  {context.node, "list mark", {}});
    return frame;
}

Frame item_number(std::size_t number, const Block& item, double size, double width, LayoutContext& context) {
    return set_text(words(fmt::format("{}.", number), item.element), plain_style(size, Face::bold), width,
                    "list number", context);
}

Frame tick_box(const Block& item, double side, LayoutContext& context) {
    constexpr double kInset = kBoldLine / 2;
    Frame frame;
    frame.width = frame.height = side;
    frame.put_box({{kInset, kInset}, side - kBoldLine, side - kBoldLine, kBoldLine, false, Ink::black},
                  {context.node, "check box", {}, item.element});
    return frame;
}

Piece set_task(const Block& item, const SectionStyle& style, double width, LayoutContext& context) {
    const double side = kTickBox * context.scale;
    const double indent = side + kColumnGap * context.scale;
    Frame text = set_text(inlines_of(item), body_style(style), width - indent, "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = std::max(side, text.height);
    const double drop = std::max(0.0, (side - text.height) / 2);
    frame.put(tick_box(item, side, context), 0, 0);
    frame.put(std::move(text), indent, drop);
    return piece_of(std::move(frame), kParagraphGap * context.scale, item);
}

Piece set_plain_item(const Block& item, std::size_t number, bool ordered, const SectionStyle& style, double width,
                     LayoutContext& context) {
    const TextStyle look = body_style(style);
    const double size = style.sizes.body;
    const double indent = (ordered ? 1.6 : 1.1) * size;  // room for "9." or a bullet, and a blank
    Frame text = set_text(inlines_of(item), look, width - indent, "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = text.height;
    frame.put(ordered ? item_number(number, item, size, indent, context) : bullet(look, context), 0, 0);
    frame.put(std::move(text), indent, 0);
    return piece_of(std::move(frame),
                    mm(style.has("tight") || style.has("small") || style.has("rescue") ? 0.5 : 1) * context.scale,
                    item);
}

/// Words left, the bold ones at their end right, over a thin rule: a title and its code. What stands after a line break
/// is a tag behind the code.
Piece set_code_item(const Block& item, double width, LayoutContext& context) {
    constexpr double kGap = mm(1.5);
    const Inlines& all = inlines_of(item);
    const auto line_break = std::ranges::find(all, Inline::Kind::line_break, &Inline::kind);
    const auto first_of_line = std::find_if(std::make_reverse_iterator(line_break), all.rend(),
                                            [](const Inline& piece) { return !piece.strong; });
    const auto bold = first_of_line.base();
    TextStyle look = plain_style(kSmallestText * context.scale);
    look.leading = 1.16;
    const Inlines code{bold, line_break};
    const double code_width = natural_width(code, look, context) + 1;
    const double top = mm(0.5);
    Frame tag;
    if (line_break != all.end())
        tag = set_state_tag({line_break + 1, all.end()}, look.words.size, "list item", context);
    const double code_left = width - code_width - (tag.width > 0 ? tag.width + kGap : 0);
    Frame title = set_text({all.begin(), bold}, look, code_left - kGap, "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = title.height + mm(1.2) * context.scale;
    frame.put(std::move(title), 0, top);
    frame.put(set_text(code, look, code_width, "list item", context), code_left, top);
    const double tag_top = top + baseline_at(look.words.size, look.leading) - first_baseline(tag);
    const double tag_left = width - tag.width;
    frame.put(std::move(tag), tag_left, std::max(0.0, tag_top));
    frame.put_bottom_rule(kThinLine);
    return piece_of(std::move(frame), 0, item);
}

Piece set_item(const Block& list, std::size_t at, const SectionStyle& style, double width, LayoutContext& context) {
    const Block& item = list.children[at];
    if (style.steps && list.ordered) return set_step(item, at + 1, style, width, context);
    if (style.has("inline-steps") && list.ordered) return set_inline_step(item, at + 1, style, width, context);
    if (style.has("codes")) return set_code_item(item, width, context);
    if (item.task) return set_task(item, style, width, context);
    return set_plain_item(item, at + 1, list.ordered, style, width, context);
}

double column_width(double width, std::size_t columns) {
    return (width - kGutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
}

/// Items in columns that are read downwards.
Piece in_columns(Pieces pieces, std::size_t columns, double width) {
    const double column = column_width(width, columns);
    const std::size_t per_column = (pieces.size() + columns - 1) / columns;
    Piece all;
    all.frame.width = width;
    all.field = pieces.front().field;
    all.line = pieces.front().line;
    all.gap = pieces.front().gap;
    double x = 0;
    for (std::size_t first = 0; first < pieces.size(); first += per_column) {
        const auto begin = std::make_move_iterator(pieces.begin() + static_cast<std::ptrdiff_t>(first));
        const std::size_t count = std::min(per_column, pieces.size() - first);
        Frame stack = stacked({begin, begin + static_cast<std::ptrdiff_t>(count)}, column);
        all.frame.height = std::max(all.frame.height, stack.height);
        all.frame.put(std::move(stack), x, 0);
        x += column + kGutter;
    }
    return all;
}

/// Settings that a log only ticks off: small, one after the other, numbers bold.
Piece set_log_facts(const Block& list, double width, LayoutContext& context) {
    const double size = 9.5 * context.scale;
    TextStyle look = plain_style(size);
    look.number = look.answer = TextStyle::Look{size, Face::bold};
    look.leading = 1.2;
    Piece piece;
    piece.frame = set_facts(list, look, {.gap = mm(5) * context.scale}, width, context);
    piece.gap = mm(1.4);
    piece.line = list.line;
    for (const Block& item : list.children)
        if (piece.field.empty()) piece.field = first_field(inlines_of(item));
    return piece;
}

/// An item is set by its first paragraph.
void check_items(const Block& list, LayoutContext& context) {
    for (const Block& item : list.children) {
        const bool plain = item.children.empty() ||
                           (item.children.size() == 1 && item.children.front().kind == Block::Kind::paragraph);
        if (!plain) context.refuse_unprinted("what follows the first paragraph of an item", item.line);
    }
}

}  // namespace

Pieces set_list(const Block& list, const SectionStyle& style, double width, LayoutContext& context) {
    check_items(list, context);
    if (style.has("calls")) return set_calls(list, style, width, context);
    if (style.has("signs")) return set_signs(list, width, context);
    if (style.has("signatures")) return set_signatures(list, style, width, context);
    if (style.has("log")) return {set_log_facts(list, width, context)};
    if (list.children.empty()) return {};
    const std::size_t columns = std::max<std::size_t>(1, style.number("columns", 1));
    Pieces pieces;
    for (std::size_t at = 0; at < list.children.size(); ++at) {
        pieces.push_back(set_item(list, at, style, column_width(width, columns), context));
        ++context.node;
    }
    pieces.front().gap = kParagraphGap;
    if (columns == 1) return pieces;
    return {in_columns(std::move(pieces), columns, width)};
}

}  // namespace ventfolio
