#include "layout/headings.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

constexpr double kAsideGap = mm(4);

/// What the aside may take of the width: its own where both fit on a line, else at least a share of it.
double aside_width(double heading_natural, double aside_natural, double width, double least) {
    if (heading_natural + kAsideGap + aside_natural <= width) return aside_natural;
    return std::min(aside_natural, std::max(width - heading_natural - kAsideGap, least * width));
}

/// The lower of the two is centred on the taller one.
Frame beside_in_middle(Frame left, Frame right, double width) {
    Frame frame;
    frame.width = width;
    frame.height = std::max(left.height, right.height);
    const double right_x = width - right.width;
    frame.put_in_middle(std::move(left), 0);
    frame.put_in_middle(std::move(right), right_x);
    return frame;
}

Frame beside_on_one_baseline(Frame left, Frame right, double width) {
    const double ground = std::max(first_baseline(left), first_baseline(right));
    const double left_top = ground - first_baseline(left);
    const double right_top = ground - first_baseline(right);
    const double right_x = width - right.width;
    Frame frame;
    frame.width = width;
    frame.height = std::max(left_top + left.height, right_top + right.height);
    frame.put(std::move(left), 0, left_top);
    frame.put(std::move(right), right_x, right_top);
    return frame;
}

}  // namespace

HeadingLook heading_look(const TypeSizes& sizes) {
    HeadingLook look{plain_style(sizes.heading, Face::bold), plain_style(sizes.aside)};
    look.heading.leading = 1.15;
    look.aside.leading = 1.2;
    return look;
}

Frame set_heading(const Inlines& heading, const Inlines& aside, HeadingLook look, double width,
                  LayoutContext& context) {
    if (aside.empty()) return set_text(heading, look.heading, width, "heading", context);
    look.aside.alignment = Alignment::right;
    const double heading_natural = natural_width(heading, look.heading, context);
    const double aside_natural = natural_width(aside, look.aside, context);
    const double right_width = aside_width(heading_natural, aside_natural, width, look.least_aside);
    Frame left = set_text(heading, look.heading, width - right_width - kAsideGap, "heading", context);
    Frame right = set_text(aside, look.aside, right_width, "heading", context);
    const bool one_line = heading_natural + kAsideGap + aside_natural <= width;
    return one_line && left.height < 2 * look.heading.words.size
               ? beside_on_one_baseline(std::move(left), std::move(right), width)
               : beside_in_middle(std::move(left), std::move(right), width);
}

Frame set_heading(const Section& section, const HeadingLook& look, double width, LayoutContext& context) {
    if (!section.heading) return {};
    return set_heading(section.heading->inlines, section.heading->aside, look, width, context);
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

Frame set_tag(const Inlines& inlines, double size, LayoutContext& context) {
    constexpr double kSide = 0.42;  // in type sizes, left and right of the words
    constexpr double kHeight = 1.36;
    constexpr double kRoundingRoom = 1;  // a text set to its own natural width must not wrap
    TextStyle look = plain_style(size, Face::bold);
    look.ink = Ink::white;
    look.leading = 1;
    const double natural = natural_width(inlines, look, context);
    Frame text = set_text(inlines, look, natural + kRoundingRoom, "heading", context);
    Frame tag;
    tag.width = natural + 2 * kSide * size;
    tag.height = text.height + (kHeight - 1) * size;
    tag.put_black_field({context.node, "tag", {}});
    const bool one_line = text.height < 1.5 * size;
    const double top = one_line ? top_with_capitals_in_middle(text, tag.height) : (tag.height - text.height) / 2;
    tag.put(std::move(text), kSide * size, top);
    return tag;
}

}  // namespace ventfolio
