#pragma once

#include <string>
#include <string_view>

namespace ventfolio {

/// What a file says of itself, for programs that do not read PDF (ISO 16684-1): title and language. It has no date and
/// no maker, and is not padded for being edited in place, so the same title gives the same few bytes.
///
/// It does not say that the file conforms to ISO 14289-1: DEVELOPERS.md tells which clauses are not met.
std::string metadata(std::string_view title, std::string_view language);

}  // namespace ventfolio
