#include <algorithm>
#include <numeric>

#include "layout/state_tag.hpp"
#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

constexpr double kCellGap = mm(2);    // between the text of a cell and the next column
constexpr double kLeastFirst = 0.14;  // of the width: what the first column
                                      // keeps where the others need much

struct GridStyles {
    TextStyle head;
    TextStyle body;
    bool dense = false;    ///< rows stand close, as a list that is looked through
    std::size_t tags = 0;  ///< the column whose cells are tags, from 1; 0: none
    double tag_size = 0;

    bool is_tag(std::size_t column) const { return column + 1 == tags; }
};

GridStyles grid_styles(const SectionStyle& style, double scale) {
    GridStyles styles{plain_style(kSmallestText * scale, Face::bold), value_style(style.sizes)};
    styles.head.leading = 1.15;
    styles.body.words.size = styles.body.unit->size = 10 * scale;
    styles.body.answer = TextStyle::Look{12 * scale, Face::bold};
    styles.body.unit_below = style.has("units-below");
    if (style.has("plain")) styles.body = plain_style(10 * scale);
    styles.body.leading = 1.16;
    styles.dense = style.has("dense");
    styles.tags = style.number("tags", 0);
    styles.tag_size = kSmallestText * scale;
    return styles;
}

/// The first cell of a row: its name in bold, the rest on the next line.
Inlines below_its_name(const Inlines& inlines) {
    auto [name, rest] = split_after_strong(inlines);
    if (name.empty() || rest.empty()) return inlines;
    Inline line_end;
    line_end.kind = Inline::Kind::line_break;
    name.push_back(std::move(line_end));
    std::ranges::move(rest, std::back_inserter(name));
    return name;
}

Inlines body_cell(const TableRow& row, std::size_t column) {
    return column == 0 ? below_its_name(cell(row, 0)) : cell(row, column);
}

/// What each column needs: its head's longest word, its cells on one line each.
std::vector<double> needed_widths(const Block& table, const GridStyles& styles, LayoutContext& context) {
    std::vector<double> widths;
    for (std::size_t column = 0; column < table.head.cells.size(); ++column) {
        double needed = widest_word(cell(table.head, column), styles.head, context);
        for (const TableRow& row : table.rows)
            needed =
                std::max(needed, styles.is_tag(column) ? state_tag_width(cell(row, column), styles.tag_size, context)
                                                       : natural_width(body_cell(row, column), styles.body, context));
        widths.push_back(needed + kColumnGap);
    }
    return widths;
}

/// What is left over goes to every column alike. Where there is too little, all but the first give up in proportion.
std::vector<double> grid_columns(const Block& table, const GridStyles& styles, double width, LayoutContext& context) {
    std::vector<double> widths = needed_widths(table, styles, context);
    const auto all_but_first = [&] { return std::accumulate(widths.begin() + 1, widths.end(), 0.0); };
    const double others = all_but_first();
    const double least_first = kLeastFirst * width;
    if (others + least_first > width) {
        for (double& one : widths) one *= (width - least_first) / others;
        widths[0] = least_first;
        return widths;
    }
    const double spare = std::max(0.0, width - others - widths[0]);
    for (double& one : widths) one += spare / static_cast<double>(widths.size());
    widths[0] = width - all_but_first();
    return widths;
}

/// Narrow columns are as wide as their cells; the others share the rest by what they hold.
std::vector<double> plain_columns(const Block& table, const GridStyles& styles, double width, LayoutContext& context) {
    constexpr double kNarrow = 0.3;  // of the width
    std::vector<double> widths = needed_widths(table, styles, context);
    double rest = width;
    double wide = 0;
    for (const double needed : widths) {
        if (needed <= kNarrow * width)
            rest -= needed;
        else
            wide += needed;
    }
    if (wide == 0) {
        for (double& one : widths) one += rest / static_cast<double>(widths.size());
        return widths;
    }
    for (double& one : widths)
        if (one > kNarrow * width) one *= rest / wide;
    return widths;
}

bool grid_fits(const Block& table, const GridStyles& styles, const std::vector<double>& columns,
               LayoutContext& context) {
    for (std::size_t column = 0; column < columns.size(); ++column) {
        const double room = columns[column] - kCellGap + kFitTolerance;
        if (widest_word(cell(table.head, column), styles.head, context) > room) return false;
        for (const TableRow& row : table.rows)
            if ((styles.is_tag(column) ? state_tag_width(cell(row, column), styles.tag_size, context)
                                       : widest_word(cell(row, column), styles.body, context)) > room)
                return false;
    }
    return true;
}

Piece grid_head(const TableRow& row, const TextStyle& look, const std::vector<double>& columns, double width,
                LayoutContext& context) {
    Piece piece = row_piece(row, width);
    piece.keep_with_next = true;
    piece.repeats = true;
    std::vector<Frame> heads;
    double text_height = 0;
    for (std::size_t column = 0; column < columns.size(); ++column) {
        heads.push_back(set_text(cell(row, column), look, columns[column] - kCellGap, "table head", context));
        text_height = std::max(text_height, heads.back().height);
    }
    piece.frame.height = text_height + mm(1.6) * context.scale;
    double x = 0;
    // Heads of one and of two lines stand on the same ground line.
    for (std::size_t column = 0; column < columns.size(); x += columns[column], ++column)
        piece.frame.put_above(std::move(heads[column]), x, text_height + mm(0.6));
    piece.frame.put_bottom_rule(kBoxLine);
    return piece;
}

Piece grid_row(const TableRow& row, const GridStyles& styles, const std::vector<double>& columns, double width,
               LayoutContext& context) {
    TextStyle look = styles.body;
    const bool boxes = std::ranges::any_of(row.cells, [](const TableCell& one) {
        return std::ranges::any_of(one.inlines, [](const Inline& p) { return p.kind == Inline::Kind::check_box; });
    });
    if (boxes) look.leading = kLeadingOfBoxes;
    const double above = mm(boxes ? 0.3 : styles.dense ? 0.5 : 1.0) * context.scale;
    const double below = mm(boxes ? 0.5 : styles.dense ? 0.45 : 1.2) * context.scale;
    Piece piece = row_piece(row, width);
    TextStyle first_look = look;
    first_look.answer = look.words;  // below the name, not beside it
    double x = 0;
    double text_height = 0;
    for (std::size_t column = 0; column < columns.size(); x += columns[column], ++column) {
        if (styles.is_tag(column)) {
            Frame tag = set_state_tag(cell(row, column), styles.tag_size, "table cell", context);
            const double baseline = above + baseline_at(look.words.size, look.leading);
            piece.frame.put(std::move(tag), x, std::max(0.0, baseline - first_baseline(tag)));
            continue;
        }
        Frame text = set_text(body_cell(row, column), column == 0 ? first_look : look, columns[column] - kCellGap,
                              "table cell", context);
        text_height = std::max(text_height, text.height);
        piece.frame.put(std::move(text), x, above);
    }
    piece.frame.height = above + text_height + below;
    piece.frame.put_bottom_rule(kThinLine);
    return piece;
}

/// A table without rows: its heads one under another, where no row says them.
Piece heads_alone(const Block& table, const TextStyle& look, double width, LayoutContext& context) {
    Piece piece = row_piece(table.head, width);
    for (const TableCell& head : table.head.cells)
        piece.frame.append(set_text(head.inlines, look, width, "table head", context));
    return piece;
}

/// A grid too wide for the page, one row after the other: its name below the first head, then each other
/// head with its value.
Pieces set_grid_as_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle name = plain_style(style.sizes.heading, Face::bold);
    name.leading = 1.2;
    const TextStyle label = plain_style(style.sizes.label);
    if (table.rows.empty()) return {heads_alone(table, label, width, context)};
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        Piece head = row_piece(row, width);
        head.frame.append(set_text(cell(table.head, 0), label, width, "table head", context));
        head.frame.append(set_text(cell(row, 0), name, width, "table cell", context));
        head.gap = mm(2);
        head.keep_with_next = true;
        pieces.push_back(std::move(head));
        for (std::size_t column = 1; column < table.head.cells.size(); ++column) {
            const TableRow pair{{TableCell{cell(table.head, column)}, TableCell{cell(row, column)}}, row.line};
            pieces.push_back(set_row(pair, style, width, context));
        }
    }
    return pieces;
}

}  // namespace

Pieces set_grid(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (table.head.cells.empty()) return set_rows(table, style, width, context);
    const GridStyles styles = grid_styles(style, context.scale);
    const std::vector<double> columns =
        style.has("plain") ? plain_columns(table, styles, width, context) : grid_columns(table, styles, width, context);
    if (!grid_fits(table, styles, columns, context)) return set_grid_as_rows(table, style, width, context);
    Pieces pieces{grid_head(table.head, styles.head, columns, width, context)};
    for (const TableRow& row : table.rows) {
        ++context.node;
        pieces.push_back(grid_row(row, styles, columns, width, context));
    }
    return pieces;
}

}  // namespace ventfolio
