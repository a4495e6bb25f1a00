#pragma once

#include <vector>

#include "markup/expansion.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// Parses the Markdown of an expanded template into blocks. Refused: what this paper never uses (italics, code, links,
/// raw HTML, plain quotes, pictures that are not figures), what would print as stray signs (`*` or `|` that mean
/// nothing), attributes that cannot be read, and words or values that Markdown would drop without a word, such as a
/// cell beyond the last column.
std::vector<Block> parse_blocks(const Expansion& from, Faults& faults);

/// The same for one line of words without blocks: the title.
Inlines parse_words(const Expansion& from, Faults& faults);

}  // namespace ventfolio
