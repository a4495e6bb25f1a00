#include "layout/figures/calendar.hpp"

#include <algorithm>

#include "layout/table_row.hpp"

namespace ventfolio {
namespace {

constexpr double kPad = mm(1.2);
constexpr double kTaskGap = mm(0.8);
constexpr std::size_t kLeastWeek = 17;  // mm
/// Below the last task: initials.
constexpr double kRoomToWrite = mm(3);
constexpr double kTaskBox = mm(3.6);

struct Task {
    Inline box;
    Inlines words;
};

struct Day {
    Inlines date;
    std::vector<Task> tasks;
};

/// Cuts a cell at its boxes.
Day day_of(const Inlines& inlines) {
    Day day;
    for (const Inline& piece : inlines) {
        if (piece.kind == Inline::Kind::check_box) {
            day.tasks.push_back({piece, {}});
            continue;
        }
        const bool blank = piece.kind == Inline::Kind::text && piece.text.find_first_not_of(' ') == std::string::npos;
        Inlines& part = day.tasks.empty() ? day.date : day.tasks.back().words;
        if (blank && part.empty()) continue;
        part.push_back(piece);
        std::string& text = part.back().text;
        if (part.size() == 1 && piece.kind == Inline::Kind::text) text.erase(0, text.find_first_not_of(' '));
    }
    return day;
}

bool may_not_slip(const Inlines& task) {
    return !task.empty() && std::ranges::all_of(task, [](const Inline& piece) {
        return piece.strong ||
               (piece.kind == Inline::Kind::text && piece.text.find_first_not_of(' ') == std::string::npos);
    });
}

Frame set_task(const Task& task, double width, LayoutContext& context) {
    const bool black = may_not_slip(task.words);
    const double side = kTaskBox * context.scale;
    TextStyle look = plain_style(9.5 * context.scale, black ? Face::bold : Face::regular);
    look.leading = 1.12;
    if (black) look.ink = Ink::white;
    const double inset = black ? mm(0.8) : 0;
    const double indent = inset + side + mm(1.2) * context.scale;
    Frame text = set_text(task.words, look, width - indent - inset, "calendar", context);
    Frame frame;
    frame.width = width;
    frame.height = std::max(side, text.height) + 2 * inset;
    if (black) frame.put_black_field({context.node, "calendar", {}});
    const double drop = inset + std::max(0.0, (look.leading * look.words.size - side) / 2);
    // Square with its line inside, as large on black as on white.
    frame.put_box({{inset + kBoxLine / 2, drop + kBoxLine / 2},
                   side - kBoxLine,
                   side - kBoxLine,
                   kBoxLine,
                   false,
                   black ? Ink::white : Ink::black},
                  {context.node, "check box", {}, task.box.element});
    frame.put(std::move(text), indent, inset);
    return frame;
}

Frame set_day(const Day& day, double width, LayoutContext& context) {
    TextStyle look = plain_style(11 * context.scale, Face::bold);
    look.leading = 1.15;
    Frame frame;
    frame.width = width;
    frame.append(set_text(day.date, look, width, "calendar", context), 0, mm(0.6));
    for (const Task& task : day.tasks) frame.append(set_task(task, width, context), 0, kTaskGap);
    return frame;
}

Piece set_week_head(const TableRow& row, double width, LayoutContext& context) {
    Piece piece = row_piece(row, width);
    piece.keep_with_next = true;
    piece.repeats = true;
    TextStyle look = plain_style(10 * context.scale, Face::bold);
    look.ink = Ink::white;
    look.leading = 1.2;
    const double column = width / static_cast<double>(row.cells.size());
    std::vector<std::pair<Frame, double>> heads;
    for (std::size_t at = 0; at < row.cells.size(); ++at)
        heads.emplace_back(set_text(cell(row, at), look, column - 2 * kPad, "table head", context),
                           column * static_cast<double>(at) + kPad);
    Frame words;
    words.width = width;
    put_heads(words, heads, mm(5.4) * context.scale);
    piece.frame.height = words.height;
    piece.frame.put_black_field({context.node, "table head", {}});
    piece.frame.put(std::move(words), 0, 0);
    return piece;
}

Piece set_week(const TableRow& row, std::size_t days, double least, double width, LayoutContext& context) {
    check_columns(row, days, context);
    Piece piece = row_piece(row, width);
    const double column = width / static_cast<double>(days);
    piece.frame.height = least * context.scale;
    for (std::size_t at = 0; at < days; ++at) {
        Frame day = set_day(day_of(cell(row, at)), column - 2 * kPad, context);
        piece.frame.height = std::max(piece.frame.height, day.height + kRoomToWrite * context.scale);
        piece.frame.put(std::move(day), column * static_cast<double>(at) + kPad, 0);
    }
    for (std::size_t line = 0; line <= days; ++line) {
        // Half a line inside at both ends, so that all of it is on the frame.
        const double x = std::clamp(column * static_cast<double>(line), kThinLine / 2, width - kThinLine / 2);
        piece.frame.put_column_rule(x, kThinLine);
    }
    piece.frame.put_bottom_rule(kBoxLine);
    return piece;
}

/// A week has no room for its days where type is so large: they stand below one another.
Pieces set_days_as_rows(const Block& table, double width, LayoutContext& context) {
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            Day day = day_of(cell(row, at));
            Inlines weekday = cell(table.head, at);
            for (Inline& piece : words(" ")) weekday.push_back(std::move(piece));
            day.date.insert(day.date.begin(), weekday.begin(), weekday.end());
            Piece piece = row_piece(row, width);
            piece.frame = set_day(day, width, context);
            piece.frame.height += mm(1.5);
            piece.frame.put_bottom_rule(kThinLine);
            pieces.push_back(std::move(piece));
        }
    }
    return pieces;
}

}  // namespace

Pieces set_calendar(const Block& table, const SectionStyle& style, double width, LayoutContext& context) {
    const std::size_t days = table.head.cells.size();
    if (context.large_print() || days == 0) return set_days_as_rows(table, width, context);
    Pieces pieces{set_week_head(table.head, width, context)};
    for (const TableRow& row : table.rows) {
        ++context.node;
        pieces.push_back(
            set_week(row, days, mm(static_cast<double>(style.number("week", kLeastWeek))), width, context));
    }
    return pieces;
}

}  // namespace ventfolio
