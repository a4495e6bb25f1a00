#pragma once

#include <utility>
#include <vector>

#include "layout/frame.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// Of lines with boxes to tick: below one another they do not touch.
inline constexpr double kLeadingOfBoxes = 1.36;

/// The inlines of a cell; none where the row is shorter than its table.
const Inlines& cell(const TableRow& row, std::size_t column);

/// An empty piece of this width, which knows the row's place in the template and its first field.
Piece row_piece(const TableRow& row, double width);

/// Bold words in the first cell and nothing in the others: what follows belongs under it.
bool is_group_head(const TableRow& row);
/// Such a row as white words on a black bar; it stays with the next row.
Piece set_group_head(const TableRow& row, double width, LayoutContext& context);

/// Heads of columns, each at its distance from the left, in the middle of a row that is as high as the highest of them
/// and no lower than `least`. The frame is still empty.
void put_heads(Frame& frame, const std::vector<std::pair<Frame, double>>& heads, double least);

/// Handwriting grows less than print does: large print asks for a fifth more room, not for half.
double room_to_write(double scale);

/// Refuses words in cells beyond the first `columns`.
void check_columns(const TableRow& row, std::size_t columns, LayoutContext& context);

}  // namespace ventfolio
