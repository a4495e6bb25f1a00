#pragma once

#include <string>

#include "sheets/document.hpp"

namespace ventfolio {

/// Everything that a sheet says, as one text in which nothing can pass for something else: each piece carries its
/// length, each block and cell its own brackets. A word that moves to the next cell changes it.
///
/// In it: title, identifiers, the mark "not yet checked", every word and value of the blocks, figure names with what
/// they show, check boxes and lines to write on, call-out labels, options in braces (`aside`, figure data), list and
/// heading structure.
///
/// Left out, because the paper says the same without them: name, place, language and template of the sheet, lines of
/// the template, the field a value comes from, emphasis, classes, table alignment, the width `span`. Also a block with
/// class `calendar`, which changes with the day of printing; under a heading of that class, all blocks down to the
/// next heading of its level or above. And the sheet's own code where it prints it (own_code.hpp): it is made from all
/// the rest.
///
/// Throws std::logic_error if an option still holds an unresolved value token: the value would not count.
std::string canonical_words(const Document& document);

}  // namespace ventfolio
