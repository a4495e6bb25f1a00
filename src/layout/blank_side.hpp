#pragma once

#include <string_view>

#include "layout/lay_out.hpp"

namespace ventfolio {

/// The back of a sheet with an odd number of pages, so that the next one starts on a front side when both sides of the
/// paper are printed. One line in the middle says that it is blank on purpose: whoever holds it knows that nothing is
/// missing. It belongs to no sheet and has no code.
///
/// Throws std::logic_error for words with a letter that the fonts do not have.
PlacedPage blank_side(std::string_view words, const PageSetup& setup, Measurer& measurer);

}  // namespace ventfolio
