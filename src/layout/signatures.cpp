#include "layout/signatures.hpp"

#include "layout/measures.hpp"
#include "layout/table_row.hpp"

namespace ventfolio {
namespace {

/// A signature needs 60 by 12 mm (common practice, no source).
constexpr std::size_t kRoom = 12;

Frame signature(const Block& item, double room, double width, LayoutContext& context) {
    TextStyle caption = plain_style(kSmallestText * context.scale);
    caption.leading = 1.15;
    Frame frame;
    frame.width = width;
    frame.height = room;
    frame.put_rule({{0, room}, {width, room}, kBoxLine, Ink::black});
    frame.append(set_text(inlines_of(item), caption, width, "list item", context), 0, mm(0.6));
    return frame;
}

}  // namespace

Pieces set_signatures(const Block& list, const SectionStyle& style, double width, LayoutContext& context) {
    if (list.children.empty()) return {};
    const double room = mm(static_cast<double>(style.number("row", kRoom))) * room_to_write(context.scale);
    Pieces pieces;
    if (context.large_print()) {
        for (const Block& item : list.children) {
            pieces.push_back(piece_of(signature(item, room, width, context), mm(1), item));
            ++context.node;
        }
        return pieces;
    }
    const auto count = static_cast<double>(list.children.size());
    const double room_for_all = width - kGutter * (count - 1);
    const double share = room_for_all / (count + 1);
    const double equal = room_for_all / count;
    Piece row = piece_of({}, 0, list);
    row.frame.width = width;
    double x = 0;
    for (const Block& item : list.children) {
        const double column = style.has("even") ? equal : count > 1 && x > 0 ? share : 2 * share;
        Frame one = signature(item, room, column, context);
        ++context.node;
        if (row.field.empty()) row.field = first_field(inlines_of(item));
        row.frame.height = std::max(row.frame.height, one.height);
        row.frame.put(std::move(one), x, 0);
        x += column + kGutter;
    }
    pieces.push_back(std::move(row));
    return pieces;
}

}  // namespace ventfolio
