#include "layout/figures/hookup_pen.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

using Kind = Path::Segment::Kind;

Point in_points(Point at) { return {mm(at.x), mm(at.y)}; }

void move_to(Path& path, Point at) { path.segments.push_back({Kind::move, in_points(at), {}, {}}); }
void line_to(Path& path, Point at) { path.segments.push_back({Kind::line, in_points(at), {}, {}}); }
void close(Path& path) { path.segments.push_back({Kind::close, {}, {}, {}}); }

/// A quarter of a circle as a curve: 0.5523 of the radius, which is off by less than 3 in 10,000 of it.
constexpr double kQuarter = 0.5523;

void quarter_to(Path& path, Point from, Point corner, Point to) {
    const auto toward = [](Point a, Point b) {
        return Point{a.x + kQuarter * (b.x - a.x), a.y + kQuarter * (b.y - a.y)};
    };
    path.segments.push_back(
        {Kind::curve, in_points(toward(from, corner)), in_points(toward(to, corner)), in_points(to)});
}

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// The point so far from `from` on the way to `to`.
Point on_way(Point from, Point to, double length) {
    const double all = distance(from, to);
    const double share = all > 0 ? length / all : 0;
    return {from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
}

/// Where the rounding of an inner corner begins and ends.
struct Bend {
    Point begin;
    Point corner;
    Point end;
};
Bend bend_at(std::span<const Point> corners, std::size_t at, double radius) {
    const double room = std::min(distance(corners[at - 1], corners[at]), distance(corners[at], corners[at + 1]));
    const double taken = std::min(radius, room / 2);
    return {on_way(corners[at], corners[at - 1], taken), corners[at], on_way(corners[at], corners[at + 1], taken)};
}

std::size_t steps_in(double length, double step) { return static_cast<std::size_t>(std::ceil(length / step)); }

Path circle_path(double x, double y, double r) {
    Path path;
    const Point right{x + r, y};
    const Point low{x, y + r};
    const Point left{x - r, y};
    const Point high{x, y - r};
    move_to(path, right);
    quarter_to(path, right, {x + r, y + r}, low);
    quarter_to(path, low, {x - r, y + r}, left);
    quarter_to(path, left, {x - r, y - r}, high);
    quarter_to(path, high, {x + r, y - r}, right);
    close(path);
    return path;
}

Path box_path(double l, double t, double w, double h, double r) {
    Path path;
    r = std::min({r, w / 2, h / 2});
    move_to(path, {l + r, t});
    line_to(path, {l + w - r, t});
    quarter_to(path, {l + w - r, t}, {l + w, t}, {l + w, t + r});
    line_to(path, {l + w, t + h - r});
    quarter_to(path, {l + w, t + h - r}, {l + w, t + h}, {l + w - r, t + h});
    line_to(path, {l + r, t + h});
    quarter_to(path, {l + r, t + h}, {l, t + h}, {l, t + h - r});
    line_to(path, {l, t + r});
    quarter_to(path, {l, t + r}, {l, t}, {l + r, t});
    close(path);
    return path;
}

}  // namespace

void HookupPen::paint(Path path, Fill fill) {
    if (fill != Fill::none) {
        Path inside = path;
        inside.filled = true;
        inside.ink = fill == Fill::white ? Ink::white : Ink::black;
        frame_.put_path(std::move(inside), origin_);
    }
    path.stroke = mm(kLine);
    frame_.put_path(std::move(path), origin_);
}

void HookupPen::box(double left, double top, double width, double height, double radius, Fill fill) {
    paint(box_path(left, top, width, height, radius), fill);
}

void HookupPen::circle(double x, double y, double radius, Fill fill) { paint(circle_path(x, y, radius), fill); }

void HookupPen::disc(double x, double y, double radius, Ink ink) {
    Path path = circle_path(x, y, radius);
    path.filled = true;
    path.ink = ink;
    frame_.put_path(std::move(path), origin_);
}

void HookupPen::line(Point from, Point to, double width) {
    const Point points[]{from, to};
    polyline(points, width);
}

void HookupPen::polyline(std::span<const Point> points, double width, Ink ink) {
    Path path;
    path.stroke = mm(width);
    path.ink = ink;
    for (const Point& point : points) &point == points.data() ? move_to(path, point) : line_to(path, point);
    frame_.put_path(std::move(path), origin_);
}

void HookupPen::polygon(std::initializer_list<Point> points, Fill fill) {
    Path path;
    for (const Point& point : points) path.segments.empty() ? move_to(path, point) : line_to(path, point);
    close(path);
    paint(std::move(path), fill);
}

void HookupPen::bent(std::span<const Point> corners, double radius, double width, Ink ink) {
    Path path;
    path.stroke = mm(width);
    path.ink = ink;
    move_to(path, corners.front());
    for (std::size_t at = 1; at + 1 < corners.size(); ++at) {
        const Bend bend = bend_at(corners, at, radius);
        line_to(path, bend.begin);
        quarter_to(path, bend.begin, bend.corner, bend.end);
    }
    line_to(path, corners.back());
    frame_.put_path(std::move(path), origin_);
}

void HookupPen::wave(Point from, Point to, double height, double pitch) {
    constexpr int kSteps = 8;  // of a full wave
    constexpr double kThin = 0.45;
    const double length = distance(from, to);
    if (length < pitch) return;
    const Point along{(to.x - from.x) / length, (to.y - from.y) / length};
    const double waves = std::floor(length / pitch);
    const double step = pitch / kSteps;
    const double start = (length - waves * pitch) / 2;
    std::vector<Point> points;
    for (int at = 0; at <= static_cast<int>(waves) * kSteps; ++at) {
        const double run = start + at * step;
        const double off = height / 2 * std::sin(2 * std::numbers::pi * at / kSteps);
        points.push_back({from.x + run * along.x - off * along.y, from.y + run * along.y + off * along.x});
    }
    polyline(points, kThin);
}

std::vector<Point> points_along(std::span<const Point> corners, double radius, double step) {
    std::vector<Point> points;
    Point at = corners.front();
    const auto straight_to = [&](Point to) {
        const double length = distance(at, to);
        for (std::size_t count = 0; count < steps_in(length, step); ++count)
            points.push_back(on_way(at, to, static_cast<double>(count) * step));
        at = to;
    };
    for (std::size_t corner = 1; corner + 1 < corners.size(); ++corner) {
        const Bend bend = bend_at(corners, corner, radius);
        straight_to(bend.begin);
        const double length = distance(bend.begin, bend.corner) * std::numbers::pi / 2;
        for (std::size_t count = 0; count < steps_in(length, step); ++count) {
            const double t = static_cast<double>(count) * step / length;
            const auto mix = [&](double a, double b, double c) {
                return (1 - t) * (1 - t) * a + 2 * t * (1 - t) * b + t * t * c;
            };
            points.push_back(
                {mix(bend.begin.x, bend.corner.x, bend.end.x), mix(bend.begin.y, bend.corner.y, bend.end.y)});
        }
        at = bend.end;
    }
    straight_to(corners.back());
    points.push_back(corners.back());
    return points;
}

}  // namespace ventfolio
