#pragma once

#include <map>
#include <string>
#include <vector>

#include "layout/drawing.hpp"

namespace ventfolio {

/// What the two faces are called in a page's resources.
struct FaceNames {
    std::string regular;
    std::string bold;
};

/// What the pictures of a page are called there.
using PictureNames = std::map<const Picture*, std::string>;

struct PageContent {
    std::string operators;
    /// The element of the sheet's structure that each marked stretch belongs to, by the number of the stretch.
    std::vector<std::size_t> marked;
};

/// The operators that draw a page (ISO 32000-1, 8.2), items in their order.
///
/// Text is written as two bytes a letter, which are its code point; the fonts are made for that. What belongs to an
/// element is marked with a number that the element can point at, all else as an artifact (14.6, 14.8.2.2). Throws
/// std::logic_error for a coordinate that is not a number, for kerns that do not match their text, and for what would
/// be drawn without being seen: a text without a size, a rule without a width, a picture without a name.
PageContent page_content(const PlacedPage& page, const FaceNames& faces, const PictureNames& pictures = {});

}  // namespace ventfolio
