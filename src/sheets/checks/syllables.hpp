#pragma once

#include <string_view>

namespace ventfolio::sheet_check {

/// Syllables of an English word, by its spelling: groups of vowels, less those that are silent. 1 or more. Wrong by one
/// for a few words in a hundred, which a grade over a whole text evens out.
int syllables(std::string_view word);

}  // namespace ventfolio::sheet_check
