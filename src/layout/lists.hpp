#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// A list by the classes of its section: `.calls` whom to call, `.signs` drawn signs, `.log` facts in small type that a
/// log only ticks off; in `.steps` an ordered list is rescue steps. Else bullets, numbers, and boxes for tasks, in
/// `columns=N` columns that are read downwards. Each item counts as a block of its own in reading order.
Pieces set_list(const Block& list, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
