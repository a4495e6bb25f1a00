#pragma once

#include <string>

#include "layout/drawing.hpp"

namespace ventfolio::testing {

/// Empty, or what is wrong with the places of a sheet: text beside the margins or over other text, or anything else
/// beside the paper.
std::string misplaced(const PlacedSheet& sheet);

}  // namespace ventfolio::testing
