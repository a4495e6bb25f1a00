#pragma once

#include <string>

namespace ventfolio {

/// Why a script cannot be set yet: its letters run from right to left, or change their shape beside others. These
/// sheets set one glyph for each letter, from left to right. Empty for a letter that can be set, and for what belongs
/// to no script, such as digits.
///
/// Example: of U+05D0 it is "runs from right to left (script Hebr)". Scripts are those of ISO 15924, as HarfBuzz has
/// them from the Unicode Character Database.
std::string why_not_set(char32_t letter);

/// What kind of character it is, by its general category in Unicode: "letter", "mark", "number", "sign" or "blank".
const char* kind_of(char32_t letter);

}  // namespace ventfolio
