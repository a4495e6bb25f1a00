#include "layout/calls.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

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
        std::tie(call.number, call.when) = split_after_strong(rest);
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

/// One low row: the first who in white on black, and each number beside its name.
struct LineStyles {
    TextStyle who;
    TextStyle number;
};

LineStyles line_styles(double scale, Ink ink) {
    LineStyles styles{plain_style(10 * scale), plain_style(18 * scale, Face::bold)};
    styles.who.leading = 1.12;
    styles.number.leading = 1.1;
    styles.who.ink = styles.number.ink = ink;
    styles.number.alignment = Alignment::right;
    return styles;
}

constexpr double kLinePad = mm(2.4);
constexpr double kRoundingRoom = 1;  // a text set to its own natural width must not wrap

/// The width of a number with what stands around it.
double number_column(const Call& call, LayoutContext& context) {
    return natural_width(call.number, line_styles(context.scale, Ink::black).number, context) + kRoundingRoom +
           2 * kLinePad;
}

/// A cell before the height of the row is known.
struct LineCell {
    Frame who;
    Frame number;
    double width;
    double number_left;
    bool black;
    std::size_t node;

    double height() const { return std::max(who.height, number.height) + 2 * mm(1); }
};

LineCell line_cell(const Call& call, double width, bool black, LayoutContext& context) {
    const LineStyles styles = line_styles(context.scale, black ? Ink::white : Ink::black);
    const double number_width = number_column(call, context);
    LineCell cell;
    cell.who = set_text(call.who, styles.who, width - number_width - kLinePad, "call", context);
    cell.number = set_text(call.number, styles.number, number_width - 2 * kLinePad, "call", context);
    cell.width = width;
    cell.number_left = width - number_width + kLinePad;
    cell.black = black;
    cell.node = context.node++;
    return cell;
}

Frame drawn(LineCell cell, double height) {
    Frame frame;
    frame.width = cell.width;
    frame.height = height;
    if (cell.black) frame.put_black_field({cell.node, "call", {}});
    frame.put_in_middle(std::move(cell.who), kLinePad);
    frame.put_in_middle(std::move(cell.number), cell.number_left);
    return frame;
}

/// The names of a line before their widths are known.
class LineNames {
  public:
    LineNames(const std::vector<Call>& calls, LayoutContext& context)
        : calls_{calls},
          context_{context.measurer, told_when_set_, context.document, context.scale, context.node},
          style_{line_styles(context.scale, Ink::black).who} {
        for (const Call& call : calls) {
            names_.push_back(widths_of(call.who, style_, context_));
            beside_.push_back(number_column(call, context_) + kLinePad + kRoundingRoom);
        }
    }

    /// Each has its number, the longest word of its name, and of what is left a share by the length of its name.
    /// Nothing where that is too much.
    std::vector<double> by_share(double width) const {
        std::vector<double> widths = beside_;
        for (std::size_t at = 0; at < widths.size(); ++at) widths[at] += names_[at].widest_word;
        const double left = width - std::accumulate(widths.begin(), widths.end(), 0.0);
        if (left < 0) return {};
        double wanted = 0;
        for (const TextWidths& name : names_) wanted += name.natural - name.widest_word;
        for (std::size_t at = 0; at < widths.size(); ++at)
            widths[at] += wanted > 0 ? left * (names_[at].natural - names_[at].widest_word) / wanted
                                     : left / static_cast<double>(widths.size());
        return widths;
    }

    /// As few lines for the tallest name as can be had.
    std::vector<double> by_lines(double width) {
        std::vector<double> widths = by_share(width);
        for (std::size_t lines = 1; !widths.empty() && lines < tallest(widths); ++lines) {
            std::vector<double> least = beside_;
            for (std::size_t at = 0; at < least.size(); ++at) least[at] += least_width(at, lines);
            const double left = width - std::accumulate(least.begin(), least.end(), 0.0);
            if (left < 0) continue;
            for (double& one : least) one += left / static_cast<double>(least.size());
            return least;
        }
        return widths;
    }

    /// Lines of the tallest name in cells of these widths.
    std::size_t tallest(const std::vector<double>& widths) {
        std::size_t most = 0;
        for (std::size_t at = 0; at < widths.size(); ++at)
            most = std::max(most, lines(at, widths[at] - beside_[at] + kRoundingRoom));
        return most;
    }

  private:
    std::size_t lines(std::size_t at, double width) {
        const double height = set_text(calls_[at].who, style_, width, "call", context_).height;
        return static_cast<std::size_t>(std::lround(height / (style_.leading * style_.words.size)));
    }

    /// Halves the way between one word a line and all of them in one.
    double least_width(std::size_t at, std::size_t most_lines) {
        constexpr double kNearEnough = 0.5;
        double low = names_[at].widest_word;
        if (lines(at, low + kRoundingRoom) <= most_lines) return low;
        double high = names_[at].natural;
        while (high - low > kNearEnough) {
            const double middle = (low + high) / 2;
            (lines(at, middle + kRoundingRoom) <= most_lines ? high : low) = middle;
        }
        return high;
    }

    const std::vector<Call>& calls_;
    std::vector<Finding> told_when_set_;
    LayoutContext context_;
    TextStyle style_;
    std::vector<TextWidths> names_;
    std::vector<double> beside_;  ///< number and room of each cell
};

/// Nothing where a name does not fit beside its number. Names share the room by their length; only where one of them
/// would get tall do they share it so that the tallest is low.
std::vector<double> line_widths(const std::vector<Call>& calls, double width, LayoutContext& context) {
    constexpr std::size_t kMostLines = 3;
    LineNames names{calls, context};
    std::vector<double> widths = names.by_share(width);
    return names.tallest(widths) > kMostLines ? names.by_lines(width) : widths;
}

/// In a line, when to call stands behind the name: "Nurse line by day".
Call in_two_parts(Call call) {
    if (call.when.empty()) return call;
    const Inlines blank = words(" ", call.when.front().element);
    call.who.insert(call.who.end(), blank.begin(), blank.end());
    call.who.insert(call.who.end(), call.when.begin(), call.when.end());
    call.when.clear();
    return call;
}

/// Nothing where a name does not fit beside its number.
Pieces in_a_line(std::vector<Call> calls, double width, LayoutContext& context) {
    std::ranges::transform(calls, calls.begin(), in_two_parts);
    const std::vector<double> widths = line_widths(calls, width, context);
    if (widths.empty()) return {};
    Piece piece;
    piece.frame.width = width;
    piece.line = calls.front().line;
    piece.field = first_field(calls.front().number);
    std::vector<LineCell> cells;
    piece.frame.height = mm(9) * context.scale;
    for (std::size_t at = 0; at < calls.size(); ++at) {
        cells.push_back(line_cell(calls[at], widths[at], at == 0, context));
        piece.frame.height = std::max(piece.frame.height, cells.back().height());
    }
    double x = 0;
    for (std::size_t at = 0; at < cells.size(); x += widths[at], ++at) {
        if (at > 1) piece.frame.put_column_rule(x, kThinLine);
        piece.frame.put(drawn(std::move(cells[at]), piece.frame.height), x, 0);
    }
    piece.frame.put_outline(kBoxLine);
    return {std::move(piece)};
}

}  // namespace

Pieces set_calls(const Block& list, const SectionStyle& style, double width, LayoutContext& context) {
    std::vector<Call> calls;
    for (const Block& item : list.children) calls.push_back(call_of(item));
    if (calls.empty()) return {};
    if (style.has("line"))
        if (Pieces line = in_a_line(calls, width, context); !line.empty()) return line;
    const CallStyles styles = call_styles(style);
    const double column = width / static_cast<double>(calls.size()) - kPad - kRightPad;
    constexpr std::size_t kMostInARow = 4;
    const bool fits = calls.size() <= kMostInARow && std::ranges::all_of(calls, [&](const Call& call) {
                          return natural_width(call.number, styles.number, context) <= column;
                      });
    return fits ? side_by_side(calls, styles, width, context) : below_one_another(calls, styles, width, context);
}

}  // namespace ventfolio
