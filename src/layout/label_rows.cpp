#include <algorithm>

#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

struct RowColumns {
    double label;
    double value;
    bool stacked;  ///< the value goes below the label
};

/// The value keeps its line as long as the label can wrap beside it.
RowColumns row_columns(const TableRow& row, const TextStyle& label_style, const TextStyle& value_style, double width,
                       LayoutContext& context) {
    constexpr double kLeastLabel = 0.3;  // of the width: below that a label is a column of single words
    constexpr double kFairValue = 0.56;  // of the width: a long value may push the label that far
    const TextWidths label = widths_of(cell(row, 0), label_style, context);
    const TextWidths value = widths_of(cell(row, 1), value_style, context);
    const double label_least = std::min(label.natural, std::max(label.widest_word, kLeastLabel * width));
    if (label_least + kColumnGap + value.widest_word > width + kFitTolerance) return {width, width, true};
    const double beside = width - kColumnGap - label.natural;
    const double wanted = std::clamp(beside, value.widest_word, std::max(value.widest_word, value.natural));
    const double fair = std::min(value.natural, std::max(wanted, kFairValue * width));
    const double chosen = std::min(std::max(wanted, fair), width - kColumnGap - label_least);
    return {width - kColumnGap - chosen, chosen, false};
}

Piece set_note(const TableRow& row, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle look = plain_style(style.sizes.unit);
    look.leading = 1.22;
    const double above = mm(1.0) * context.scale;
    const double below = mm(0.2) * context.scale;
    Piece piece = row_piece(row, width);
    piece.frame.append(set_text(cell(row, 0), look, width, "table cell", context), 0, above);
    piece.frame.height += below;
    return piece;
}

}  // namespace

Piece set_row(const TableRow& row, const SectionStyle& style, double width, LayoutContext& context) {
    TextStyle label_style = plain_style(style.sizes.label);
    label_style.leading = 1.2;
    TextStyle answer_style = value_style(style.sizes);
    answer_style.alignment = Alignment::right;
    const RowColumns columns = row_columns(row, label_style, answer_style, width, context);
    Frame label = set_text(cell(row, 0), label_style, columns.label, "table cell", context);
    Frame value = set_text(cell(row, 1), answer_style, columns.value, "table cell", context);
    const double pad = mm(0.3) * context.scale;
    const double number_baseline = baseline_at(style.sizes.number, answer_style.leading);
    const double baseline = std::max({number_baseline, first_baseline(label), first_baseline(value)});
    const double label_top = columns.stacked ? pad : pad + baseline - first_baseline(label);
    const double value_top = columns.stacked ? pad + label.height : pad + baseline - first_baseline(value);
    Piece piece = row_piece(row, width);
    // Rows of words are as tall as rows of numbers, so that the rules stand at one distance.
    const double least = answer_style.leading * style.sizes.number + 2 * pad;
    piece.frame.height = std::max({least, label_top + label.height + pad, value_top + value.height + pad});
    piece.frame.put(std::move(label), 0, label_top);
    piece.frame.put(std::move(value), width - columns.value, value_top);
    piece.frame.put_bottom_rule(kHairline, Ink::grey);
    return piece;
}

Pieces set_rows(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        check_columns(row, 2, context);
        const bool note = cell(row, 1).empty();
        pieces.push_back(note ? set_note(row, style, width, context) : set_row(row, style, width, context));
    }
    return pieces;
}

}  // namespace ventfolio
