#include "layout/tables.hpp"

#include <algorithm>
#include <numeric>

namespace ventfolio {
namespace {

constexpr double kThin = mm(0.18);  // between rows; carries no meaning
const TableCell kEmptyCell;

const TableCell& cell(const TableRow& row, std::size_t column) {
    return column < row.cells.size() ? row.cells[column] : kEmptyCell;
}

bool blank(const TableCell& cell) { return cell.inlines.empty(); }

Piece row_piece(const TableRow& row, double width) {
    Piece piece;
    piece.frame.width = width;
    piece.line = row.line;
    for (const TableCell& one : row.cells)
        if (piece.field.empty()) piece.field = first_field(one.inlines);
    return piece;
}

struct RowColumns {
    double label;
    double value;
    bool stacked;  ///< the value goes below the label
};

/// The value keeps its line as long as the label can wrap beside it.
RowColumns row_columns(const TableRow& row, const TextStyle& label_style, const TextStyle& value_style, double width,
                       LayoutContext& context) {
    const double gap = mm(3);
    const double label_natural = natural_width(cell(row, 0).inlines, label_style, context);
    const double value_natural = natural_width(cell(row, 1).inlines, value_style, context);
    const double label_least =
        std::min(label_natural, std::max(widest_word(cell(row, 0).inlines, label_style, context), 0.3 * width));
    const double value_least = widest_word(cell(row, 1).inlines, value_style, context);
    if (label_least + gap + value_least > width + kFitTolerance) return {width, width, true};
    const double value = std::clamp(width - gap - label_natural, value_least, std::max(value_least, value_natural));
    const double fair = std::min(value_natural, std::max(value, 0.56 * width));
    const double chosen = std::min(std::max(value, fair), width - gap - label_least);
    return {width - gap - chosen, chosen, false};
}

/// Label and value on one baseline, the rule below them.
Piece set_row(const TableRow& row, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle label_style = plain_style(style.sizes.label);
    label_style.leading = 1.2;
    TextStyle answer_style = value_style(style.sizes);
    answer_style.alignment = Alignment::right;
    const RowColumns columns = row_columns(row, label_style, answer_style, width, context);
    Frame label = set_text(cell(row, 0).inlines, label_style, columns.label, "table cell", context);
    Frame value = set_text(cell(row, 1).inlines, answer_style, columns.value, "table cell", context);
    const double pad = mm(0.3) * context.scale;
    const double number_baseline = answer_style.leading * style.sizes.number * 0.5 + 0.28 * style.sizes.number;
    const double baseline = std::max({number_baseline, first_baseline(label), first_baseline(value)});
    const double label_top = columns.stacked ? pad : pad + baseline - first_baseline(label);
    const double value_top = columns.stacked ? pad + label.height : pad + baseline - first_baseline(value);
    Piece piece = row_piece(row, width);
    // Rows of words are as tall as rows of numbers, so that the rules stand at one distance.
    const double least = answer_style.leading * style.sizes.number + 2 * pad;
    piece.frame.height = std::max({least, label_top + label.height + pad, value_top + value.height + pad});
    piece.frame.put(std::move(label), 0, label_top);
    piece.frame.put(std::move(value), width - columns.value, value_top);
    piece.frame.put_rule({{0, piece.frame.height}, {width, piece.frame.height}, kThin, Ink::grey});
    return piece;
}

Piece set_note(const TableRow& row, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle look = plain_style(style.sizes.unit);
    look.leading = 1.22;
    Piece piece = row_piece(row, width);
    Frame text = set_text(cell(row, 0).inlines, look, width, "table cell", context);
    piece.frame.height = text.height + mm(1.2) * context.scale;
    piece.frame.put(std::move(text), 0, mm(1.0) * context.scale);
    return piece;
}

}  // namespace

Pieces set_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        pieces.push_back(blank(cell(row, 1)) ? set_note(row, style, width, context)
                                             : set_row(row, style, width, context));
    }
    return pieces;
}

namespace {

/// Two rows of cells are taken in at a glance: above that a further column is added. Large print has two.
std::size_t cell_columns(const Block& table, const SectionStyle& style, const LayoutContext& context) {
    if (context.scale > 1.2) return 2;
    const std::size_t columns = std::max<std::size_t>(1, style.number("columns", 3));
    if (table.rows.size() == columns + 1) return 2;  // four cells as two and two, not three and one
    return table.rows.size() > 2 * columns ? columns + 1 : columns;
}

/// The unit goes below the number where both do not fit on a line.
Frame set_cell_value(const Inlines& inlines, TextStyle look, double width, LayoutContext& context) {
    look.unit_below = widest_word(inlines, look, context) > width;
    return set_text(inlines, look, width, "table cell", context);
}

}  // namespace

Pieces set_cells(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    const std::size_t columns = cell_columns(table, style, context);
    const double column = width / static_cast<double>(columns);
    const double pad = mm(4);
    TextStyle label_style = plain_style(style.sizes.label);
    label_style.leading = 1.2;
    TextStyle answer_style = value_style(style.sizes);
    answer_style.leading = 1.1;
    Pieces pieces;
    for (std::size_t first = 0; first < table.rows.size(); first += columns) {
        const std::size_t last = std::min(first + columns, table.rows.size());
        Piece piece = row_piece(table.rows[first], width);
        std::vector<std::pair<Frame, Frame>> cells;
        double label_height = 0;
        double value_height = 0;
        for (std::size_t at = first; at < last; ++at) {
            ++context.node;
            const double text_width = column - (at == first ? mm(1) : pad + mm(1));
            cells.emplace_back(
                set_text(cell(table.rows[at], 0).inlines, label_style, text_width, "table cell", context),
                set_cell_value(cell(table.rows[at], 1).inlines, answer_style, text_width, context));
            label_height = std::max(label_height, cells.back().first.height);
            value_height = std::max(value_height, cells.back().second.height);
        }
        const double top = mm(1.5) * context.scale;
        piece.frame.height = top + label_height + mm(0.4) + value_height + mm(1.6) * context.scale;
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const double x = static_cast<double>(at) * column;
            if (at > 0) piece.frame.put_rule({{x, 0}, {x, piece.frame.height}, mm(0.25), Ink::black});
            const double indent = at == 0 ? 0 : pad;
            // Labels stand on the last line of the label band, so that all values of a row share a line.
            const double label_top = top + label_height - cells[at].first.height;
            piece.frame.put(std::move(cells[at].first), x + indent, label_top);
            piece.frame.put(std::move(cells[at].second), x + indent, top + label_height + mm(0.4));
        }
        piece.frame.put_rule({{0, piece.frame.height}, {width, piece.frame.height}, mm(0.25), Ink::black});
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

namespace {

struct GridStyles {
    TextStyle head;
    TextStyle body;
};

GridStyles grid_styles(const SectionStyle& style, const LayoutContext& context) {
    GridStyles styles{plain_style(9 * context.scale, Face::bold), value_style(style.sizes)};
    styles.head.leading = 1.15;
    styles.body.words.size = styles.body.unit->size = 10 * context.scale;
    styles.body.answer = TextStyle::Look{12 * context.scale, Face::bold};
    styles.body.unit_below = style.has("units-below");
    styles.body.leading = 1.16;
    return styles;
}

Inlines below_its_name(const Inlines& inlines);

std::vector<double> grid_columns(const Block& table, const GridStyles& styles, double width, LayoutContext& context) {
    const double gap = mm(3);
    const std::size_t count = table.head.cells.size();
    std::vector<double> natural(count, 0);
    for (std::size_t column = 0; column < count; ++column) {
        natural[column] = widest_word(cell(table.head, column).inlines, styles.head, context) + gap;
        for (const TableRow& row : table.rows)
            natural[column] = std::max(natural[column], natural_width(column == 0 ? below_its_name(cell(row, 0).inlines)
                                                                                  : cell(row, column).inlines,
                                                                      styles.body, context) +
                                                            gap);
    }
    const double others = std::accumulate(natural.begin() + 1, natural.end(), 0.0);
    const double least_first = 0.14 * width;
    if (others + least_first <= width) {
        // What is left over goes to every column alike, the first keeps what it needs.
        const double spare = std::max(0.0, width - others - natural[0]);
        for (double& one : natural) one += spare / static_cast<double>(count);
        natural[0] = width - std::accumulate(natural.begin() + 1, natural.end(), 0.0);
        return natural;
    }
    for (std::size_t column = 1; column < count; ++column) natural[column] *= (width - least_first) / others;
    natural[0] = least_first;
    return natural;
}

/// The first cell of a row: its name in bold, the rest on the next line.
Inlines below_its_name(const Inlines& inlines) {
    auto [name, rest] = split_after_strong(inlines);
    if (name.empty() || rest.empty()) return inlines;
    Inline line_end;
    line_end.kind = Inline::Kind::line_break;
    name.push_back(line_end);
    name.insert(name.end(), rest.begin(), rest.end());
    return name;
}

Piece set_grid_row(const TableRow& row, const TextStyle& look, const std::vector<double>& columns, double width,
                   std::string_view role, LayoutContext& context) {
    Piece piece = row_piece(row, width);
    std::vector<Frame> cells;
    for (std::size_t column = 0; column < columns.size(); ++column) {
        const Inlines inlines =
            column == 0 && role == "table cell" ? below_its_name(cell(row, 0).inlines) : cell(row, column).inlines;
        TextStyle style = look;
        if (column == 0) style.answer = style.words;  // below the name, not beside it
        cells.push_back(set_text(inlines, style, columns[column] - mm(2), role, context));
        piece.frame.height = std::max(piece.frame.height, cells.back().height);
    }
    const bool head = role == "table head";
    const double content = piece.frame.height;
    piece.frame.height += mm(head ? 1.6 : 2.2) * context.scale;
    double x = 0;
    for (std::size_t column = 0; column < columns.size(); ++column) {
        // Heads of one and of two lines stand on the same ground line.
        const double top = head ? content - cells[column].height + mm(0.6) : mm(1.0) * context.scale;
        piece.frame.put(std::move(cells[column]), x, top);
        x += columns[column];
    }
    piece.frame.put_rule(
        {{0, piece.frame.height}, {width, piece.frame.height}, head ? mm(0.35) : mm(0.25), Ink::black});
    return piece;
}

}  // namespace

namespace {

bool grid_fits(const Block& table, const GridStyles& styles, const std::vector<double>& columns,
               LayoutContext& context) {
    for (std::size_t column = 0; column < columns.size(); ++column) {
        const double room = columns[column] - mm(2) + kFitTolerance;
        if (widest_word(cell(table.head, column).inlines, styles.head, context) > room) return false;
        for (const TableRow& row : table.rows)
            if (widest_word(cell(row, column).inlines, styles.body, context) > room) return false;
    }
    return true;
}

/// A grid too wide for the page, one row after the other: its name, then each head with its value.
Pieces set_grid_as_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        TextStyle name = plain_style(style.sizes.heading, Face::bold);
        name.leading = 1.2;
        Piece head = row_piece(row, width);
        Frame text = set_text(cell(row, 0).inlines, name, width, "table cell", context);
        head.frame.height = text.height;
        head.frame.put(std::move(text), 0, 0);
        head.gap = mm(2);
        head.keep_with_next = true;
        pieces.push_back(std::move(head));
        for (std::size_t column = 1; column < table.head.cells.size(); ++column) {
            TableRow pair;
            pair.line = row.line;
            pair.cells = {cell(table.head, column), cell(row, column)};
            pieces.push_back(set_row(pair, style, width, context));
        }
    }
    return pieces;
}

}  // namespace

Pieces set_grid(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    const GridStyles styles = grid_styles(style, context);
    const std::vector<double> columns = grid_columns(table, styles, width, context);
    if (!grid_fits(table, styles, columns, context)) return set_grid_as_rows(table, style, width, context);
    Pieces pieces;
    Piece head = set_grid_row(table.head, styles.head, columns, width, "table head", context);
    head.keep_with_next = true;
    head.repeats = true;
    pieces.push_back(std::move(head));
    for (const TableRow& row : table.rows) {
        ++context.node;
        pieces.push_back(set_grid_row(row, styles.body, columns, width, "table cell", context));
    }
    return pieces;
}

}  // namespace ventfolio
