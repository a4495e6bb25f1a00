#pragma once

#include "layout/blocks.hpp"

/// The looks of a table. Which one a table has is decided by the classes of its section: `.cells`, `.log`, or, without
/// one, rows of label and value where the head is empty and a grid where it is not.
namespace ventfolio {

/// Label left, value right, a thin rule below. A row with nothing in its second cell is a note across both.
Pieces set_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// Each row of the table is a cell, label over value, `columns` side by side.
Pieces set_cells(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// Columns with heads; the first takes what the others leave.
Pieces set_grid(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// A log to write in: item, expected, accepted, then one column for each time. A row with bold words in its first cell
/// only is a group head.
Pieces set_log(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
