#pragma once

#include <vector>

#include "layout/section.hpp"

namespace ventfolio {

/// A section that has been set in one piece, waiting for its column.
struct ColumnItem {
    Frame frame;
    std::string field;
    std::size_t line = 0;
};
using ColumnItems = std::vector<ColumnItem>;

/// Sections set to half of the width.
ColumnItems column_items(const std::vector<Section>& sections, double width, LayoutContext& context);

/// How the first items of a list share two columns: so that both are of like height, in order, the left one first.
struct ColumnSplit {
    std::size_t left;  ///< items in the left column
    double height;     ///< of the taller one
};
ColumnSplit best_split(const ColumnItems& items, std::size_t count);

/// The first `count` items in two columns, taken out of the list. The columns are only as tall as the split says.
Piece take_two_columns(ColumnItems& items, std::size_t count, double width);

}  // namespace ventfolio
