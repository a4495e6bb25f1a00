#pragma once

#include "layout/frame.hpp"
#include "layout/layout_context.hpp"

namespace ventfolio {

/// Whether a block is a paragraph that holds one picture and nothing else: the place of a picture.
bool is_picture(const Block& block);

/// The picture of such a paragraph: at most 16 mm high and as wide as a third of an upright page's text, and never with
/// fewer than 150 dots to the inch, so that a small one prints small. One that comes out with a side of less than 4 mm
/// is a finding: nobody would read it. It has the same size in large print.
Frame set_picture(const Block& block, double width, LayoutContext& context);

}  // namespace ventfolio
