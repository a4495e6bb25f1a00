#include "layout/two_columns.hpp"

#include <algorithm>
#include <limits>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

double column_height(const ColumnItems& items, std::size_t from, std::size_t to) {
    double height = 0;
    for (std::size_t at = from; at < to; ++at) height += (at == from ? 0 : kRowGap) + items[at].frame.height;
    return height;
}

}  // namespace

ColumnItems column_items(const std::vector<Section>& sections, double width, LayoutContext& context) {
    const double column = (width - kGutter) / 2;
    ColumnItems items;
    for (const Section& section : sections) {
        Pieces pieces = set_section(section, column, context);
        ColumnItem item;
        item.field = first_field(pieces);
        item.line = pieces.empty() ? 0 : pieces.front().line;
        item.frame = stacked(std::move(pieces), column);
        items.push_back(std::move(item));
    }
    return items;
}

ColumnSplit best_split(const ColumnItems& items, std::size_t count) {
    ColumnSplit best{count, std::numeric_limits<double>::max()};
    for (std::size_t left = 1; left <= count; ++left) {
        const double height = std::max(column_height(items, 0, left), column_height(items, left, count));
        if (height < best.height - kFitTolerance) best = {left, height};
    }
    return best;
}

Piece take_two_columns(ColumnItems& items, std::size_t count, double width) {
    const auto [left, height] = best_split(items, count);
    const double right_x = (width - kGutter) / 2 + kGutter;
    Piece piece;
    piece.frame.width = width;
    piece.frame.height = height;
    piece.field = items.front().field;
    piece.line = items.front().line;
    double y = 0;
    for (std::size_t at = 0; at < count; ++at) {
        if (at == left) y = 0;
        const double item_height = items[at].frame.height;
        piece.frame.put(std::move(items[at].frame), at < left ? 0 : right_x, y);
        y += item_height + kRowGap;
    }
    items.erase(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(count));
    return piece;
}

}  // namespace ventfolio
