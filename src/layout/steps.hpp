#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// A rescue step: its number in a black square, what to do in large bold type, what follows from it below. One piece: a
/// step is never broken over pages.
Piece set_step(const Block& item, std::size_t number, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
