#pragma once

#include <string>

#include "sheets/document.hpp"

namespace ventfolio {

/// The value `own_code` of a template: the code of the sheet that prints it, such as "K7M-2QD". A code is made from
/// what its sheet says, so it cannot be part of that: canonical_words passes over it, and it is filled in afterwards.
PrintedValue own_code(std::string code);
bool is_own_code(const PrintedValue& value);

/// Puts the code where a document prints its own.
void fill_in_own_code(Document& document, const std::string& code);

}  // namespace ventfolio
