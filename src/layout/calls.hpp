#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// Whom to call: each item is a cell with who in bold, the number large, and when. Side by side where the numbers fit,
/// else one below the other. A section `.calls` holds the list. The number is the first value; in an item without one,
/// the next bold words.
Pieces set_calls(const Block& list, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
