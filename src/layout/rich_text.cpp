#include "layout/rich_text.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/line_breaker.hpp"
#include "layout/measures.hpp"

namespace ventfolio {
namespace {

// The part of a line that a letter may take. The two add up to one type size, so a leading of 1 sets lines solid.
constexpr double kAscent = 0.78;   // in type sizes: capitals, and room for an accent on most
constexpr double kDescent = 0.22;  // in type sizes: the deepest letters

constexpr double kRoomAroundBox = mm(2.6);
constexpr double kBoxDrop = mm(0.5);

/// A check box in a line stands a little below the baseline.
void put_check_box(Frame& frame, double x, double baseline, double width, Origin origin) {
    constexpr double kRoomLeft = mm(1.2);
    const double side = width - kRoomAroundBox;
    frame.put_box({{x + kRoomLeft, baseline - side + kBoxDrop}, side, side, kBoxLine, false, Ink::black},
                  std::move(origin));
}

void put_write_in(Frame& frame, double x, double baseline, double width, Ink ink) {
    constexpr double kDrop = mm(0.6);
    frame.put_rule({{x, baseline + kDrop}, {x + width, baseline + kDrop}, kThinLine, ink});
}

void put_fragment(Frame& frame, Fragment& fragment, const TextStyle& style, Point at, Origin origin) {
    const TextSpan& span = *fragment.span;
    origin.element = span.element;
    if (span.check_box) return put_check_box(frame, at.x, at.y, fragment.width, std::move(origin));
    if (span.object_width > 0) return put_write_in(frame, at.x, at.y, fragment.width, style.ink);
    PlacedItem item;
    item.kind = PlacedItem::Kind::text;
    item.text.origin = at;
    item.text.size = span.look.size;
    item.text.face = span.look.face;
    item.text.ink = style.ink;
    item.text.text = std::move(fragment.text);
    item.text.kerns = std::move(fragment.kerns);
    item.text.width = fragment.width;
    item.text.ascent = kAscent * span.look.size;
    item.text.descent = kDescent * span.look.size;
    item.origin = std::move(origin);
    item.origin.field = span.field;
    frame.items.push_back(std::move(item));
}

/// How much a line with check boxes needs above what its type takes, so that no box reaches into the line before.
double extra_for_boxes(const Line& line, double leading) {
    constexpr double kAir = mm(0.2);
    double extra = 0;
    for (const Fragment& fragment : line.fragments) {
        if (!fragment.span->check_box) continue;
        const double above_baseline = fragment.width - kRoomAroundBox - kBoxDrop + kBoxLine / 2 + kAir;
        extra = std::max(extra, above_baseline - baseline_at(line.size, leading));
    }
    return extra;
}

double start_of_line(Alignment alignment, double width, double line_width) {
    if (alignment == Alignment::right) return width - line_width;
    if (alignment == Alignment::center) return (width - line_width) / 2;
    return 0;
}

void report_wide_words(const LineBreaker& breaker, double width, LayoutContext& context) {
    for (const auto& [span, excess] : breaker.words_wider_than(width)) {
        const std::string about = span->field.empty() ? "a word of the template" : "the value of " + span->field;
        context.refuse("word-wider-than-column",
                       fmt::format("On {}, {} is {:.0f} mm wider than its column "
                                   "and cannot be broken.",
                                   context.document.sheet, about, std::max(1.0, excess / mm(1))),
                       span->line, span->field);
    }
}

const TextRun* first_run(const Frame& frame) {
    const auto found = std::ranges::find(frame.items, PlacedItem::Kind::text, &PlacedItem::kind);
    return found == frame.items.end() ? nullptr : &found->text;
}

bool is_gap(const Inline& piece) {
    if (piece.kind == Inline::Kind::line_break) return true;
    return piece.kind == Inline::Kind::text && piece.text.find_first_not_of(' ') == std::string::npos;
}

}  // namespace

TextWidths widths_of(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    const TextSpans spans = spans_of(inlines, style, context.scale);
    const LineBreaker breaker{spans, context.measurer};
    return {breaker.natural_width(), breaker.widest_word()};
}

double natural_width(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    return widths_of(inlines, style, context).natural;
}

double widest_word(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    return widths_of(inlines, style, context).widest_word;
}

Frame set_text(const Inlines& inlines, const TextStyle& style, double width, std::string_view role,
               LayoutContext& context) {
    Frame frame;
    frame.width = width;
    TextSpans spans = spans_of(inlines, style, context.scale);
    check_coverage(spans, context);
    for (const Inline& piece : inlines)
        if (is_shown(piece)) context.refuse_unprinted("a figure or picture among words", piece.line);
    // A line to write on may be shorter than it was asked for, but not longer than its column.
    for (TextSpan& span : spans) span.object_width = std::min(span.object_width, width);
    const LineBreaker breaker{spans, context.measurer};
    report_wide_words(breaker, width, context);
    for (Line& line : style.balanced ? breaker.balanced_lines(width) : breaker.lines(width)) {
        const double extra = frame.height > 0 ? extra_for_boxes(line, style.leading) : 0;
        const double pitch = style.leading * line.size + extra;
        const double baseline = frame.height + extra + baseline_at(line.size, style.leading);
        double x = start_of_line(style.alignment, width, line.width);
        for (Fragment& fragment : line.fragments) {
            put_fragment(frame, fragment, style, {x, baseline}, {context.node, std::string{role}, {}});
            x += fragment.width;
        }
        frame.height += pitch;
    }
    return frame;
}

double first_baseline(const Frame& frame) {
    const TextRun* first = first_run(frame);
    return first ? first->origin.y : frame.height;
}

double baseline_at(double size, double leading) { return (leading * size - size) / 2 + kAscent * size; }

double top_with_capitals_in_middle(const Frame& text, double height) {
    const TextRun* first = first_run(text);
    if (!first) return 0;
    const double capitals = FontMetrics::of(first->face).cap_height() * first->size / 1000;
    return (height + capitals) / 2 - first->origin.y;
}

std::string first_field(const Inlines& inlines) {
    for (const Inline& piece : inlines)
        if (piece.kind == Inline::Kind::value) return piece.value.field;
    return {};
}

std::pair<Inlines, Inlines> split_after_strong(const Inlines& inlines) {
    const auto rest = std::ranges::find_if(inlines, [](const Inline& piece) { return !piece.strong; });
    Inlines head{inlines.begin(), rest};
    Inlines tail{std::find_if_not(rest, inlines.end(), is_gap), inlines.end()};
    if (!tail.empty() && tail.front().kind == Inline::Kind::text)
        tail.front().text.erase(0, tail.front().text.find_first_not_of(' '));
    if (!head.empty() && head.back().kind == Inline::Kind::text)
        head.back().text.erase(head.back().text.find_last_not_of(' ') + 1);
    return {std::move(head), std::move(tail)};
}

Inlines words(std::string_view text, std::size_t element) {
    Inline piece;
    piece.text = text;
    piece.element = element;
    return {piece};
}

}  // namespace ventfolio
