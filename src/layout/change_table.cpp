#include <algorithm>

#include "layout/form_columns.hpp"
#include "layout/table_row.hpp"
#include "layout/tables.hpp"
#include "layout/type_sizes.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kWhat = 0;
constexpr std::size_t kWas = 1;
constexpr std::size_t kNow = 2;
constexpr std::size_t kFirstMachine = 3;

/// A number of five characters by hand, five letters an inch (systems-analysis textbook rule, as quoted).
constexpr double kCell = mm(21);
constexpr double kNarrowestCell = mm(16);
constexpr double kRow = mm(8.5);
constexpr double kGap = mm(2.5);
constexpr double kLeastWhat = mm(30);
// Words behind a unit, such as where a pressure counts from, go below it rather than take room from the cells.
constexpr double kMostWas = mm(32);
constexpr double kMostNow = mm(36);

struct ChangeStyles {
    TextStyle head;
    TextStyle what;
    TextStyle was;
    TextStyle now;      ///< what the machine is set to
    TextStyle shows;    ///< what its screen should then show
    TextStyle caption;  ///< of a cell to write in
};

ChangeStyles change_styles(double scale) {
    const auto look = [&](double size, Face face = Face::regular) {
        TextStyle style = plain_style(size * scale, face);
        style.leading = 1.12;
        return style;
    };
    ChangeStyles styles{
        look(kSmallestText, Face::bold), look(11, Face::bold), look(10), look(10), look(10), look(kSmallestText)};
    styles.now.number = TextStyle::Look{18 * scale, Face::bold};
    styles.now.unit = TextStyle::Look{10 * scale, Face::regular};
    styles.now.answer = TextStyle::Look{13 * scale, Face::bold};
    styles.shows.number = styles.shows.answer = TextStyle::Look{12 * scale, Face::bold};
    styles.shows.unit = TextStyle::Look{10 * scale, Face::regular};
    styles.caption.alignment = Alignment::center;
    styles.head.alignment = Alignment::left;
    return styles;
}

bool has_bold(const Inlines& inlines) { return std::ranges::any_of(inlines, &Inline::strong); }

/// Bold only chose the size: number and unit are told apart by weight.
Inlines without_bold(Inlines inlines) {
    for (Inline& piece : inlines) piece.strong = false;
    return inlines;
}

class ChangeTable {
  public:
    ChangeTable(const Block& table, double width, LayoutContext& context)
        : table_{table},
          context_{context},
          styles_{change_styles(context.scale)},
          width_{width},
          row_height_{kRow * room_to_write(context.scale)},
          machines_{std::max(table.head.cells.size(), kFirstMachine) - kFirstMachine} {
        side_by_side_ = share();
    }

    Pieces pieces() {
        Pieces all;
        all.push_back(side_by_side_ ? head() : stacked_head());
        for (const TableRow& row : table_.rows) {
            ++context_.node;
            check_columns(row, table_.head.cells.size(), context_);
            if (is_group_head(row))
                all.push_back(set_group_head(row, width_, context_));
            else
                all.push_back(side_by_side_ ? line(row) : stack(row));
        }
        if (!all.empty()) all.front().gap = kParagraphGap;
        return all;
    }

  private:
    const TextStyle& now_style(const TableRow& row) const {
        return has_bold(cell(row, kNow)) ? styles_.now : styles_.shows;
    }

    /// What is left of the room where a row has no values: it may run on over their columns.
    static bool says_what_only(const TableRow& row) { return cell(row, kWas).empty() && cell(row, kNow).empty(); }

    /// Old and new keep their lines as long as the name of the setting can wrap beside them, and the cells give way
    /// down to the least that a number needs. False if even that is too much.
    bool share() {
        double least_what = widest_word(cell(table_.head, kWhat), styles_.head, context_);
        double least_cell = 0;
        double natural_what = 0;
        for (std::size_t at = 0; at < machines_; ++at)
            least_cell = std::max(
                least_cell, widest_word(cell(table_.head, kFirstMachine + at), styles_.caption, context_) + mm(3.5));
        was_ = natural_width(cell(table_.head, kWas), styles_.head, context_);
        now_ = natural_width(cell(table_.head, kNow), styles_.head, context_);
        const auto make_room = [](double& column, const TextWidths& text, double most) {
            column = std::max({column, std::min(text.natural, most), text.widest_word});
        };
        for (const TableRow& row : table_.rows) {
            if (is_group_head(row) || says_what_only(row)) continue;
            least_what = std::max(least_what, widest_word(cell(row, kWhat), styles_.what, context_));
            natural_what = std::max(natural_what, natural_width(cell(row, kWhat), styles_.what, context_));
            make_room(was_, widths_of(cell(row, kWas), styles_.was, context_), kMostWas * context_.scale);
            make_room(now_, widths_of(without_bold(cell(row, kNow)), now_style(row), context_),
                      kMostNow * context_.scale);
        }
        was_ += kGap;
        now_ += kGap;
        least_what = std::max(least_what, kLeastWhat * context_.scale) + kGap;
        const auto machines = static_cast<double>(machines_);
        const double room_for_cells = width_ - was_ - now_ - least_what;
        cell_ = kCell * room_to_write(context_.scale);
        if (machines_ > 0) cell_ = std::min(cell_, room_for_cells / machines);
        what_ = width_ - was_ - now_ - machines * cell_;
        draw_together(natural_what + kGap);
        const double least = std::max(least_cell, kNarrowestCell * room_to_write(context_.scale));
        return room_for_cells >= 0 && (machines_ == 0 || cell_ + kFitTolerance >= least);
    }

    /// With room to spare, old and new do not stand far from what they are about.
    void draw_together(double natural_what) {
        constexpr double kShare = 0.35;  // of the spare room, to old and to new
        const double spare = std::max(0.0, what_ - natural_what);
        was_ += kShare * spare;
        now_ += kShare * spare;
        what_ -= 2 * kShare * spare;
    }

    double cell_left(std::size_t machine) const { return width_ - static_cast<double>(machines_ - machine) * cell_; }

    Piece head() {
        Piece piece = row_piece(table_.head, width_);
        piece.keep_with_next = true;
        piece.repeats = true;
        std::vector<Frame> heads;
        double height = 0;
        for (std::size_t at = 0; at < table_.head.cells.size(); ++at) {
            const bool machine = at >= kFirstMachine;
            const double room = machine ? cell_ - mm(3) : at == kWhat ? what_ - kGap : at == kWas ? was_ : now_;
            TextStyle look = styles_.head;
            if (machine) look.alignment = Alignment::center;
            heads.push_back(set_text(cell(table_.head, at), look, room, "table head", context_));
            height = std::max(height, heads.back().height);
        }
        piece.frame.height = height + mm(1.6) * context_.scale;
        for (std::size_t at = 0; at < heads.size(); ++at) {
            const double x = at >= kFirstMachine ? cell_left(at - kFirstMachine) + mm(1.5)
                             : at == kWhat       ? 0
                             : at == kWas        ? what_
                                                 : what_ + was_;
            piece.frame.put_above(std::move(heads[at]), x, height + mm(0.6));
        }
        piece.frame.put_bottom_rule(kBoldLine);
        return piece;
    }

    /// The heads of name, old and new; those of the machines stand over their cells.
    Piece stacked_head() {
        Piece piece = row_piece(table_.head, width_);
        piece.keep_with_next = true;
        piece.repeats = true;
        const double column = width_ / kFirstMachine;
        for (std::size_t at = 0; at < kFirstMachine; ++at) {
            Frame text = set_text(cell(table_.head, at), styles_.head, column - kGap, "table head", context_);
            piece.frame.height = std::max(piece.frame.height, text.height + mm(1.2) * context_.scale);
            piece.frame.put(std::move(text), static_cast<double>(at) * column, mm(0.4));
        }
        piece.frame.put_bottom_rule(kBoldLine);
        return piece;
    }

    /// A machine's name over its cell. Whoever hears the table hears it once, as its head.
    Inlines caption(std::size_t machine) const {
        Inlines inlines = cell(table_.head, kFirstMachine + machine);
        if (captions_said_)
            for (Inline& piece : inlines) piece.element = kNoElement;
        return inlines;
    }

    /// Name, old, new and the cells beside one another; texts of one line stand on one baseline.
    Piece line(const TableRow& row) {
        Piece piece = row_piece(row, width_);
        const bool alone = says_what_only(row);
        const double room = alone ? what_ + was_ + now_ : what_;
        Frame what = set_text(cell(row, kWhat), styles_.what, room - kGap, "table cell", context_);
        Frame was = set_text(cell(row, kWas), styles_.was, was_ - kGap, "table cell", context_);
        Frame now = set_text(without_bold(cell(row, kNow)), now_style(row), now_ - kGap, "table cell", context_);
        piece.frame.height = std::max({row_height_, what.height + mm(1), was.height + mm(1), now.height + mm(1)});
        const double baseline = top_with_capitals_in_middle(now, piece.frame.height) + first_baseline(now);
        put_on(piece.frame, std::move(what), 0, alone ? 0 : baseline);
        put_on(piece.frame, std::move(was), what_, baseline);
        put_on(piece.frame, std::move(now), what_ + was_, baseline);
        for (std::size_t at = 0; at < machines_; ++at)
            put_cell(piece.frame, cell(row, kFirstMachine + at), {cell_left(at), 0}, cell_, piece.frame.height);
        piece.frame.put_bottom_rule(kThinLine);
        return piece;
    }

    /// A text of one line on a baseline; one of more lines, or without a baseline to stand on, in the middle.
    static void put_on(Frame& frame, Frame text, double x, double baseline) {
        const bool one_line = text.height < 1.9 * first_baseline(text);
        if (!one_line || baseline == 0) return frame.put_in_middle(std::move(text), x);
        const double top = baseline - first_baseline(text);
        frame.put(std::move(text), x, top);
    }

    void put_cell(Frame& frame, const Inlines& inlines, Point corner, double width, double height) {
        constexpr double kInset = kThinLine / 2;
        frame.put_box({{corner.x + kInset, corner.y}, width - kThinLine, height, kThinLine, false, Ink::black},
                      {context_.node, "cell", {}});
        if (!has_check_box(inlines)) return;
        const double side = kTickBox * context_.scale;
        frame.put_box(
            {{corner.x + (width - side) / 2, corner.y + (height - side) / 2}, side, side, kBoxLine, false, Ink::black},
            {context_.node, "check box", {}, inlines.front().element});
    }

    /// Where the page is too narrow: name, old and new, then a cell for each machine under its name.
    Piece stack(const TableRow& row) {
        Piece piece = row_piece(row, width_);
        Frame& frame = piece.frame;
        frame.append(set_text(cell(row, kWhat), styles_.what, width_, "table cell", context_), 0, mm(1));
        if (!says_what_only(row)) put_values(frame, row);
        const std::size_t columns = stacked_columns();
        for (std::size_t first = 0; first < machines_; first += columns)
            put_captioned_cells(frame, row, first, std::min(columns, machines_ - first), columns);
        captions_said_ = true;
        frame.height += mm(1.2) * context_.scale;
        frame.put_bottom_rule(kThinLine);
        return piece;
    }

    void put_values(Frame& frame, const TableRow& row) {
        const Inlines now_words = without_bold(cell(row, kNow));
        const double was = natural_width(cell(row, kWas), styles_.was, context_);
        const double now = natural_width(now_words, now_style(row), context_);
        const bool beside = was + kGap + now <= width_;
        const double now_left = beside ? std::max(was + kGap, std::min(width_ / 2, width_ - now)) : 0;
        Frame old_text = set_text(cell(row, kWas), styles_.was, width_, "table cell", context_);
        Frame new_text = set_text(now_words, now_style(row), width_ - now_left, "table cell", context_);
        if (!beside) {
            frame.append(std::move(old_text));
            frame.append(std::move(new_text));
            return;
        }
        const double top = frame.height;
        const double baseline = top + std::max(first_baseline(old_text), first_baseline(new_text));
        const double old_top = baseline - first_baseline(old_text);
        const double new_top = baseline - first_baseline(new_text);
        frame.height = std::max(old_top + old_text.height, new_top + new_text.height);
        frame.put(std::move(old_text), 0, old_top);
        frame.put(std::move(new_text), now_left, new_top);
    }

    std::size_t stacked_columns() {
        double widest = mm(30) * room_to_write(context_.scale);
        for (std::size_t at = 0; at < machines_; ++at)
            widest =
                std::max(widest, widest_word(cell(table_.head, kFirstMachine + at), styles_.caption, context_) + mm(2));
        return std::clamp<std::size_t>(static_cast<std::size_t>(width_ / widest), 1,
                                       std::max<std::size_t>(1, machines_));
    }

    void put_captioned_cells(Frame& frame, const TableRow& row, std::size_t first, std::size_t count,
                             std::size_t columns) {
        const double column = width_ / static_cast<double>(columns);
        std::vector<Frame> captions;
        double band = 0;
        for (std::size_t at = first; at < first + count; ++at) {
            captions.push_back(set_text(caption(at), styles_.caption, column - mm(2), "table head", context_));
            band = std::max(band, captions.back().height);
        }
        const double top = frame.height + mm(1);
        for (std::size_t at = 0; at < count; ++at) {
            const double x = static_cast<double>(at) * column;
            frame.put_above(std::move(captions[at]), x + mm(1), top + band);
            put_cell(frame, cell(row, kFirstMachine + first + at), {x, top + band + mm(0.5)}, column, row_height_);
        }
        frame.height = top + band + mm(0.5) + row_height_;
    }

    const Block& table_;
    LayoutContext& context_;
    ChangeStyles styles_;
    double width_;
    double row_height_;
    std::size_t machines_;
    double what_ = 0;
    double was_ = 0;
    double now_ = 0;
    double cell_ = 0;
    bool side_by_side_ = true;
    bool captions_said_ = false;
};

}  // namespace

Pieces set_changes(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    if (table.head.cells.size() < kFirstMachine) return set_rows(table, style, width, context);
    return ChangeTable{table, width, context}.pieces();
}

}  // namespace ventfolio
