#include <algorithm>

#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

/// Handwriting needs three lines an inch and five letters an inch (systems-analysis textbook rule, as quoted): rows of
/// 8.5 mm, and 15 mm for three digits.
constexpr double kRowHeight = mm(8.5);
constexpr double kWriteColumn = mm(15);
constexpr std::size_t kFixedColumns = 3;

std::size_t write_in_columns(const Block& table) {
    return std::max(table.head.cells.size(), kFixedColumns) - kFixedColumns;
}

struct LogColumns {
    double item;
    double expected;
    double accepted;
    double write;
    std::size_t first;  ///< write-in column that stands first on this side
    std::size_t count;  ///< write-in columns on this side

    double fixed() const { return item + expected + accepted; }
    double width() const { return fixed() + write * static_cast<double>(count); }
};

struct LogStyles {
    TextStyle head;
    TextStyle item;
    TextStyle expected;
    TextStyle accepted;
};

LogStyles log_styles(double scale) {
    LogStyles styles;
    styles.head = plain_style(kSmallestText * scale, Face::bold);
    styles.item = plain_style(10 * scale);
    styles.item.leading = 1.08;
    styles.expected = plain_style(kSmallestText * scale);
    styles.expected.number = TextStyle::Look{14 * scale, Face::bold};
    styles.expected.unit = TextStyle::Look{kSmallestText * scale, Face::regular};
    styles.expected.answer = TextStyle::Look{12 * scale, Face::bold};
    styles.expected.leading = 1.08;
    styles.accepted = plain_style(10 * scale);
    styles.accepted.leading = 1.08;
    return styles;
}

void put_write_in_cells(Frame& frame, const TableRow& row, const LogColumns& columns, LayoutContext& context) {
    const double side = kTickBox * context.scale;
    const double top = (frame.height - side) / 2;
    for (std::size_t at = 0; at < columns.count; ++at) {
        const double x = columns.fixed() + columns.write * static_cast<double>(at);
        frame.put_column_rule(x, kThinLine);
        const Inlines& inlines = cell(row, kFixedColumns + columns.first + at);
        const bool box =
            std::ranges::any_of(inlines, [](const Inline& p) { return p.kind == Inline::Kind::check_box; });
        if (!box && !inlines.empty()) context.refuse_unprinted("a word in a cell to write in", row.line);
        if (!box) continue;
        frame.put_box({{x + (columns.write - side) / 2, top}, side, side, kBoxLine, false, Ink::black},
                      {context.node, "check box", {}});
    }
    frame.put_column_rule(columns.width(), kThinLine);
}

Piece log_row(const TableRow& row, const LogColumns& columns, const LogStyles& styles, LayoutContext& context) {
    const Inlines& expected = cell(row, 1);
    const Inlines& accepted = cell(row, 2);
    const double pad = mm(1.2);
    // A row that has nothing to compare with gives its words the whole width; so does a long expected value.
    const double item_width = expected.empty() && accepted.empty() ? columns.fixed() : columns.item;
    const double expected_width = accepted.empty() ? columns.expected + columns.accepted : columns.expected;
    Frame item = set_text(cell(row, 0), styles.item, item_width - pad, "table cell", context);
    Frame value = set_text(expected, styles.expected, expected_width - pad, "table cell", context);
    Frame range = set_text(accepted, styles.accepted, columns.accepted - pad / 2, "table cell", context);

    Piece piece;
    piece.line = row.line;
    piece.field = first_field(expected);
    const double least = kRowHeight * room_to_write(context.scale);
    piece.frame.width = columns.width();
    piece.frame.height = std::max(least, std::max({item.height, value.height, range.height}) + mm(0.8));
    piece.frame.put_in_middle(std::move(item), 0);
    piece.frame.put_in_middle(std::move(value), columns.item);
    piece.frame.put_in_middle(std::move(range), columns.item + columns.expected);
    put_write_in_cells(piece.frame, row, columns, context);
    piece.frame.put_bottom_rule(kThinLine);
    return piece;
}

Piece log_head(const TableRow& row, const LogColumns& columns, const LogStyles& styles, LayoutContext& context) {
    Piece piece;
    piece.line = row.line;
    piece.keep_with_next = true;
    piece.repeats = true;
    piece.frame.width = columns.width();
    const double widths[kFixedColumns]{columns.item, columns.expected, columns.accepted};
    TextStyle centered = styles.head;
    centered.alignment = Alignment::center;
    double x = 0;
    std::vector<std::pair<Frame, double>> heads;
    const auto add = [&](std::size_t column, const TextStyle& style, double width) {
        heads.emplace_back(set_text(cell(row, column), style, width, "table head", context), x);
        x += width;
    };
    for (std::size_t at = 0; at < kFixedColumns; ++at) add(at, styles.head, widths[at]);
    for (std::size_t at = 0; at < columns.count; ++at) add(kFixedColumns + columns.first + at, centered, columns.write);
    put_heads(piece.frame, heads, mm(5.6) * context.scale);
    piece.frame.put_bottom_rule(kBoxLine);
    return piece;
}

double widest(const Block& table, std::size_t column, const TextStyle& style, double most, LayoutContext& context) {
    double width = 0;
    for (const TableRow& row : table.rows) {
        const double one = natural_width(cell(row, column), style, context);
        if (one <= most) width = std::max(width, one);
    }
    return width;
}

/// The columns for comparing take what their longest entries need, so that the write-in columns keep their width.
LogColumns log_columns(const Block& table, const LogStyles& styles, double width, LayoutContext& context) {
    const double scale = context.scale;
    LogColumns columns{};
    columns.expected = std::max(mm(21) * scale, widest(table, 1, styles.expected, mm(29) * scale, context) + mm(1.6));
    columns.accepted = std::max(mm(17) * scale, widest(table, 2, styles.accepted, mm(26) * scale, context) + mm(1.2));
    columns.item = mm(31) * scale;
    columns.write = kWriteColumn * room_to_write(scale);
    const std::size_t wanted = write_in_columns(table);
    constexpr double kNarrowestWrite = mm(13.4);
    constexpr double kNarrowestItem = mm(26);
    const double needed = kNarrowestWrite * static_cast<double>(wanted);
    if (!context.large_print())
        columns.item = std::clamp(width - columns.expected - columns.accepted - needed, kNarrowestItem, columns.item);
    const double room = std::max(0.0, width - columns.fixed());
    columns.count = std::min(wanted, static_cast<std::size_t>(room / kNarrowestWrite + 0.001));
    if (columns.count > 0) columns.write = std::min(columns.write, room / static_cast<double>(columns.count));
    columns.item = width - columns.expected - columns.accepted - columns.write * static_cast<double>(columns.count);
    return columns;
}

}  // namespace

Pieces set_log(const Block& table, double width, LayoutContext& context) {
    const LogStyles styles = log_styles(context.scale);
    LogColumns columns = log_columns(table, styles, width, context);
    const std::size_t wanted = write_in_columns(table);
    if (columns.count == 0) {
        context.refuse("log-without-columns", "The log has no column to write in.", table.line);
        return {};
    }
    Pieces pieces;
    for (; columns.first < wanted; columns.first += columns.count) {
        columns.count = std::min(columns.count, wanted - columns.first);
        Piece head = log_head(table.head, columns, styles, context);
        if (columns.first > 0) head.gap = mm(6);
        pieces.push_back(std::move(head));
        for (const TableRow& row : table.rows) {
            ++context.node;
            pieces.push_back(is_group_head(row) ? set_group_head(row, columns.width(), context)
                                                : log_row(row, columns, styles, context));
        }
    }
    return pieces;
}

}  // namespace ventfolio
