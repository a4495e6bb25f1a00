#include "layout/section.hpp"

#include <algorithm>

#include "layout/boxes.hpp"
#include "layout/headings.hpp"
#include "layout/hookup.hpp"
#include "layout/letterhead.hpp"
#include "layout/wallet.hpp"

namespace ventfolio {
namespace {

SectionStyle style_of(const Section& section, double scale) {
    SectionStyle style;
    style.sizes = section.has("rescue")  ? rescue_box(scale)
                  : section.has("small") ? small(scale)
                  : section.has("tight") ? tight(scale)
                  : section.has("large") ? at_one_metre(scale)
                                         : at_arms_length(scale);
    style.attributes = section.heading ? &section.heading->attributes : nullptr;
    style.steps = section.has("steps");
    return style;
}

Pieces with_body(Piece heading, Pieces body, double gap) {
    if (!body.empty()) body.front().gap = gap;
    Pieces pieces{std::move(heading)};
    std::ranges::move(body, std::back_inserter(pieces));
    return pieces;
}

/// A heading over a rule.
Piece plain_heading(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kAboveRule = mm(0.9);
    Frame heading = set_heading(section, heading_look(style.sizes), width, context);
    heading.height += kAboveRule;
    if (!section.has("bare")) heading.put_bottom_rule(kBoldLine);
    return heading_piece(section, std::move(heading));
}

/// A heading in white on a black bar.
Piece bar_heading(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kPad = mm(1.1);
    constexpr double kSide = mm(2.4);
    HeadingLook look = heading_look(style.sizes);
    look.heading.words.size = 12.5 * context.scale;
    look.heading.ink = look.aside.ink = Ink::white;
    Frame words = set_heading(section, look, width - 2 * kSide, context);
    Frame bar;
    bar.width = width;
    bar.height = words.height + 2 * kPad;
    bar.put_black_field({context.node, "box", {}});
    bar.put(std::move(words), kSide, kPad);
    return heading_piece(section, std::move(bar));
}

Pieces set_plain(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    if (!section.has_words_in_heading()) {
        refuse_aside(section, context);
        return set_blocks(section.blocks, style, width, context);
    }
    Piece heading = section.has("index") ? bar_heading(section, style, width, context)
                                         : plain_heading(section, style, width, context);
    const bool table_first = !section.blocks.empty() && section.blocks.front().kind == Block::Kind::table;
    Pieces body = set_blocks(section.blocks, style, width, context);
    return with_body(std::move(heading), std::move(body), table_first ? mm(0.4) : mm(2));
}

/// The bold words of the heading on a tag, the others beside it, all over a rule.
Pieces set_place(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    const bool large = section.has("large");
    const auto [tag_words, rest] = split_after_strong(section.heading->inlines);
    Frame tag = set_tag(tag_words, (large ? 24 : 18) * context.scale, context);
    const double indent = tag.width + (large ? mm(4) : mm(3.4));
    HeadingLook look = heading_look(style.sizes);
    look.aside.words.size = 12 * context.scale;
    Frame words = set_heading(rest, section.heading->aside, look, width - indent, context);
    Frame heading;
    heading.width = width;
    heading.height = std::max(tag.height, words.height);
    heading.put_above(std::move(tag), 0, heading.height);
    heading.put_in_middle(std::move(words), indent);
    heading.put_bottom_rule(kBoldLine);
    Piece head = heading_piece(section, std::move(heading));
    const double gap = section.has("inline-steps") || section.has("tasks") ? mm(2) : 0;
    return with_body(std::move(head), set_blocks(section.blocks, style, width, context), gap);
}

}  // namespace

std::size_t Section::span() const {
    if (!heading) return kAllColumns;
    if (heading->attributes.has("half")) return kAllColumns / 2;
    SectionStyle style;
    style.attributes = &heading->attributes;
    return std::clamp<std::size_t>(style.number("span", kAllColumns), 1, kAllColumns);
}

std::vector<Section> sections_of(std::span<const Block> blocks) {
    std::vector<Section> sections;
    std::size_t start = 0;
    const auto close = [&](std::size_t end) {
        if (end == start) return;
        const std::size_t headings = blocks[start].kind == Block::Kind::heading ? 1 : 0;
        sections.push_back(
            {headings ? &blocks[start] : nullptr, blocks.subspan(start + headings, end - start - headings)});
        start = end;
    };
    for (std::size_t at = 0; at < blocks.size(); ++at)
        if (blocks[at].kind == Block::Kind::heading && blocks[at].level <= 2) close(at);
    close(blocks.size());
    return sections;
}

void refuse_aside(const Section& section, LayoutContext& context) {
    if (section.heading && !section.heading->aside.empty())
        context.refuse_unprinted("the aside of a heading without words", section.heading->line,
                                 first_field(section.heading->aside));
}

Piece section_piece(const Section& section, const Pieces& parts, double width) {
    Piece piece;
    piece.frame.width = width;
    piece.line = section.heading ? section.heading->line : 0;
    piece.field = first_field(parts);
    if (piece.field.empty() && section.heading) piece.field = first_field(section.heading->inlines);
    return piece;
}

Pieces set_section(const Section& section, double width, LayoutContext& context) {
    ++context.node;
    const SectionStyle style = style_of(section, context.scale);
    if (section.has("strip")) return {set_strip(section, style, width, context)};
    if (section.has("act")) return set_boxed(section, style, width, kHeavyLine, context);
    if (section.has("box")) return set_boxed(section, style, width, kBoxLine, context);
    if (section.has("banner")) return {set_banner(section, style, width, context)};
    if (section.has("letterhead")) return {set_letterhead(section, style, width, context)};
    if (section.has("place")) return set_place(section, style, width, context);
    if (section.has("hookup")) return set_hookup(section, style, width, context);
    if (section.has("wallet")) return set_wallet(section, width, context);
    if (section.has("pointer")) return {set_pointer(section, style, width, context)};
    return set_plain(section, style, width, context);
}

}  // namespace ventfolio
