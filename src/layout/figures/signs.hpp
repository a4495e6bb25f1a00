#pragma once

#include <string_view>

#include "layout/blocks.hpp"

namespace ventfolio {

/// Whether a sign of this name can be drawn.
bool is_sign(std::string_view name);

/// One of our own drawn signs in a square of the given side: `eyes-up`, `eyes-down`, `blink`, `nod`, `shake-head`,
/// `hand`, `switch`, `board`, `speech`, `yes`, `no`, `warning`. One line weight throughout. Throws std::logic_error for
/// any other name: ask is_sign first about one that comes from a template.
/// It belongs to an element of the sheet's structure, or is an ornament.
Frame sign(std::string_view name, double side, LayoutContext& context, std::size_t element = kNoElement);

/// Rows of signs in thin boxes: each item of the list is a figure, a word in bold and what it looks like. A section
/// `.signs`.
Pieces set_signs(const Block& list, double width, LayoutContext& context);

}  // namespace ventfolio
