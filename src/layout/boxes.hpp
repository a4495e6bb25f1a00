#pragma once

#include "layout/section.hpp"

/// Sections in a box, a bar or a black field.
namespace ventfolio {

/// A line of this width round heading and blocks. Whole where it fits on a page; where it does not, it may be broken
/// between its parts, and the box is open at the break.
Pieces set_boxed(const Section& section, const SectionStyle& style, double width, double stroke,
                 LayoutContext& context);

/// A heavy box under a black bar that holds the heading. One piece.
Piece set_banner(const Section& section, const SectionStyle& style, double width, LayoutContext& context);

/// A tag beside words in a thin box. One piece.
Piece set_pointer(const Section& section, const SectionStyle& style, double width, LayoutContext& context);

/// The headline of a page: white on black, lists in it as facts in lines. One piece; blocks that are not lists are a
/// finding.
Piece set_strip(const Section& section, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
