#pragma once

#include "layout/section.hpp"

namespace ventfolio {

/// A drawing of how parts are joined, and below it the table that it is drawn from: a row for each part in the order of
/// building, its figure (`figure:water-trap`, see figures/hookup_parts.hpp) in the first cell, then the part, what to
/// do and what to look, listen or feel for. The rows are numbered; the numbers stand on the parts. The section's option
/// `person` is lying, seated or chair.
///
/// The drawing repeats the names of the ventilator and of small lines. What cannot be drawn as something that works is
/// a finding with the row and its first field, never a drawing.
Pieces set_hookup(const Section& section, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
