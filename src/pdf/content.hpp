#pragma once

#include <string>

#include "layout/drawing.hpp"

namespace ventfolio {

/// What the two faces are called in a page's resources.
struct FaceNames {
    std::string regular;
    std::string bold;
};

/// The operators that draw a page (ISO 32000-1, 8.2), items in their order.
///
/// Text is written as two bytes a letter, which are its code point; the fonts are made for that. Throws
/// std::logic_error for a coordinate that is not a number, for kerns that do not match their text, and for what would
/// be drawn without being seen: a text without a size, a rule without a width.
std::string page_content(const PlacedPage& page, const FaceNames& faces);

}  // namespace ventfolio
