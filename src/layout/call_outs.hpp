#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// A call-out in one piece: `[!SOLID]` is a black panel with white words, the one fact of its section that must not be
/// missed; any other is a drawn warning triangle in a thin box, then what is dangerous and what to do.
Piece set_call_out(const Block& block, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
