#include "layout/ladder_symbols.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace ventfolio {
namespace {

using Segment = Path::Segment;

Path polygon(std::initializer_list<Point> points) {
    Path path;
    for (const Point& point : points)
        path.segments.push_back({path.segments.empty() ? Segment::Kind::move : Segment::Kind::line, point, {}, {}});
    path.segments.push_back({Segment::Kind::close, {}, {}, {}});
    return path;
}

Path outline(Path path, double stroke) {
    path.stroke = stroke;
    return path;
}

Path solid(Path path) {
    path.filled = true;
    return path;
}

/// A box whose corners are quarters of a circle.
Path rounded(Point corner, double width, double height, double radius) {
    constexpr double kCircle = 0.5523;  // of the radius: control points of the nearest cubic curve to a quarter circle
    const double hold = radius * (1 - kCircle);
    const double left = corner.x, top = corner.y, right = corner.x + width, bottom = corner.y + height;
    Path path;
    const auto line = [&](Point to) { path.segments.push_back({Segment::Kind::line, to, {}, {}}); };
    const auto curve = [&](Point a, Point b, Point to) { path.segments.push_back({Segment::Kind::curve, a, b, to}); };
    path.segments.push_back({Segment::Kind::move, {left + radius, top}, {}, {}});
    line({right - radius, top});
    curve({right - hold, top}, {right, top + hold}, {right, top + radius});
    line({right, bottom - radius});
    curve({right, bottom - hold}, {right - hold, bottom}, {right - radius, bottom});
    line({left + radius, bottom});
    curve({left + hold, bottom}, {left, bottom - hold}, {left, bottom - radius});
    line({left, top + radius});
    curve({left, top + hold}, {left + hold, top}, {left + radius, top});
    path.segments.push_back({Segment::Kind::close, {}, {}, {}});
    return path;
}

Path question_outline(double width, double height, double half) {
    const double shoulder = width - kQuestionPoint;
    return polygon(
        {{half, half}, {shoulder, half}, {width - half, height / 2}, {shoulder, height - half}, {half, height - half}});
}

Path chart_outline(double width, double height, double half) {
    const double shoulder = height - kChartPoint - half;
    return polygon(
        {{half, half}, {width - half, half}, {width - half, shoulder}, {width / 2, height - half}, {half, shoulder}});
}

Path diamond(double left, double top, double width, double height) {
    return polygon({{left + width / 2, top},
                    {left + width, top + height / 2},
                    {left + width / 2, top + height},
                    {left, top + height / 2}});
}

double mark_scale(const LayoutContext& context) { return std::min(context.scale, 1.35); }

TextStyle mark_style(double size, Ink ink) {
    TextStyle look = plain_style(size, Face::bold);
    look.ink = ink;
    look.leading = 1;
    look.alignment = Alignment::center;
    return look;
}

Frame centred_mark(const Inlines& mark, const TextStyle& look, double side, std::string_view role,
                   LayoutContext& context) {
    Frame set = set_text(mark, look, side, role, context);
    Frame frame;
    frame.width = frame.height = side;
    const double top = top_with_capitals_in_middle(set, side);
    frame.put(std::move(set), 0, top);
    return frame;
}

}  // namespace

std::optional<LadderWords::Kind> ladder_kind(std::string_view name) {
    if (name == "question") return LadderWords::Kind::question;
    if (name == "action") return LadderWords::Kind::action;
    if (name == "end") return LadderWords::Kind::end;
    if (name == "chart") return LadderWords::Kind::chart;
    return std::nullopt;
}

void put_symbol(Frame& frame, LadderWords::Kind kind, const Origin& origin) {
    const double half =
        (kind == LadderWords::Kind::end || kind == LadderWords::Kind::chart ? kEndLine : kSymbolLine) / 2;
    switch (kind) {
        case LadderWords::Kind::question:
            return frame.put_path(outline(question_outline(frame.width, frame.height, half), kSymbolLine), origin);
        case LadderWords::Kind::chart:
            return frame.put_path(outline(chart_outline(frame.width, frame.height, half), kEndLine), origin);
        case LadderWords::Kind::end: {
            const double radius = std::min(mm(5), frame.height / 2 - half);
            return frame.put_path(
                outline(rounded({half, half}, frame.width - kEndLine, frame.height - kEndLine, radius), kEndLine),
                origin);
        }
        case LadderWords::Kind::action:
        case LadderWords::Kind::steps:
            return frame.put_outline(kSymbolLine, origin);
    }
}

void put_diamond(Frame& frame, const Origin& origin) {
    // The line is as wide across a slanting side as along it, so its ends lie further in than half of its width.
    constexpr double kIn = mm(0.8);
    frame.put_path(outline(diamond(kIn, kIn / 2, frame.width - 2 * kIn, frame.height - kIn), kSymbolLine), origin);
}

double step_mark_side(const LayoutContext& context) { return mm(9.6) * mark_scale(context); }

Frame step_mark(std::size_t number, bool question, std::size_t element, LayoutContext& context) {
    const double side = step_mark_side(context);
    const Origin origin{context.node, "step", {}};
    Frame frame;
    frame.width = frame.height = side;
    Frame digits = centred_mark(words(fmt::format("{}", number), element),
                                mark_style(12 * mark_scale(context), Ink::white), side, "step number", context);
    if (question) frame.put_path(solid(diamond(0, 0, side, side)), origin);
    // In a diamond, the field that the digits stand on; else the square itself.
    const double field_width = question ? 0.56 * side : 0.84 * side;
    const double field_height = question ? 0.4 * side : 0.84 * side;
    frame.put_box(
        {{(side - field_width) / 2, (side - field_height) / 2}, field_width, field_height, 0, true, Ink::black},
        origin);
    frame.put(std::move(digits), 0, 0);
    return frame;
}

double connector_side(const LayoutContext& context) { return mm(9) * mark_scale(context); }

Frame connector(std::size_t number, LayoutContext& context) {
    const double side = connector_side(context);
    const std::string letter(1, static_cast<char>('A' + number % 26));
    Frame frame;
    frame.width = frame.height = side;
    const double half = kEndLine / 2;
    frame.put_path(outline(rounded({half, half}, side - kEndLine, side - kEndLine, side / 2 - half), kEndLine),
                   {context.node, "connector", {}});
    frame.put(centred_mark(words(letter), mark_style(14 * mark_scale(context), Ink::black), side, "connector", context),
              0, 0);
    return frame;
}

void put_arrow(Frame& frame, Point from, Point to, double stroke, const Origin& origin) {
    const double distance = std::hypot(to.x - from.x, to.y - from.y);
    const double length = std::min(mm(3.2), distance);
    const double half = 0.4 * length;
    const Point along{(to.x - from.x) / distance, (to.y - from.y) / distance};
    const Point base{to.x - along.x * length, to.y - along.y * length};
    const Point end{base.x + along.x * 0.3, base.y + along.y * 0.3};  // under the head, so that no gap shows
    frame.put_rule({from, end, stroke, Ink::black}, origin);
    frame.put_path(solid(polygon({to,
                                  {base.x - along.y * half, base.y + along.x * half},
                                  {base.x + along.y * half, base.y - along.x * half}})),
                   origin);
}

}  // namespace ventfolio
