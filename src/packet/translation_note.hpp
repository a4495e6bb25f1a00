#pragma once

#include "layout/lay_out.hpp"
#include "sheets/word_book.hpp"

namespace ventfolio {

/// Adds a sentence to the footer of a page whose language no medical translator has reviewed (`reviewed: no` in its
/// file of words), in that language. It is furniture: no sheet code depends on it.
void add_translation_note(const WordBook& words, Furniture& furniture);

}  // namespace ventfolio
