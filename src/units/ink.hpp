#pragma once

#include <string_view>

namespace ventfolio {

/// Whether a text of valid UTF-8 leaves a mark on paper: false if it has only blanks of any width, characters that
/// steer the setting of others (zero-width space, soft hyphen), and accents without a letter.
/// Source: Unicode Standard 15, table 4-4, general categories Zs, Zl, Zp, Cc, Cf, Mn, Me and Cn.
bool has_ink(std::string_view utf8);

}  // namespace ventfolio
