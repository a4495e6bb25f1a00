#include "layout/boxes.hpp"

#include <algorithm>

#include "layout/facts.hpp"
#include "layout/headings.hpp"
#include "layout/one_language.hpp"

namespace ventfolio {
namespace {

struct BoxLook {
    double side;  ///< between the box and its parts
    double above;
    double below;
    double stroke;
};

/// One part of a box, with the sides of the box, its top if it is the first and its bottom if it is the last.
Frame box_part(Piece part, bool first, bool last, const BoxLook& look, double width, const Origin& origin) {
    Frame frame;
    frame.width = width;
    const double above = first ? look.above : part.gap;
    frame.height = above + part.frame.height + (last ? look.below : 0);
    const double half = look.stroke / 2;
    const double right = width - half;
    const double bottom = frame.height - half;
    frame.put_rule({{half, 0}, {half, frame.height}, look.stroke, Ink::black}, origin);
    frame.put_rule({{right, 0}, {right, frame.height}, look.stroke, Ink::black}, origin);
    if (first) frame.put_rule({{0, half}, {width, half}, look.stroke, Ink::black}, origin);
    if (last) frame.put_rule({{0, bottom}, {width, bottom}, look.stroke, Ink::black}, origin);
    frame.put(std::move(part.frame), look.side, above);
    return frame;
}

Pieces in_box(Pieces parts, const BoxLook& look, double width, const LayoutContext& context) {
    Pieces pieces;
    for (std::size_t at = 0; at < parts.size(); ++at) {
        const bool first = at == 0;
        Piece piece;
        piece.field = parts[at].field;
        piece.line = parts[at].line;
        piece.keep_with_next = first || parts[at].keep_with_next;
        piece.frame =
            box_part(std::move(parts[at]), first, at + 1 == parts.size(), look, width, {context.node, "box", {}});
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

Frame set_headline(const Section& section, double width, LayoutContext& context) {
    TextStyle look = plain_style((section.has("tight") ? 17 : 24) * context.scale, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.16;
    look.balanced = true;
    TextStyle aside = look;
    aside.words.size = 12.5 * context.scale;
    const HeadingLook beside{look, aside, 0.2};
    if (std::ranges::none_of(section.heading->aside, &Inline::second))
        return set_heading(section, beside, width, context);
    // Beside a heading of two lines or more, twice the words make a tall narrow column.
    std::vector<Finding> told_below;
    LayoutContext quiet{context.measurer, told_below, context.document, context.scale, context.node};
    Frame narrow = set_heading(section, beside, width, quiet);
    Frame below = set_text(section.heading->inlines, look, width, "heading", context);
    for (const Reader reader : {Reader::of_first, Reader::of_second})
        below.append(set_text(for_reader(section.heading->aside, reader), aside, width, "heading", context));
    return told_below.empty() && narrow.height <= below.height ? narrow : below;
}

TextStyle strip_fact_style(const TypeSizes& sizes) {
    TextStyle look = plain_style(sizes.heading, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.2;
    return look;
}

}  // namespace

Pieces set_boxed(const Section& section, const SectionStyle& style, double width, double stroke,
                 LayoutContext& context) {
    const BoxLook look{section.span() < kAllColumns ? kNarrowBoxSide : kBoxSide, mm(2.2), mm(2.4), stroke};
    const double inner = width - 2 * look.side;
    Pieces parts;
    if (section.has_words_in_heading()) {
        Piece heading;
        heading.line = section.heading->line;
        heading.frame = set_heading(section, heading_look(style.sizes), inner, context);
        parts.push_back(std::move(heading));
    } else {
        refuse_aside(section, context);
    }
    Pieces body = set_blocks(section.blocks, style, inner, context);
    if (!body.empty()) body.front().gap = style.steps ? mm(1.6) : mm(1.0);
    std::ranges::move(body, std::back_inserter(parts));
    return in_box(std::move(parts), look, width, context);
}

Piece set_banner(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kBarPad = mm(0.8);
    constexpr double kBelowBar = mm(1.1);
    constexpr double kBottom = mm(1.9);
    const double inner = width - 2 * kBoxSide;
    HeadingLook look = heading_look(style.sizes);
    look.heading.ink = look.aside.ink = Ink::white;
    Frame heading = set_heading(section, look, inner, context);
    Frame bar;
    bar.width = width;
    bar.height = heading.height + 2 * kBarPad;
    bar.put_black_field({context.node, "box", {}});
    bar.put(std::move(heading), kBoxSide, kBarPad);

    Pieces parts = set_blocks(section.blocks, style, inner, context);
    Piece piece = section_piece(section, parts, width);
    piece.frame.append(std::move(bar));
    Frame body = stacked(std::move(parts), inner);
    const double body_top = piece.frame.height + kBelowBar;
    piece.frame.height = body_top + body.height + kBottom;
    piece.frame.put_outline(kHeavyLine);
    piece.frame.put(std::move(body), kBoxSide, body_top);
    return piece;
}

Piece set_pointer(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kPad = mm(2.4);
    if (!section.heading->aside.empty()) context.refuse_unprinted("the aside of a pointer", section.heading->line);
    Frame tag = set_tag(section.heading->inlines, 18 * context.scale, context);
    const double indent = kPad + tag.width + mm(4);
    const double inner = width - indent - kPad;
    Pieces parts = set_blocks(section.blocks, style, inner, context);
    for (Piece& part : parts) part.gap = mm(0.4);
    Piece piece = section_piece(section, parts, width);
    Frame text = stacked(std::move(parts), inner);
    piece.frame.height = std::max(tag.height, text.height) + 2 * kPad;
    piece.frame.put_outline(kBoxLine, {context.node, "box", {}});
    piece.frame.put_in_middle(std::move(tag), kPad);
    piece.frame.put_in_middle(std::move(text), indent);
    return piece;
}

Piece set_strip(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kTop = mm(1.7);
    constexpr double kBottom = mm(1.9);
    const double inner = width - 2 * kBoxSide;
    Frame content;
    content.append(set_headline(section, inner, context), kBoxSide);
    for (const Block& block : section.blocks) {
        ++context.node;
        if (block.kind != Block::Kind::list) {
            context.refuse_unprinted("what is no list in a strip", block.line, first_field(inlines_of(block)));
            continue;
        }
        const FactSpacing spacing{.gap = mm(8), .least_if_spread = mm(5)};
        content.append(set_facts(block, strip_fact_style(style.sizes), spacing, inner, context), kBoxSide, mm(0.6));
    }
    Piece piece = section_piece(section, {}, width);
    piece.frame.height = kTop + content.height + kBottom;
    piece.frame.put_black_field({context.node, "strip", {}});
    piece.frame.put(std::move(content), 0, kTop);
    return piece;
}

}  // namespace ventfolio
