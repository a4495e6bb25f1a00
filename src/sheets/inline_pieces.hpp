#pragma once

#include <string>

#include "sheets/document.hpp"

/// Pieces of the papers that no template stands behind: the print slip, the intake form, the outage list, and what
/// stands on every page.
namespace ventfolio {

Inline text_piece(std::string text, bool strong = false);
Inline value_piece(PrintedValue value, bool strong = false);
/// A hard break.
Inline line_break();
/// A box to tick, empty.
Inline box_to_tick();
/// A line to write on, as wide as so many letters.
Inline line_to_write_on(std::size_t letters);

}  // namespace ventfolio
