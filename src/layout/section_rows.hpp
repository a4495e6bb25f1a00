#pragma once

#include <vector>

#include "layout/section.hpp"

namespace ventfolio {

/// Where a section wants to begin.
enum class PageStart {
    anywhere,
    back,      ///< `.back`: on the second page, or wherever the text is if it is
               ///< beyond the first
    new_page,  ///< `.page`
};
PageStart page_start(const Section& section);

/// Sections that share the width: side by side by their spans, or `.half` ones that fill two columns in order. A single
/// one may be broken over pages.
std::vector<std::vector<Section>> rows_of_sections(const std::vector<Section>& sections);

/// The sections of a row side by side, in one piece.
Piece side_by_side(const std::vector<Section>& sections, double width, LayoutContext& context);

}  // namespace ventfolio
