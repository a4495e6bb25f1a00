#pragma once

#include "layout/blocks.hpp"

/// The looks of a table. Which one a table has is decided by the classes of its section: `.cells`, `.log`, `.form`,
/// `.index`, `.ruled`, or, without one, rows of label and value where the head is empty and a grid where it is not.
/// Each makes one piece or more for each row of the table, and counts the row as a block of its own in reading order.
namespace ventfolio {

/// Label left, value right, a thin rule below. A row with nothing in its second cell is a note across both.
Pieces set_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context);
/// One such row: label and value on one baseline, or the value below where they do not fit side by side.
Piece set_row(const TableRow& row, const SectionStyle& style, double width, LayoutContext& context);

/// Each row of the table is a cell, label over value, `columns` side by side.
Pieces set_cells(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// An index: a name in bold and its meaning, dashes, a number in a box.
Pieces set_index(const Block& table, double width, LayoutContext& context);

/// Columns with heads, values large; with `.plain` values look like the words round them, and narrow columns are as
/// wide as their cells; with `tags=3` the third column holds tags (state_tag.hpp), with `.dense` rows stand close. The
/// first takes what the others leave. A table that is too wide for that becomes rows: the first cell of each as a
/// heading below its head, then each other head with its value.
Pieces set_grid(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// Words and room to write, `.ruled`: a column whose cells are all empty is ruled and keeps room for handwriting, and
/// so does every row, unless the section is `.tight`. The widest column of words takes what is left. A row of bold
/// words only is white on black.
Pieces set_ruled(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// A log to write in: item, expected, accepted, then one column for each time. A row with bold words in its first cell
/// only is a group head. Times that do not fit beside one another follow below, with the first three columns again.
Pieces set_log(const Block& table, double width, LayoutContext& context);

/// A form to fill in by hand: the columns that no row says anything in are cells to write in, `write` mm wide, and rows
/// are `row` mm tall. With `.dated` a cell has a line across: the date goes above it, initials below. Where the first
/// column has no head, its bold words open a group, which is kept on one page; else bold words alone in a row head what
/// follows.
Pieces set_form(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

/// What was and what is now, `.was-now`: the thing that changes, old, new, then a cell to write in for each machine,
/// under its name. New in bold is set large: a machine is set to it. Bold words alone in a row
/// head what follows, and a row without old and new runs on over their columns. Where the page is too narrow, the cells
/// of each row stand below it, each under its machine's name.
Pieces set_changes(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
