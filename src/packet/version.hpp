#pragma once

#include <string_view>

namespace ventfolio {

/// Of the program: "0.1.0".
std::string_view program_version();

}  // namespace ventfolio
