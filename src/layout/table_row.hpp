#pragma once

#include "layout/frame.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// The inlines of a cell; none where the row is shorter than its table.
const Inlines& cell(const TableRow& row, std::size_t column);

/// An empty piece of this width, which knows the row's place in the template and its first field.
Piece row_piece(const TableRow& row, double width);

/// Refuses words in cells beyond the first `columns`.
void check_columns(const TableRow& row, std::size_t columns, LayoutContext& context);

}  // namespace ventfolio
