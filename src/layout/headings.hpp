#pragma once

#include "layout/blocks.hpp"
#include "layout/section.hpp"

namespace ventfolio {

struct HeadingLook {
    TextStyle heading;
    TextStyle aside;
    double least_aside = 0.36;  ///< of the width, where heading and aside do not fit on a line
};
HeadingLook heading_look(const TypeSizes& sizes);

/// Heading left, aside right, on one ground line; the aside wraps first.
Frame set_heading(const Inlines& heading, const Inlines& aside, HeadingLook look, double width, LayoutContext& context);
/// A section's own heading and aside. Nothing, of no height, for text before the first heading.
Frame set_heading(const Section& section, const HeadingLook& look, double width, LayoutContext& context);

/// A heading as a piece: it stays with what follows and is set again where the section goes on overleaf.
Piece heading_piece(const Section& section, Frame frame);

/// Words in white on a black tag, for the place where a prescription is used.
Frame set_tag(const Inlines& inlines, double size, LayoutContext& context);

}  // namespace ventfolio
