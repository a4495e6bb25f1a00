#include "layout/table_row.hpp"

#include <algorithm>

#include "layout/measures.hpp"

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

bool is_group_head(const TableRow& row) {
    const Inlines& first = cell(row, 0);
    const bool bold = !first.empty() && std::ranges::all_of(first, [](const Inline& piece) { return piece.strong; });
    return bold && std::ranges::all_of(row.cells.begin() + 1, row.cells.end(),
                                       [](const TableCell& one) { return one.inlines.empty(); });
}

Piece set_group_head(const TableRow& row, double width, LayoutContext& context) {
    TextStyle look = plain_style(10 * context.scale, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.2;
    Piece piece;
    piece.line = row.line;
    piece.keep_with_next = true;
    Frame text = set_text(cell(row, 0), look, width - mm(4), "table head", context);
    piece.frame.width = width;
    piece.frame.height = text.height + mm(0.9) * context.scale;
    piece.frame.put_black_field({context.node, "table head", {}});
    piece.frame.put_in_middle(std::move(text), mm(1.6));
    return piece;
}

void put_heads(Frame& frame, const std::vector<std::pair<Frame, double>>& heads, double least) {
    constexpr double kAir = mm(0.6);
    frame.height = least;
    for (const auto& [head, x] : heads) frame.height = std::max(frame.height, head.height + kAir);
    for (const auto& [head, x] : heads) frame.put_in_middle(head, x);
}

double room_to_write(double scale) { return std::max(1.0, 0.8 * scale); }

void check_columns(const TableRow& row, std::size_t columns, LayoutContext& context) {
    for (std::size_t at = columns; at < row.cells.size(); ++at)
        if (!cell(row, at).empty())
            context.refuse_unprinted("a cell beyond the last column", row.line, first_field(cell(row, at)));
}

}  // namespace ventfolio
