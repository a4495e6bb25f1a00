#pragma once

#include "units/ascii.hpp"

namespace ventfolio::sheet_check {

/// Whether a byte of a text is part of a letter: whatever lies beyond ASCII is taken for one.
constexpr bool is_letter(char c) {
    return is_small_letter(c) || is_capital_letter(c) || static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace ventfolio::sheet_check
