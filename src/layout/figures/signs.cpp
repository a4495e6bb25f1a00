#include "layout/figures/signs.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>
#include <string>

#include "layout/figures/path_text.hpp"

namespace ventfolio {
namespace {

constexpr double kSide = 26;  // the square in which the signs are drawn
constexpr double kSignPad = mm(1.4);
constexpr double kStroke = 1.7;  // of every line in it

struct SignDrawing {
    std::string_view name;
    std::string_view outline;
    std::string_view solid = {};
};

constexpr std::array kSigns{
    SignDrawing{"eyes-up", "M 2 17 Q 13 6 24 17 Q 13 27 2 17 Z M 13 8 L 13 1.8 M 9.6 5 L 13 1.4 L 16.4 5",
                "M 13 11.2 C 17.6 11.2 17.6 18 13 18 C 8.4 18 8.4 11.2 13 11.2 Z"},
    SignDrawing{"eyes-down", "M 2 9 Q 13 -1 24 9 Q 13 20 2 9 Z M 13 18 L 13 24.2 M 9.6 21 L 13 24.6 L 16.4 21",
                "M 13 8 C 17.6 8 17.6 14.8 13 14.8 C 8.4 14.8 8.4 8 13 8 Z"},
    SignDrawing{"blink", "M 2 11 Q 13 21 24 11 M 5.4 15 L 3 18.6 M 13 16.6 L 13 20.8 M 20.6 15 L 23 18.6"},
    SignDrawing{"nod",
                "M 4 11 C 4 3 17 3 17 11 C 17 19 13 22 10.5 22 C 8 22 4 19 4 11 Z M 8 10 L 8 11.6 M 13 10 L 13 11.6 M "
                "8.4 16.6 L 12.6 "
                "16.6 M 22.4 7 L 22.4 18 M 19.6 15.4 L 22.4 18.6 "
                "L 25.2 15.4"},
    SignDrawing{"shake-head",
                "M 7 10 C 7 2 19 2 19 10 C 19 17 15 20 13 20 C 11 20 7 17 7 10 Z M 10.6 9 L 10.6 10.6 M 15.4 9 L 15.4 "
                "10.6 M 11 15 L 15 15 "
                "M 5 23.4 L 21 23.4 M 7.4 21 L 4.6 23.4 "
                "L 7.4 25.6 M 18.6 21 L 21.4 23.4 L 18.6 25.6"},
    SignDrawing{
        "hand",
        "M 8 24 L 8 19 L 3.6 13.4 Q 4 11 6.4 12.4 L 9 15 L 9 5 Q 10.4 2.6 11.8 5 L 11.8 12 L 12.4 3.6 Q 13.8 1.4 "
        "15.2 3.6 L 15.2 12 L 16 4.6 Q 17.4 2.6 18.8 4.6 L 18.6 13 L 19.4 8 Q 20.8 6 22 8 L 21.4 17 L 19 21 L 19 24"},
    SignDrawing{"switch", "M 3 24 L 3 19 L 23 19 L 23 24 Z M 13 2 L 13 12 M 9.6 8.6 L 13 12.4 L 16.4 8.6",
                "M 8.5 19 L 8.5 15.2 L 17.5 15.2 L 17.5 19 Z"},
    SignDrawing{
        "board",
        "M 2 4 L 24 4 L 24 22 L 2 22 Z M 6.2 17.6 L 9.3 8.6 L 12.4 17.6 M 7.4 14.4 L 11.2 14.4 M 15 8.8 L 15 17.4 "
        "L 17.4 17.4 Q 20 17.2 20 15.2 Q 20 13.2 17.4 13 L 15 13 M 17.4 13 Q 19.4 12.8 19.4 11 Q 19.4 9 17.2 8.8 "
        "L 15 8.8"},
    SignDrawing{"speech", "M 3 4 L 23 4 L 23 17 L 13 17 L 7 23 L 7 17 L 3 17 Z M 7 8.6 L 19 8.6 M 7 12.6 L 16 12.6"},
    SignDrawing{"yes", "M 3 14 L 10 21.4 L 23 4.6"},
    SignDrawing{"no", "M 5 5 L 21 21 M 21 5 L 5 21"},
    SignDrawing{"warning", "M 13 2 L 25 24 L 1 24 Z M 13 9.4 L 13 16.6",
                "M 13 18.8 C 15 18.8 15 21.6 13 21.6 C 11 21.6 11 18.8 13 18.8 Z"},
};

const SignDrawing* find_sign(std::string_view name) {
    const auto found = std::ranges::find(kSigns, name, &SignDrawing::name);
    return found == kSigns.end() ? nullptr : &*found;
}

Inlines without_figure(const Inlines& inlines) {
    Inlines text;
    for (const Inline& piece : inlines) {
        const bool blank = piece.kind == Inline::Kind::text && piece.text.find_first_not_of(' ') == std::string::npos;
        if (piece.kind != Inline::Kind::figure && !(text.empty() && blank)) text.push_back(piece);
    }
    return text;
}

TextStyle meaning_style(double scale) {
    TextStyle look = plain_style(10.5 * scale);
    look.leading = 1.15;
    return look;
}

/// Draws the figure that an item names, or says that there is none.
void put_figure(Frame& cell, const Inline& figure, double side, const Block& item, LayoutContext& context) {
    const std::string& name = figure.text;
    if (is_sign(name)) return cell.put_in_middle(sign(name, side, context, figure.element), 0);
    context.refuse("figure-unknown", "There is no sign named " + name + ".", item.line);
}

Frame set_sign_cell(const Block& item, double width, double side, LayoutContext& context) {
    const Inlines& inlines = inlines_of(item);
    const auto found = std::ranges::find(inlines, Inline::Kind::figure, &Inline::kind);
    const bool figure = found != inlines.end();
    if (std::ranges::count(inlines, Inline::Kind::figure, &Inline::kind) > 1)
        context.refuse_unprinted("a second figure of a sign", item.line);
    const auto [word, meaning] = split_after_strong(without_figure(inlines));
    const double indent = figure ? side + mm(2.5) : 0;
    TextStyle word_style = plain_style(15 * context.scale, Face::bold);
    word_style.leading = 1.1;
    Frame text;
    text.append(set_text(word, word_style, width - indent, "sign", context));
    text.append(set_text(meaning, meaning_style(context.scale), width - indent, "sign", context));
    Frame cell;
    cell.width = width;
    cell.height = std::max(figure ? side : 0, text.height);
    if (figure) put_figure(cell, *found, side, item, context);
    cell.put_in_middle(std::move(text), indent);
    return cell;
}

/// Each cell by what it has to say: half of the room in equal parts, half by the length of the words.
std::vector<double> cell_widths(std::span<const Block> items, double width, double side, LayoutContext& context) {
    std::vector<double> widths;
    double total = 0;
    for (const Block& item : items) {
        const Inlines meaning = split_after_strong(without_figure(inlines_of(item))).second;
        widths.push_back(side + natural_width(meaning, meaning_style(context.scale), context));
        total += widths.back();
    }
    for (double& one : widths) one = width * (0.5 / static_cast<double>(items.size()) + 0.5 * one / total);
    return widths;
}

}  // namespace

bool is_sign(std::string_view name) { return find_sign(name) != nullptr; }

Frame sign(std::string_view name, double side, LayoutContext& context, std::size_t element) {
    const SignDrawing* drawing = find_sign(name);
    if (!drawing) throw std::logic_error{"no sign named " + std::string{name}};
    Frame frame;
    frame.width = frame.height = side;
    const double scale = side / kSide;
    Path outline = path_from(drawing->outline, scale);
    outline.stroke = kStroke * scale;
    const Origin origin{context.node, "figure", {}, element};
    frame.put_path(std::move(outline), origin);
    if (!drawing->solid.empty()) {
        Path solid = path_from(drawing->solid, scale);
        solid.filled = true;
        frame.put_path(std::move(solid), origin);
    }
    return frame;
}

namespace {

/// Cells beside one another in a thin box, a line between them.
Frame row_of_signs(std::span<const Block> items, double width, LayoutContext& context) {
    const double side = mm(10) * context.scale;
    const std::vector<double> widths = cell_widths(items, width, side, context);
    Frame row;
    row.width = width;
    std::vector<Frame> cells;
    for (std::size_t at = 0; at < items.size(); ++at) {
        ++context.node;
        cells.push_back(set_sign_cell(items[at], widths[at] - 2 * kSignPad, side, context));
        row.height = std::max(row.height, cells.back().height + 2 * kSignPad);
    }
    double x = 0;
    for (std::size_t at = 0; at < cells.size(); x += widths[at], ++at) {
        if (at > 0) row.put_column_rule(x, kThinLine);
        row.put_in_middle(std::move(cells[at]), x + kSignPad);
    }
    row.put_outline(kBoxLine);
    return row;
}

}  // namespace

Pieces set_signs(const Block& list, double width, LayoutContext& context) {
    // Four cells of a row are the most that leave room for words; large print has two.
    const std::size_t columns = context.large_print() ? 2 : 4;
    Pieces rows;
    for (std::span<const Block> left = list.children; !left.empty();) {
        const std::size_t count = std::min(columns, left.size());
        Piece row;
        row.line = list.line;
        row.frame = row_of_signs(left.first(count), width, context);
        rows.push_back(std::move(row));
        left = left.subspan(count);
    }
    return rows;
}

}  // namespace ventfolio
