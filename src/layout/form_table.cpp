#include <algorithm>

#include "layout/form_columns.hpp"
#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

/// Three lines an inch (systems-analysis textbook rule, as quoted): a row to write in.
constexpr std::size_t kRow = 9;
/// A group of more rows than this may be broken over pages.
constexpr std::size_t kLargestWholeGroup = 9;

Piece form_head(const TableRow& row, const FormColumns& columns, const FormStyles& styles, double width,
                LayoutContext& context) {
    Piece piece = row_piece(row, width);
    piece.keep_with_next = true;
    piece.repeats = true;
    std::vector<Frame> heads;
    double height = 0;
    for (std::size_t at = 0; at < columns.size(); ++at) {
        TextStyle look = styles.head;
        if (columns[at].by_hand()) look.alignment = Alignment::center;
        const double pad = columns[at].by_hand() ? 0 : kFormPad;
        heads.push_back(set_text(cell(row, at), look, columns[at].width - pad, "table head", context));
        height = std::max(height, heads.back().height);
    }
    piece.frame.height = height + mm(1.6) * context.scale;
    double x = 0;
    for (std::size_t at = 0; at < columns.size(); x += columns[at].width, ++at)
        piece.frame.put_above(std::move(heads[at]), x, height + mm(0.6));
    piece.frame.put_bottom_rule(kBoldLine);
    return piece;
}

/// A cell to write in: its lines left and right, a box to tick, a line between date and initials.
void put_hand_cell(Frame& frame, const TableRow& row, std::size_t at, double x, const FormColumn& column, bool dated,
                   LayoutContext& context) {
    frame.put_column_rule(x, kThinLine);
    frame.put_column_rule(x + column.width, kThinLine);
    const double middle = frame.height / 2;
    if (has_check_box(cell(row, at))) {
        const double side = kTickBox * context.scale;
        frame.put_box({{x + (column.width - side) / 2, middle - side / 2}, side, side, kBoxLine, false, Ink::black},
                      {context.node, "check box", {}});
    } else if (dated) {
        constexpr double kInset = mm(2);
        frame.put_rule({{x + kInset, middle}, {x + column.width - kInset, middle}, kHairline, Ink::grey});
    }
}

struct FormRow {
    bool last_of_group = false;
    double least_height = 0;
    bool dated = false;
    bool printed_only = false;  ///< nothing is written in it, only ticked
};

Piece form_row(const TableRow& row, const FormRow& form, const FormColumns& columns, const FormStyles& styles,
               double width, LayoutContext& context) {
    Piece piece = row_piece(row, width);
    std::vector<Frame> texts(columns.size());
    double height = form.least_height;
    for (std::size_t at = 0; at < columns.size(); ++at) {
        if (columns[at].by_hand()) continue;
        TextStyle look = is_item(columns, at) ? styles.words : styles.value;
        if (has_check_box(cell(row, at)) && !form.printed_only) look.leading = kLeadingOfBoxes;
        texts[at] = set_text(cell(row, at), look, columns[at].width - kFormPad, "table cell", context);
        height = std::max(height, texts[at].height + mm(1.4) * context.scale);
    }
    piece.frame.height = height;
    double x = 0;
    for (std::size_t at = 0; at < columns.size(); x += columns[at].width, ++at) {
        if (columns[at].by_hand())
            put_hand_cell(piece.frame, row, at, x, columns[at], form.dated, context);
        else
            piece.frame.put_in_middle(std::move(texts[at]), x);
    }
    const double from =
        columns.front().kind == FormColumn::Kind::group && !form.last_of_group ? columns.front().width : 0;
    const double bottom = height;
    piece.frame.put_rule({{from, bottom}, {width, bottom}, form.last_of_group ? kBoldLine : kThinLine, Ink::black});
    return piece;
}

/// The rows of the group that begins at `first`.
std::size_t group_size(const Block& table, std::size_t first) {
    std::size_t end = first + 1;
    while (end < table.rows.size() && cell(table.rows[end], 0).empty()) ++end;
    return end - first;
}

}  // namespace

Pieces set_form(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (table.head.cells.empty()) return set_rows(table, style, width, context);
    const FormStyles styles = form_styles(context.scale);
    const FormColumns columns = form_columns(table, styles, style, width, context);
    const bool groups = columns.front().kind == FormColumn::Kind::group;
    FormRow form;
    form.least_height = mm(static_cast<double>(style.number("row", kRow))) * room_to_write(context.scale);
    form.dated = style.has("dated");
    form.printed_only = std::ranges::none_of(columns, &FormColumn::by_hand);
    Pieces pieces{form_head(table.head, columns, styles, width, context)};
    pieces.front().gap = kParagraphGap;
    for (std::size_t first = 0; first < table.rows.size();) {
        const std::size_t size = groups ? group_size(table, first) : 1;
        for (std::size_t at = first; at < first + size; ++at) {
            ++context.node;
            const TableRow& row = table.rows[at];
            check_columns(row, columns.size(), context);
            if (!groups && is_group_head(row)) {
                pieces.push_back(set_group_head(row, width, context));
                continue;
            }
            form.last_of_group = groups && at + 1 == first + size;
            pieces.push_back(form_row(row, form, columns, styles, width, context));
            pieces.back().keep_with_next = groups && !form.last_of_group && size <= kLargestWholeGroup;
        }
        first += size;
    }
    return pieces;
}

}  // namespace ventfolio
