#include "layout/call_outs.hpp"

#include <algorithm>

#include "layout/figures/signs.hpp"

namespace ventfolio {
namespace {

constexpr double kCallOutGap = mm(2);

/// A paragraph that begins in bold is the fact itself, the others explain it.
TextStyle solid_style(const Block& paragraph, const TypeSizes& sizes) {
    const bool fact = !paragraph.inlines.empty() && paragraph.inlines.front().strong;
    TextStyle look = plain_style(fact ? sizes.verb : sizes.body, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.2;
    return look;
}

Frame set_solid(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kSide = mm(3);
    constexpr double kAbove = mm(2.4);
    constexpr double kBetween = mm(0.4);
    constexpr double kBelow = mm(2.2);  // less than above: the letters' descent adds to it
    Frame text;
    for (const Block& child : block.children) {
        if (child.kind != Block::Kind::paragraph) context.refuse_unprinted("a list or table in a panel", child.line);
        const double gap = &child == &block.children.front() ? kAbove : kBetween;
        text.append(set_text(child.inlines, solid_style(child, style.sizes), width - 2 * kSide, "call-out", context),
                    kSide, gap);
    }
    Frame frame;
    frame.width = width;
    frame.height = text.height + kBelow;
    frame.put_black_field({context.node, "call-out", {}});
    frame.put(std::move(text), 0, 0);
    return frame;
}

Frame set_warning(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kPad = mm(2);
    const double side = mm(9) * context.scale;
    const double indent = kPad + side + kColumnGap;
    const double text_width = width - indent - kPad;
    Frame text = stacked(set_blocks(block.children, style, text_width, context), text_width);
    Frame frame;
    frame.width = width;
    frame.height = std::max(side, text.height) + 2 * kPad;
    frame.put_outline(kBoxLine, {context.node, "call-out", {}});
    frame.put_in_middle(sign("warning", side, context), kPad);
    frame.put_in_middle(std::move(text), indent);
    return frame;
}

}  // namespace

Piece set_call_out(const Block& block, const SectionStyle& style, double width, LayoutContext& context) {
    Frame frame =
        block.label == "SOLID" ? set_solid(block, style, width, context) : set_warning(block, style, width, context);
    return piece_of(std::move(frame), kCallOutGap, block);
}

}  // namespace ventfolio
