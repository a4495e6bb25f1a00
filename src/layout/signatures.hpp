#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// Lines to sign on, side by side: each item of the list is the caption below its line. The first is twice as wide as
/// the others, or with `.even` all are alike; `row` mm are left above each. In large print they go below one another.
Pieces set_signatures(const Block& list, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
