#pragma once

#include "layout/section.hpp"

namespace ventfolio {

/// A card to cut out and fold once: two faces of ID-1 size (ISO/IEC 7810: 85.60 × 53.98 mm) side by side, so that the
/// back stands upright when the card is turned like a page. The words of the section are cut at their lines across
/// (`---`) into
///   - the front: the heading, white on black, and what follows;
///   - the back: beside the square code, paragraphs `.caption` below it;
///   - what the code says: a list, an item for each of its lines. It is printed below the card, to be checked;
///   - what stands beside that list, under a ruler of 50 mm that shows whether the paper came out in its true size.
/// A face that is too full, and a code that is too long, are findings: nothing is set smaller.
Pieces set_wallet(const Section& section, double width, LayoutContext& context);

}  // namespace ventfolio
