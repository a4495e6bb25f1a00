#include <algorithm>
#include <numeric>

#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

/// Handwriting needs three lines an inch (systems-analysis textbook rule, as quoted).
constexpr double kRowHeight = mm(8.5);
/// A time of day, a date, a number of four digits: five letters an inch.
constexpr double kWriteColumn = mm(20);
constexpr double kNarrowestWrite = mm(13.4);
/// Beside words; common practice, no source: a name and a number.
constexpr double kMostWrite = mm(60);
constexpr double kCellGap = mm(2.4);
constexpr double kShareOfLongest = 0.34;  // of the width: what the longest column keeps

struct Column {
    bool write = false;
    bool boxes = false;
    double natural = 0;
    double least = 0;  ///< of the widest word
    double width = 0;
};

bool only_boxes(const Inlines& inlines) {
    return !inlines.empty() &&
           std::ranges::all_of(inlines, [](const Inline& piece) { return piece.kind == Inline::Kind::check_box; });
}

TextStyle head_style(double scale) {
    TextStyle style = plain_style(kSmallestText * scale, Face::bold);
    style.leading = 1.15;
    return style;
}

TextStyle cell_style(const SectionStyle& style, double scale) {
    TextStyle look = plain_style(std::min(style.sizes.body, 10 * scale));
    look.leading = 1.16;
    return look;
}

bool stands_out(const TableRow& row) {
    bool words = false;
    for (const TableCell& one : row.cells) {
        if (only_boxes(one.inlines)) continue;
        for (const Inline& piece : one.inlines)
            if (!piece.strong) return false;
        words = words || !one.inlines.empty();
    }
    return words;
}

class RuledTable {
  public:
    RuledTable(const Block& table, const SectionStyle& style, double width, LayoutContext& context)
        : table_{table},
          width_{width},
          context_{context},
          head_{head_style(context.scale)},
          cell_{cell_style(style, context.scale)},
          row_height_{style.has("tight") ? 0 : kRowHeight * std::max(1.0, 0.8 * context.scale)} {
        measure();
        share();
    }

    /// Whether each column can be as wide as its longest word.
    bool fits() const { return sum(&Column::least) <= width_ + kFitTolerance; }

    Pieces pieces() {
        Pieces all{set_head()};
        for (const TableRow& row : table_.rows) {
            ++context_.node;
            check_columns(row, columns_.size(), context_);
            all.push_back(set_row(row));
        }
        return all;
    }

  private:
    void measure() {
        for (std::size_t at = 0; at < table_.head.cells.size(); ++at) {
            Column column;
            const auto holds = [&](auto test) { return std::ranges::all_of(table_.rows, test); };
            column.write = holds([&](const TableRow& row) { return cell(row, at).empty(); });
            column.boxes = holds([&](const TableRow& row) { return only_boxes(cell(row, at)); });
            column.natural = column.least = widest_word(cell(table_.head, at), head_, context_);
            for (const TableRow& row : table_.rows) {
                if (only_boxes(cell(row, at))) continue;
                column.natural = std::max(column.natural, natural_width(cell(row, at), bold_if(row), context_));
                column.least = std::max(column.least, widest_word(cell(row, at), bold_if(row), context_));
            }
            column.natural += kCellGap + kFitTolerance;
            column.least += kCellGap + kFitTolerance;
            const double box = kTickBox * context_.scale + kCellGap;
            if (column.boxes) column.natural = column.least = std::max(column.natural, box);
            if (column.write) column.natural = std::max(column.natural, kWriteColumn * context_.scale);
            if (column.write) column.least = std::max(column.least, kNarrowestWrite * context_.scale);
            columns_.push_back(column);
        }
    }

    TextStyle bold_if(const TableRow& row) const {
        TextStyle look = cell_;
        if (stands_out(row)) look.words.face = Face::bold;
        return look;
    }

    double sum(double Column::*part) const {
        return std::accumulate(columns_.begin(), columns_.end(), 0.0,
                               [&](double all, const Column& one) { return all + one.*part; });
    }

    /// The longest column of words gives way first, down to a third of the width; then all of them, as far as their
    /// longest words allow. What is over goes to the columns to write in, as far as a hand has use for it, then to the
    /// words.
    void share() {
        for (Column& column : columns_) column.width = column.natural;
        Column& longest = *std::ranges::max_element(columns_, {}, &Column::width);
        const double least = std::max(longest.least, std::min(longest.width, kShareOfLongest * width_));
        longest.width -= std::clamp(sum(&Column::width) - width_, 0.0, longest.width - least);
        const double excess = sum(&Column::width) - width_;
        if (excess < 0) return spread(-excess);
        const double can_give = sum(&Column::width) - sum(&Column::least);
        if (can_give <= 0) return;
        for (Column& column : columns_)
            column.width -= (column.width - column.least) * std::min(1.0, excess / can_give);
    }

    void spread(double spare) {
        const auto writes = static_cast<double>(std::ranges::count_if(columns_, &Column::write));
        if (writes > 0) {
            const double most = words_to_share() > 0 ? kMostWrite * context_.scale : width_;
            for (Column& column : columns_) {
                if (!column.write) continue;
                const double given = std::min(spare / writes, std::max(0.0, most - column.width));
                column.width += given;
            }
            spare = width_ - sum(&Column::width);
            if (spare <= kFitTolerance) return;
        }
        const double words = words_to_share();
        for (Column& column : columns_)
            if (!column.boxes && !column.write && words > 0) column.width *= 1 + spare / words;
    }

    /// Width of the columns of words.
    double words_to_share() const {
        double words = 0;
        for (const Column& column : columns_) words += column.boxes || column.write ? 0 : column.width;
        return words;
    }

    Piece set_head() {
        Piece piece = row_piece(table_.head, width_);
        piece.keep_with_next = true;
        piece.repeats = true;
        std::vector<Frame> heads;
        for (std::size_t at = 0; at < columns_.size(); ++at) {
            heads.push_back(
                set_text(cell(table_.head, at), head_, columns_[at].width - kCellGap, "table head", context_));
            piece.frame.height = std::max(piece.frame.height, heads.back().height);
        }
        double x = 0;
        for (std::size_t at = 0; at < columns_.size(); x += columns_[at].width, ++at)
            piece.frame.put_above(std::move(heads[at]), x + inset(at), piece.frame.height);
        piece.frame.height += mm(0.8) * context_.scale;
        piece.frame.put_bottom_rule(kBoxLine);
        return piece;
    }

    /// Words stand clear of the line left of them.
    double inset(std::size_t column) const {
        const bool line_left = column > 0 && (columns_[column].write || columns_[column - 1].write);
        return line_left ? kCellGap / 2 : columns_[column].write ? mm(0.8) : 0;
    }

    Piece set_row(const TableRow& row) {
        Piece piece = row_piece(row, width_);
        const bool black = stands_out(row);
        TextStyle look = cell_;
        if (black) look.ink = Ink::white;
        std::vector<Frame> cells;
        double text_height = 0;
        for (std::size_t at = 0; at < columns_.size(); ++at) {
            const bool box = only_boxes(cell(row, at));
            cells.push_back(box ? Frame{}
                                : set_text(cell(row, at), look, columns_[at].width - kCellGap, "table cell", context_));
            text_height = std::max(text_height, cells.back().height);
        }
        constexpr double kRoundBox = mm(0.7);
        const bool boxes = std::ranges::any_of(columns_, &Column::boxes);
        const double least = boxes ? kTickBox * context_.scale + kRoundBox : 0;
        piece.frame.height = std::max({row_height_, least, text_height + mm(1.3) * context_.scale});
        if (black) put_black(piece.frame, row);
        double x = 0;
        for (std::size_t at = 0; at < columns_.size(); x += columns_[at].width, ++at) {
            if (only_boxes(cell(row, at))) put_box(piece.frame, x + columns_[at].width / 2, cell(row, at).front());
            piece.frame.put_in_middle(std::move(cells[at]), x + inset(at) + (black && at == 0 ? mm(1) : 0));
        }
        put_lines(piece.frame);
        return piece;
    }

    /// Black behind the words, white where something is to be written or ticked.
    void put_black(Frame& frame, const TableRow& row) {
        double x = 0;
        for (std::size_t at = 0; at < columns_.size(); x += columns_[at].width, ++at)
            if (!cell(row, at).empty() && !only_boxes(cell(row, at)))
                frame.put_box({{x, 0}, columns_[at].width, frame.height, 0, true, Ink::black},
                              {context_.node, "table cell", {}});
    }

    void put_box(Frame& frame, double middle, const Inline& box) {
        const double side = kTickBox * context_.scale;
        frame.put_box({{middle - side / 2, (frame.height - side) / 2}, side, side, kBoxLine, false, Ink::black},
                      {context_.node, "check box", {}, box.element});
    }

    void put_lines(Frame& frame) {
        double x = 0;
        for (const Column& column : columns_) {
            if (column.write && x > 0) frame.put_column_rule(x, kThinLine);
            x += column.width;
            if (column.write) frame.put_column_rule(x, kThinLine);
        }
        frame.put_bottom_rule(kThinLine);
    }

    const Block& table_;
    double width_;
    LayoutContext& context_;
    TextStyle head_;
    TextStyle cell_;
    double row_height_;
    std::vector<Column> columns_;
};

}  // namespace

Pieces set_ruled(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (table.head.cells.empty()) return set_rows(table, style, width, context);
    RuledTable ruled{table, style, width, context};
    return ruled.fits() ? ruled.pieces() : set_grid(table, style, width, context);
}

}  // namespace ventfolio
