#include "layout/ladder_legend.hpp"

#include <algorithm>
#include <vector>

#include "layout/ladder_symbols.hpp"

namespace ventfolio {
namespace {

constexpr double kPitch = mm(5.6);
constexpr double kBetween = mm(3);
constexpr double kRoundingRoom = 1;  // a text set to its own natural width must not wrap

Frame legend_symbol(const Inline& figure, LayoutContext& context) {
    const double scale = std::min(context.scale, 1.35);
    Frame symbol;
    symbol.width = mm(8) * scale;
    symbol.height = mm(figure.text == "chart" ? 5.2 : 4) * scale;
    const Origin origin{context.node, "figure", {}, figure.element};
    if (figure.text == "short-question")
        put_diamond(symbol, origin);
    else if (const auto kind = ladder_kind(figure.text))
        put_symbol(symbol, *kind, origin);
    else
        context.refuse("figure-unknown", "There is no symbol named " + figure.text + ".", figure.line);
    return symbol;
}

bool is_blank(const Inline& piece) {
    return piece.kind == Inline::Kind::text && piece.text.find_first_not_of(' ') == std::string::npos;
}

/// The symbols that an item opens with, side by side; they are taken off its words.
Frame take_symbols(Inlines& words, LayoutContext& context) {
    Frame symbols;
    while (!words.empty() && (words.front().kind == Inline::Kind::figure || is_blank(words.front()))) {
        if (words.front().kind == Inline::Kind::figure) {
            Frame symbol = legend_symbol(words.front(), context);
            const double left = symbols.width > 0 ? symbols.width + mm(1) : 0;
            symbols.width = left + symbol.width;
            symbols.height = std::max(symbols.height, symbol.height);
            const double top = (mm(4) * std::min(context.scale, 1.35) - symbol.height) / 2;
            symbols.put(std::move(symbol), left, std::max(0.0, top));
        }
        words.erase(words.begin());
    }
    if (!words.empty() && words.front().kind == Inline::Kind::text)
        words.front().text.erase(0, words.front().text.find_first_not_of(' '));
    return symbols;
}

Frame legend_cell(const Block& item, double width, LayoutContext& context) {
    TextStyle look = plain_style(9.5 * context.scale);
    look.leading = 1.2;
    Inlines words = inlines_of(item);
    Frame symbols = take_symbols(words, context);
    const double left = symbols.width > 0 ? symbols.width + mm(1.6) : 0;
    const double room = std::min(natural_width(words, look, context) + kRoundingRoom, width - left);
    Frame text = set_text(words, look, room, "list item", context);
    Frame cell;
    cell.height = std::max(kPitch * context.scale, text.height);
    cell.put_in_middle(std::move(symbols), 0);
    cell.put_in_middle(std::move(text), left);
    cell.width = left + room;
    return cell;
}

/// Rows that cells take which go on to the next one where this width is full.
std::size_t rows_of(const std::vector<Frame>& cells, double width) {
    std::size_t rows = 1;
    double x = 0;
    for (const Frame& cell : cells) {
        if (x > 0 && x + cell.width > width) {
            ++rows;
            x = 0;
        }
        x += cell.width + kBetween;
    }
    return rows;
}

/// The narrowest width that takes no more rows, so that no cell stands alone in the last one.
double even_width(const std::vector<Frame>& cells, double width) {
    constexpr double kStep = mm(2);
    const std::size_t rows = rows_of(cells, width);
    double least = width;
    while (rows > 1 && least > kStep && rows_of(cells, least - kStep) == rows) least -= kStep;
    return least;
}

}  // namespace

Frame set_ladder_legend(const Block& list, double width, LayoutContext& context) {
    std::vector<Frame> cells;
    for (const Block& item : list.children) {
        ++context.node;
        cells.push_back(legend_cell(item, width, context));
    }
    const double row_width = even_width(cells, width);
    Frame legend;
    legend.width = width;
    double x = 0;
    double row_top = 0;
    for (Frame& cell : cells) {
        if (x > 0 && x + cell.width > row_width) {
            x = 0;
            row_top = legend.height;
        }
        legend.height = std::max(legend.height, row_top + cell.height);
        const double cell_width = cell.width;
        legend.put(std::move(cell), x, row_top);
        x += cell_width + kBetween;
    }
    return legend;
}

}  // namespace ventfolio
