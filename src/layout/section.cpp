#include "layout/section.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

constexpr double kStrong = mm(0.8);
constexpr double kThin = mm(0.35);

SectionStyle style_of(const Section& section, const LayoutContext& context) {
    SectionStyle style;
    style.sizes = section.has("large") ? at_one_metre(context.scale) : at_arms_length(context.scale);
    style.attributes = section.heading ? &section.heading->attributes : nullptr;
    if (section.has("tight")) style.sizes = tight(context.scale);
    style.steps = section.has("steps");
    return style;
}

const Inlines kNothing;
const Inlines& heading_of(const Section& section) { return section.heading ? section.heading->inlines : kNothing; }
const Inlines& aside_of(const Section& section) { return section.heading ? section.heading->aside : kNothing; }

struct HeadingLook {
    TextStyle heading;
    TextStyle aside;
    double gap = mm(4);
};

/// Heading left, aside right, on one ground line; the aside wraps first.
Frame set_heading(const Inlines& heading, const Inlines& aside, HeadingLook look, double width,
                  LayoutContext& context) {
    look.aside.alignment = Alignment::right;
    const double heading_natural = natural_width(heading, look.heading, context);
    const double aside_natural = natural_width(aside, look.aside, context);
    const bool one_line = heading_natural + look.gap + aside_natural <= width;
    const double aside_width =
        aside.empty() ? 0
        : one_line    ? aside_natural
                      : std::min(aside_natural, std::max(width - heading_natural - look.gap, 0.36 * width));
    Frame left =
        set_text(heading, look.heading, width - (aside.empty() ? 0 : aside_width + look.gap), "heading", context);
    Frame right = set_text(aside, look.aside, aside_width, "heading", context);
    Frame frame;
    frame.width = width;
    const bool both_one_line = one_line && left.height < 2 * look.heading.words.size;
    const double ground = both_one_line ? std::max(first_baseline(left), first_baseline(right)) : 0;
    const double left_top =
        both_one_line ? ground - first_baseline(left) : std::max(0.0, (right.height - left.height) / 2);
    const double right_top =
        both_one_line ? ground - first_baseline(right) : std::max(0.0, (left.height - right.height) / 2);
    frame.height = std::max(left_top + left.height, aside.empty() ? 0 : right_top + right.height);
    frame.put(std::move(left), 0, left_top);
    if (!aside.empty()) frame.put(std::move(right), width - aside_width, right_top);
    return frame;
}

HeadingLook heading_look(const SectionStyle& style) {
    HeadingLook look{plain_style(style.sizes.heading, Face::bold), plain_style(style.sizes.aside)};
    look.heading.leading = 1.15;
    look.aside.leading = 1.2;
    return look;
}

Piece heading_piece(const Section& section, Frame frame) {
    Piece piece;
    piece.frame = std::move(frame);
    piece.keep_with_next = true;
    piece.repeats = true;
    piece.line = section.heading->line;
    piece.field = first_field(section.heading->inlines);
    return piece;
}

Piece one_piece(const Section& section, Frame frame, const Pieces& parts) {
    Piece piece;
    piece.frame = std::move(frame);
    piece.line = section.heading ? section.heading->line : 0;
    for (const Piece& part : parts)
        if (piece.field.empty()) piece.field = part.field;
    if (piece.field.empty()) piece.field = first_field(heading_of(section));
    return piece;
}

Pieces set_plain(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    if (section.heading && !heading_of(section).empty()) {
        Frame heading = set_heading(heading_of(section), aside_of(section), heading_look(style), width, context);
        heading.height += mm(0.9);
        if (!section.has("bare")) heading.put_rule({{0, heading.height}, {width, heading.height}, mm(0.5), Ink::black});
        pieces.push_back(heading_piece(section, std::move(heading)));
    }
    Pieces body = set_blocks(section.blocks, style, width, context);
    if (!pieces.empty() && !body.empty())
        body.front().gap = section.blocks.front().kind == Block::Kind::table ? mm(0.4) : mm(2);
    std::ranges::move(body, std::back_inserter(pieces));
    return pieces;
}

/// Short facts in one line, spread over the width; in two or more where they do not fit.
Frame set_facts(const Block& list, double size, double width, LayoutContext& context) {
    TextStyle look = plain_style(size, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.2;
    std::vector<double> widths;
    double total = 0;
    for (const Block& item : list.children) {
        widths.push_back(natural_width(inlines_of(item), look, context));
        total += widths.back();
    }
    const double least_gap = mm(5);
    Frame frame;
    frame.width = width;
    const auto gaps = static_cast<double>(std::max<std::size_t>(widths.size(), 2) - 1);
    const bool one_line = total + least_gap * gaps <= width;
    double x = 0;
    double y = 0;
    double line_height = 0;
    for (std::size_t at = 0; at < widths.size(); ++at) {
        if (!one_line && x > 0 && x + widths[at] > width) {
            x = 0;
            y += line_height;
        }
        Frame fact =
            set_text(inlines_of(list.children[at]), look, std::min(widths[at] + 1, width), "list item", context);
        ++context.node;
        line_height = fact.height;
        frame.height = std::max(frame.height, y + fact.height);
        frame.put(std::move(fact), x, y);
        x += widths[at] + (one_line ? (width - total) / gaps : mm(8));
    }
    return frame;
}

/// The headline: white on black, one a page.
Pieces set_strip(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    const double side = mm(4);
    TextStyle look = plain_style(24 * context.scale, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.16;
    look.balanced = true;
    Frame content;
    Frame heading = set_text(heading_of(section), look, width - 2 * side, "heading", context);
    content.height = heading.height;
    content.put(std::move(heading), side, 0);
    for (const Block& block : section.blocks) {
        ++context.node;
        if (block.kind != Block::Kind::list) continue;
        Frame facts = set_facts(block, style.sizes.heading, width - 2 * side, context);
        const double top = content.height + mm(0.6);
        content.height = top + facts.height;
        content.put(std::move(facts), side, top);
    }
    Frame frame;
    frame.width = width;
    frame.height = content.height + mm(4.4);
    frame.put_box({{0, 0}, width, frame.height, 0, true, Ink::black}, {context.node, "strip", {}});
    frame.put(std::move(content), 0, mm(2.1));
    return {one_piece(section, std::move(frame), {})};
}

/// The parts of a section in one box: whole where it fits on a page, open at the break where it does not.
Pieces in_box(const Section& section, Pieces parts, double side, double top, double bottom, double width, double stroke,
              const LayoutContext& context) {
    Pieces pieces;
    for (std::size_t at = 0; at < parts.size(); ++at) {
        const bool first = at == 0;
        const bool last = at + 1 == parts.size();
        const double above = first ? top : parts[at].gap;
        Piece piece = one_piece(section, {}, {});
        piece.field = parts[at].field;
        piece.line = parts[at].line;
        piece.keep_with_next = first || parts[at].keep_with_next;
        Frame& frame = piece.frame;
        frame.width = width;
        frame.height = above + parts[at].frame.height + (last ? bottom : 0);
        const Origin origin{context.node, "box", {}};
        const double half = stroke / 2;
        frame.put_rule({{half, 0}, {half, frame.height}, stroke, Ink::black}, origin);
        frame.put_rule({{width - half, 0}, {width - half, frame.height}, stroke, Ink::black}, origin);
        if (first) frame.put_rule({{0, half}, {width, half}, stroke, Ink::black}, origin);
        if (last) frame.put_rule({{0, frame.height - half}, {width, frame.height - half}, stroke, Ink::black}, origin);
        frame.put(std::move(parts[at].frame), side, above);
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

Pieces set_boxed(const Section& section, const SectionStyle& style, double width, double stroke,
                 LayoutContext& context) {
    const double side = section.span() < 12 ? mm(3) : mm(4);
    const double inner = width - 2 * side;
    Pieces parts;
    if (section.heading && !heading_of(section).empty()) {
        Piece heading;
        heading.frame = set_heading(heading_of(section), aside_of(section), heading_look(style), inner, context);
        parts.push_back(std::move(heading));
    }
    Pieces body = set_blocks(section.blocks, style, inner, context);
    if (!body.empty()) body.front().gap = style.steps ? mm(1.6) : mm(1.0);
    std::ranges::move(body, std::back_inserter(parts));
    return in_box(section, std::move(parts), side, mm(2.2), mm(2.4), width, stroke, context);
}

Pieces set_banner(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    const double side = mm(4);
    HeadingLook look = heading_look(style);
    look.heading.ink = look.aside.ink = Ink::white;
    Frame bar = set_heading(heading_of(section), aside_of(section), look, width - 2 * side, context);
    const double bar_height = bar.height + mm(1.6);
    Pieces parts = set_blocks(section.blocks, style, width - 2 * side, context);
    Frame frame;
    frame.width = width;
    frame.height = bar_height + mm(1.1) + height_of(parts) + mm(1.9);
    frame.put_box({{0, 0}, width, bar_height, 0, true, Ink::black}, {context.node, "box", {}});
    frame.put(std::move(bar), side, mm(0.8));
    frame.put_box({{kStrong / 2, kStrong / 2}, width - kStrong, frame.height - kStrong, kStrong, false, Ink::black});
    Piece piece = one_piece(section, {}, parts);
    frame.put(stacked(std::move(parts), width - 2 * side), side, bar_height + mm(1.1));
    piece.frame = std::move(frame);
    return {std::move(piece)};
}

/// A word in white on a black tag, for the place where a prescription is used.
Frame set_tag(const Inlines& inlines, double size, LayoutContext& context) {
    TextStyle look = plain_style(size, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.0;
    const double pad = size * 0.42;
    const double natural = natural_width(inlines, look, context);
    Frame text = set_text(inlines, look, natural + 1, "heading", context);
    Frame frame;
    frame.width = natural + 2 * pad;
    frame.height = size * 1.36;
    frame.put_box({{0, 0}, frame.width, frame.height, 0, true, Ink::black}, {context.node, "tag", {}});
    const double down = (frame.height + 0.714 * size) / 2 - first_baseline(text);
    frame.put(std::move(text), pad, down);
    return frame;
}

Pieces set_place(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    const bool large = section.has("large");
    const auto [tag_words, rest] = split_after_strong(heading_of(section));
    Frame tag = set_tag(tag_words, (large ? 24 : 18) * context.scale, context);
    const double indent = tag.width + mm(large ? 4 : 3.4);
    HeadingLook look = heading_look(style);
    look.aside.words.size = 12 * context.scale;
    Frame words = set_heading(rest, aside_of(section), look, width - indent, context);
    Frame heading;
    heading.width = width;
    heading.height = std::max(tag.height, words.height);
    const double words_top = (heading.height - words.height) / 2;
    const double tag_top = heading.height - tag.height;
    heading.put(std::move(tag), 0, tag_top);
    heading.put(std::move(words), indent, words_top);
    heading.put_rule({{0, heading.height}, {width, heading.height}, mm(0.5), Ink::black});
    Pieces pieces{heading_piece(section, std::move(heading))};
    Pieces body = set_blocks(section.blocks, style, width, context);
    if (!body.empty()) body.front().gap = 0;
    std::ranges::move(body, std::back_inserter(pieces));
    return pieces;
}

Pieces set_pointer(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    Frame tag = set_tag(heading_of(section), 18 * context.scale, context);
    const double pad = mm(2.4);
    const double indent = pad + tag.width + mm(4);
    Pieces parts = set_blocks(section.blocks, style, width - indent - pad, context);
    for (Piece& part : parts) part.gap = mm(0.4);
    Piece piece = one_piece(section, {}, parts);
    Frame text = stacked(std::move(parts), width - indent - pad);
    Frame frame;
    frame.width = width;
    frame.height = std::max(tag.height, text.height) + 2 * pad;
    frame.put_box({{kThin / 2, kThin / 2}, width - kThin, frame.height - kThin, kThin, false, Ink::black},
                  {context.node, "box", {}});
    const double tag_top = (frame.height - tag.height) / 2;
    const double text_top = (frame.height - text.height) / 2;
    frame.put(std::move(tag), pad, tag_top);
    frame.put(std::move(text), indent, text_top);
    piece.frame = std::move(frame);
    return {std::move(piece)};
}

}  // namespace

std::size_t Section::span() const {
    constexpr std::size_t kAll = 12;
    if (!heading) return kAll;
    if (heading->attributes.has("half")) return kAll / 2;
    SectionStyle style;
    style.attributes = &heading->attributes;
    return std::clamp<std::size_t>(style.number("span", kAll), 1, kAll);
}

std::vector<Section> sections_of(std::span<const Block> blocks) {
    std::vector<Section> sections;
    std::size_t start = 0;
    const auto close = [&](std::size_t end) {
        if (end == start) return;
        const bool headed = blocks[start].kind == Block::Kind::heading;
        sections.push_back({headed ? &blocks[start] : nullptr,
                            blocks.subspan(start + (headed ? 1 : 0), end - start - (headed ? 1 : 0))});
        start = end;
    };
    for (std::size_t at = 0; at < blocks.size(); ++at)
        if (blocks[at].kind == Block::Kind::heading && blocks[at].level <= 2) close(at);
    close(blocks.size());
    return sections;
}

Pieces set_section(const Section& section, double width, LayoutContext& context) {
    ++context.node;
    const SectionStyle style = style_of(section, context);
    if (section.has("strip")) return set_strip(section, style, width, context);
    if (section.has("act")) return set_boxed(section, style, width, kStrong, context);
    if (section.has("box")) return set_boxed(section, style, width, kThin, context);
    if (section.has("banner")) return set_banner(section, style, width, context);
    if (section.has("place")) return set_place(section, style, width, context);
    if (section.has("pointer")) return set_pointer(section, style, width, context);
    return set_plain(section, style, width, context);
}

}  // namespace ventfolio
