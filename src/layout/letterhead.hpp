#pragma once

#include "layout/section.hpp"

namespace ventfolio {

/// The head of a clinic's letter: its logo left, its words beside it, a thin line below both. A section `.letterhead`
/// holds them; either may be missing.
Piece set_letterhead(const Section& section, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
