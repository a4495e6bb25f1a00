#pragma once

#include <string_view>

#include "layout/drawing.hpp"

namespace ventfolio {

/// Reads a drawing from absolute commands: `M x y`, `L x y`, `Q x y x y`, `C x y x y x y`, `Z`. Scaled by `scale`.
/// Meant for the drawings that are part of the program; a fault in one is a fault of ours and throws std::logic_error.
Path path_from(std::string_view commands, double scale);

}  // namespace ventfolio
