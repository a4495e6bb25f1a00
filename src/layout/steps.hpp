#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// A rescue step: its number in a black square, what to do in large bold type, what follows from it below. One piece: a
/// step is never broken over pages.
Piece set_step(const Block& item, std::size_t number, const SectionStyle& style, double width, LayoutContext& context);

/// A step whose words run on behind its number, for a list that is read before the trouble starts.
Piece set_inline_step(const Block& item, std::size_t number, const SectionStyle& style, double width,
                      LayoutContext& context);

}  // namespace ventfolio
