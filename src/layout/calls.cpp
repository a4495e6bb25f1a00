#include "layout/calls.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

struct Call {
    Inlines who;
    Inlines number;
    Inlines when;
    std::size_t line = 0;
};

Call call_of(const Block& item) {
    auto [who, rest] = split_after_strong(inlines_of(item));
    const auto number = std::ranges::find(rest, Inline::Kind::value, &Inline::kind);
    Call call;
    call.line = item.line;
    call.who = std::move(who);
    if (number == rest.end()) {
        call.when = std::move(rest);
        return call;
    }
    call.number = {*number};
    Inlines tail{number + 1, rest.end()};
    call.when = split_after_strong(tail).second;
    return call;
}

struct CallStyles {
    TextStyle who;
    TextStyle number;
    TextStyle when;
};

CallStyles call_styles(const SectionStyle& style) {
    CallStyles styles{plain_style(style.sizes.label, Face::bold), plain_style(style.sizes.number, Face::bold),
                      plain_style(style.sizes.label)};
    styles.who.leading = 1.2;
    styles.number.leading = 1.16;
    styles.when.leading = 1.2;
    return styles;
}

/// Who, number and when below one another. `who_height` is the room for the names of all cells of a row, so that their
/// numbers stand on one line.
Frame call_cell(const Call& call, const CallStyles& styles, double who_height, double width, LayoutContext& context) {
    Frame who = set_text(call.who, styles.who, width, "call", context);
    Frame cell;
    cell.width = width;
    cell.height = std::max(who_height, who.height);
    cell.put_above(std::move(who), 0, cell.height);
    cell.append(set_text(call.number, styles.number, width, "call", context));
    cell.append(set_text(call.when, styles.when, width, "call", context));
    return cell;
}

constexpr double kPad = mm(3);            // left of each cell
constexpr double kRightPad = 0.6 * kPad;  // before the line that follows
constexpr double kAbove = mm(1.5);
constexpr double kBelow = mm(1.7);

Pieces side_by_side(const std::vector<Call>& calls, const CallStyles& styles, double width, LayoutContext& context) {
    const double column = width / static_cast<double>(calls.size());
    Piece piece;
    piece.frame.width = width;
    std::vector<Frame> cells;
    const double text_width = column - kPad - kRightPad;
    double who_height = 0;
    for (const Call& call : calls)
        who_height = std::max(who_height, set_text(call.who, styles.who, text_width, "call", context).height);
    for (const Call& call : calls) {
        cells.push_back(call_cell(call, styles, who_height, text_width, context));
        ++context.node;
        piece.frame.height = std::max(piece.frame.height, cells.back().height);
    }
    piece.frame.height += kAbove + kBelow;
    for (std::size_t at = 0; at < cells.size(); ++at) {
        const double x = static_cast<double>(at) * column;
        if (at > 0) piece.frame.put_rule({{x, 0}, {x, piece.frame.height - kHeavyLine}, kThinLine, Ink::black});
        piece.frame.put(std::move(cells[at]), x + kPad, kAbove);
    }
    piece.frame.put_outline(kHeavyLine);
    piece.line = calls.front().line;
    piece.field = first_field(calls.front().number);
    return {std::move(piece)};
}

Pieces below_one_another(const std::vector<Call>& calls, const CallStyles& styles, double width,
                         LayoutContext& context) {
    Piece piece;
    piece.frame.width = width;
    double number_width = 0;
    for (const Call& call : calls)
        number_width = std::max(number_width, natural_width(call.number, styles.number, context));
    constexpr double kMostNumber = 0.6;  // of the width: words beside a number need room too
    number_width = std::min(number_width, kMostNumber * width);
    double y = kAbove;
    for (const Call& call : calls) {
        Frame number = set_text(call.number, styles.number, number_width, "call", context);
        Frame words =
            call_cell({call.who, {}, call.when, call.line}, styles, 0, width - number_width - 4 * kPad, context);
        ++context.node;
        const double height = std::max(number.height, words.height);
        piece.frame.put(std::move(number), kPad, y);
        piece.frame.put(std::move(words), number_width + 3 * kPad, y);
        y += height + kAbove;
        const double between = y - mm(0.6);
        if (&call != &calls.back()) piece.frame.put_rule({{0, between}, {width, between}, kThinLine, Ink::black});
    }
    piece.frame.height = y + mm(0.5);
    piece.frame.put_outline(kHeavyLine);
    piece.line = calls.front().line;
    return {std::move(piece)};
}

}  // namespace

Pieces set_calls(const Block& list, const SectionStyle& style, double width, LayoutContext& context) {
    std::vector<Call> calls;
    for (const Block& item : list.children) calls.push_back(call_of(item));
    if (calls.empty()) return {};
    const CallStyles styles = call_styles(style);
    const double column = width / static_cast<double>(calls.size()) - kPad - kRightPad;
    constexpr std::size_t kMostInARow = 4;
    const bool fits = calls.size() <= kMostInARow && std::ranges::all_of(calls, [&](const Call& call) {
                          return natural_width(call.number, styles.number, context) <= column;
                      });
    return fits ? side_by_side(calls, styles, width, context) : below_one_another(calls, styles, width, context);
}

}  // namespace ventfolio
