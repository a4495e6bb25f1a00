#pragma once

#include <array>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "layout/drawing.hpp"

namespace ventfolio {

/// A TrueType font cut down to the letters that a document draws, and what a PDF file says about it. Lengths are in
/// 1/1000 of the type size.
struct FontSubset {
    struct Letter {
        char32_t code_point = 0;
        std::uint16_t glyph = 0;  ///< its number in the subset
        double width = 0;
    };

    std::string name;             ///< "ABCDEF+NotoSans-Regular": the letters differ if the subset does
    std::string bytes;            ///< the font file
    std::vector<Letter> letters;  ///< by rising code point
    double ascent = 0;
    double descent = 0;  ///< below the baseline: negative
    double cap_height = 0;
    double stem = 0;                       ///< thickness of an upright stroke
    std::array<double, 4> bounding_box{};  ///< of all glyphs of the face: left, bottom, right, top
};

/// Cuts a face down to these letters. Throws std::logic_error that names the first letter which the face does not have:
/// such a text is refused long before it is drawn. PdfError for a font that cannot be read.
FontSubset subset_font(Face face, const std::set<char32_t>& letters);

}  // namespace ventfolio
