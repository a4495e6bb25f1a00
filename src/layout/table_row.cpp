#include "layout/table_row.hpp"

namespace ventfolio {

const Inlines& cell(const TableRow& row, std::size_t column) {
    static const Inlines kNothing;
    return column < row.cells.size() ? row.cells[column].inlines : kNothing;
}

Piece row_piece(const TableRow& row, double width) {
    Piece piece;
    piece.frame.width = width;
    piece.line = row.line;
    for (const TableCell& one : row.cells)
        if (piece.field.empty()) piece.field = first_field(one.inlines);
    return piece;
}

void check_columns(const TableRow& row, std::size_t columns, LayoutContext& context) {
    for (std::size_t at = columns; at < row.cells.size(); ++at)
        if (!cell(row, at).empty())
            context.refuse_unprinted("a cell beyond the last column", row.line, first_field(cell(row, at)));
}

}  // namespace ventfolio
