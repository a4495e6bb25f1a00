#include <algorithm>

#include "layout/table_row.hpp"
#include "layout/tables.hpp"

namespace ventfolio {
namespace {

constexpr double kNumberBox = mm(10);
constexpr double kLeaderGap = mm(2.4);
constexpr double kDash = mm(1.2);
constexpr double kLeastLeader = mm(4);

TextStyle style_of(double size, Face face = Face::regular) {
    TextStyle look = plain_style(size, face);
    look.leading = 1.1;
    return look;
}

Frame number_box(const Inlines& number, double width, double height, LayoutContext& context) {
    TextStyle look = style_of(15 * context.scale, Face::bold);
    look.alignment = Alignment::center;
    Frame text = set_text(number, look, width, "table cell", context);
    Frame box;
    box.width = width;
    box.height = height;
    const double top = top_with_capitals_in_middle(text, height);
    box.put(std::move(text), 0, top);
    box.put_outline(kBoxLine, {context.node, "index", {}});
    return box;
}

/// Dashes that lead the eye from the name to its number.
void put_leader(Frame& row, double from, double to, double y, const Origin& origin) {
    if (to - from < kLeastLeader) return;
    const auto dashes = static_cast<std::size_t>((to - kDash - from) / (2 * kDash)) + 1;
    for (std::size_t at = 0; at < dashes; ++at) {
        const double x = to - kDash - static_cast<double>(at) * 2 * kDash;
        row.put_rule({{x, y}, {x + kDash, y}, kThinLine, Ink::black}, origin);
    }
}

Piece set_index_row(const TableRow& row, double width, LayoutContext& context) {
    check_columns(row, 2, context);
    const double scale = context.scale;
    const auto [name, meaning] = split_after_strong(cell(row, 0));
    const double box_width = kNumberBox * std::min(scale, 1.35);
    const double room = width - box_width - kLeaderGap;
    const TextStyle name_style = style_of(13 * scale, Face::bold);
    Frame words;
    words.width = room;
    words.append(set_text(name, name_style, room, "table cell", context));
    const double name_bottom = words.height;
    if (!meaning.empty()) words.append(set_text(meaning, style_of(10 * scale), room, "table cell", context));
    Piece piece = row_piece(row, width);
    const double pad = mm(0.7);
    piece.frame.height = std::max(mm(9.2) * scale, words.height + 2 * pad);
    const double top = (piece.frame.height - words.height) / 2;
    const double reach = std::min(room, natural_width(name, name_style, context)) + kLeaderGap;
    const bool one_line = name_bottom < 2 * name_style.words.size;
    if (one_line)
        put_leader(piece.frame, reach, room, top + name_bottom - mm(1.6) * scale, {context.node, "index", {}});
    piece.frame.put(std::move(words), 0, top);
    piece.frame.put(number_box(cell(row, 1), box_width, piece.frame.height - 2 * pad, context), width - box_width, pad);
    piece.frame.put_bottom_rule(kHairline, Ink::black);
    return piece;
}

}  // namespace

Pieces set_index(const Block& table, double width, LayoutContext& context) {
    Pieces pieces;
    for (const TableRow& row : table.rows) {
        ++context.node;
        pieces.push_back(set_index_row(row, width, context));
    }
    return pieces;
}

}  // namespace ventfolio
