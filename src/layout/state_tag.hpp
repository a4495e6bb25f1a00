#pragma once

#include <string_view>

#include "layout/frame.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// A few words on a tag of their own in a cell or at the end of an item: "R2 new". Bold words are white on black,
/// others stand in an outline, so that the two are told apart by their shape as well as by their words. Nothing gives
/// nothing.
Frame set_state_tag(const Inlines& inlines, double size, std::string_view role, LayoutContext& context);
double state_tag_width(const Inlines& inlines, double size, LayoutContext& context);

}  // namespace ventfolio
