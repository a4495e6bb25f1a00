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

double column_width(double width, std::size_t columns, double gutter) {
    return (width - gutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
}

/// A title and its code: words, then bold ones at their end. What stands after a line break is a tag behind the code.
struct CodeItem {
    Inlines title;
    Inlines code;
    Inlines tag;
    double code_width = 0;
    double tag_width = 0;

    static constexpr double kGap = mm(1.5);
    /// What the title leaves of the width.
    double right_part() const { return code_width + kGap + (tag_width > 0 ? tag_width + kGap : 0); }
};

TextStyle code_style(const LayoutContext& context) {
    TextStyle look = plain_style(kSmallestText * context.scale);
    look.leading = 1.16;
    return look;
}

CodeItem code_item(const Block& item, LayoutContext& context) {
    const Inlines& all = inlines_of(item);
    const auto line_break = std::ranges::find(all, Inline::Kind::line_break, &Inline::kind);
    const auto code = std::find_if(std::make_reverse_iterator(line_break), all.rend(), [](const Inline& piece) {
                          return !piece.strong;
                      }).base();
    CodeItem parts{{all.begin(), code}, {code, line_break}, {}};
    if (line_break != all.end()) parts.tag = {line_break + 1, all.end()};
    const TextStyle look = code_style(context);
    parts.code_width = natural_width(parts.code, look, context) + 1;
    parts.tag_width = state_tag_width(parts.tag, look.words.size, context);
    return parts;
}

/// The title left, code and tag right, over a thin rule.
Piece set_code_item(const Block& item, double width, LayoutContext& context) {
    constexpr double kTop = mm(0.5);
    const CodeItem parts = code_item(item, context);
    const TextStyle look = code_style(context);
    Frame title = set_text(parts.title, look, width - parts.right_part(), "list item", context);
    Frame frame;
    frame.width = width;
    frame.height = title.height + mm(1.2) * context.scale;
    frame.put(std::move(title), 0, kTop);
    frame.put(set_text(parts.code, look, parts.code_width, "list item", context),
              width - parts.right_part() + CodeItem::kGap, kTop);
    Frame tag = set_state_tag(parts.tag, look.words.size, "list item", context);
    const double tag_top = kTop + baseline_at(look.words.size, look.leading) - first_baseline(tag);
    frame.put(std::move(tag), width - parts.tag_width, std::max(0.0, tag_top));
    frame.put_bottom_rule(kThinLine);
    return piece_of(std::move(frame), 0, item);
}

/// As many columns as were asked for, or as leave room for the longest word of each title.
std::size_t code_columns(const Block& list, std::size_t most, double width, double gutter, LayoutContext& context) {
    const TextStyle look = code_style(context);
    double needed = 0;
    for (const Block& item : list.children) {
        const CodeItem parts = code_item(item, context);
        needed = std::max(needed, parts.right_part() + widest_word(parts.title, look, context));
    }
    std::size_t columns = most;
    while (columns > 1 && column_width(width, columns, gutter) < needed) --columns;
    return columns;
}

Piece set_item(const Block& list, std::size_t at, const SectionStyle& style, double width, LayoutContext& context) {
    const Block& item = list.children[at];
    if (style.steps && list.ordered) return set_step(item, at + 1, style, width, context);
    if (style.has("inline-steps") && list.ordered) return set_inline_step(item, at + 1, style, width, context);
    if (style.has("codes")) return set_code_item(item, width, context);
    if (item.task) return set_task(item, style, width, context);
    return set_plain_item(item, at + 1, list.ordered, style, width, context);
}

/// Items in columns that are read downwards.
Piece in_columns(Pieces pieces, std::size_t columns, double width, double gutter) {
    const double column = column_width(width, columns, gutter);
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
        x += column + gutter;
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
    std::size_t columns = std::max<std::size_t>(1, style.number("columns", 1));
    // Codes stand at the right end of their column, over a rule: less room tells the columns apart.
    const double gutter = style.has("codes") ? mm(5) : kGutter;
    if (style.has("codes")) columns = code_columns(list, columns, width, gutter, context);
    // Twice the words in large type: columns would be taller than a page, and they cannot be broken.
    if (context.large_print() && !context.document.second_language.empty()) columns = 1;
    Pieces pieces;
    for (std::size_t at = 0; at < list.children.size(); ++at) {
        pieces.push_back(set_item(list, at, style, column_width(width, columns, gutter), context));
        ++context.node;
    }
    pieces.front().gap = kParagraphGap;
    if (columns == 1) return pieces;
    return {in_columns(std::move(pieces), columns, width, gutter)};
}

}  // namespace ventfolio
