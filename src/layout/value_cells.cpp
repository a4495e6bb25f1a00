#include <algorithm>
#include <span>

#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

constexpr double kCellPad = mm(4);      // from the line left of a cell
constexpr double kRoomAtRight = mm(1);  // between a value and the next line
constexpr double kValueBelowLabel = mm(0.4);

/// Two rows of cells are taken in at a glance: above that a further column is added.
std::size_t cell_columns(const Block& table, const SectionStyle& style, const LayoutContext& context) {
    if (context.large_print()) return 2;
    const std::size_t columns = std::max<std::size_t>(1, style.number("columns", 3));
    if (table.rows.size() == columns + 1) return 2;  // four cells as two and two, not three and one
    return table.rows.size() > 2 * columns ? columns + 1 : columns;
}

/// The unit goes below the number where both do not fit on a line.
Frame set_cell_value(const Inlines& inlines, TextStyle look, double width, LayoutContext& context) {
    look.unit_below = widest_word(inlines, look, context) > width;
    return set_text(inlines, look, width, "table cell", context);
}

struct CellStyles {
    TextStyle label;
    TextStyle value;
};

CellStyles cell_styles(const TypeSizes& sizes) {
    CellStyles styles{plain_style(sizes.label), value_style(sizes)};
    styles.label.leading = 1.2;
    styles.value.leading = 1.1;
    return styles;
}

struct Cell {
    Frame label;
    Frame value;
};

double indent_of(std::size_t at) { return at == 0 ? 0 : kCellPad; }

/// Cells side by side. Labels stand on the last line of the label band, so that all values of a row share a line.
Frame in_a_row(std::vector<Cell> cells, double column, double width, double scale) {
    double label_band = 0;
    double value_band = 0;
    for (const Cell& cell : cells) {
        label_band = std::max(label_band, cell.label.height);
        value_band = std::max(value_band, cell.value.height);
    }
    const double above = mm(1.5) * scale;
    const double below = mm(1.6) * scale;
    const double value_top = above + label_band + kValueBelowLabel;
    Frame row;
    row.width = width;
    row.height = value_top + value_band + below;
    for (std::size_t at = 0; at < cells.size(); ++at) {
        const double x = static_cast<double>(at) * column;
        if (at > 0) row.put_column_rule(x, kThinLine);
        row.put_above(std::move(cells[at].label), x + indent_of(at), above + label_band);
        row.put(std::move(cells[at].value), x + indent_of(at), value_top);
    }
    row.put_bottom_rule(kThinLine);
    return row;
}

}  // namespace

Pieces set_cells(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    const std::size_t columns = cell_columns(table, style, context);
    const double column = width / static_cast<double>(columns);
    const CellStyles styles = cell_styles(style.sizes);
    Pieces pieces;
    for (std::size_t first = 0; first < table.rows.size(); first += columns) {
        const std::size_t count = std::min(columns, table.rows.size() - first);
        std::vector<Cell> cells;
        for (std::size_t at = 0; at < count; ++at) {
            ++context.node;
            const TableRow& row = table.rows[first + at];
            check_columns(row, 2, context);
            const double text_width = column - indent_of(at) - kRoomAtRight;
            cells.push_back({set_text(cell(row, 0), styles.label, text_width, "table cell", context),
                             set_cell_value(cell(row, 1), styles.value, text_width, context)});
        }
        Piece piece = row_piece(table.rows[first], width);
        piece.frame = in_a_row(std::move(cells), column, width, context.scale);
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

}  // namespace ventfolio
