#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// The legend of a flowchart: each item of the list is one or more small symbols (the figures `question`,
/// `short-question`, `action`, `chart` and `end`) and what they mean, or words alone. In lines, one after the other.
Frame set_ladder_legend(const Block& list, double width, LayoutContext& context);

}  // namespace ventfolio
