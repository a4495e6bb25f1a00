#pragma once

#include "pdf/haru.hpp"
#include "pdf/subset.hpp"

namespace ventfolio {

/// Puts a font into a document as a composite font whose two-byte codes are code points (ISO 32000-1, 9.7). The
/// dictionaries are written here because the library's own font loader loses accents that sit on composite glyphs,
/// adds a second boldness to bold faces, cuts widths to whole thousandths, writes a text map that readers complain
/// about, and searches each font 65,536 times.
HPDF_Dict embed_font(HaruDocument& document, const FontSubset& font);

}  // namespace ventfolio
