#include "layout/figures/hookup_pieces.hpp"

#include <algorithm>
#include <cmath>

namespace ventfolio {
namespace {

using Fill = HookupPen::Fill;
constexpr double kLine = HookupPen::kLine;
constexpr double kStub = 4.4;  ///< the short end by which parts are joined

struct Place {
    double l;
    double t;
    double w;
    double h;
    double right() const { return l + w; }
    double bottom() const { return t + h; }
    double x() const { return l + w / 2; }
    double y() const { return t + h / 2; }
};

Place place_of(const HookupPiece& piece) { return {piece.left, piece.top, piece.width, piece.height}; }

/// Joins a part at the person's end to the one above and below it.
void draw_stub(HookupPen& pen, const Place& at) { pen.box(at.x() - kStub / 2, at.t, kStub, at.h, 0); }

void arrow_head(HookupPen& pen, Point tip, Point toward, double length, double half) {
    const Point back{tip.x - length * toward.x, tip.y - length * toward.y};
    pen.polygon({tip,
                 {back.x - half * toward.y, back.y + half * toward.x},
                 {back.x + half * toward.y, back.y - half * toward.x}},
                Fill::black);
}

// --- The machine and what is at it

void draw_ventilator(HookupPen& pen, const Place& at) {
    pen.box(at.right() - 1, at.bottom() - 7 - 3.3, 4, 6.6, 0.6);
    pen.box(at.l, at.t, at.w, at.h, 2.5);
    pen.box(at.l + 5.4, at.t + 4.5, 12.8, 8.5, 1);
    pen.circle(at.right() - 3.6, at.t + 5.6, 1.2);
    pen.circle(at.right() - 3.6, at.t + 9.4, 1.2, Fill::black);
}

void draw_built_in_humidifier(HookupPen& pen, const Place& at) {
    pen.box(at.l, at.t, at.w, at.h, 1);
    pen.wave({at.l + 0.6, at.t + 3.4}, {at.right() - 0.6, at.t + 3.4}, 1.2, 2.6);
    pen.line({at.l + 2, at.t + 6}, {at.right() - 2, at.t + 6}, 0.4);
}

void draw_air_filter(HookupPen& pen, const Place& at) {
    pen.box(at.l, at.t, at.w, at.h, 0.8);
    for (int bar = 1; bar <= 3; ++bar) {
        const double y = at.t + bar * at.h / 4;
        pen.line({at.l + 1.4, y}, {at.right() - 1.4, y}, 0.8);
    }
}

void draw_socket(HookupPen& pen, const Place& at) {
    pen.box(at.l, at.t, at.w, at.h, 1.2);
    pen.line({at.x() - 1.4, at.t + 2}, {at.x() - 1.4, at.t + 4.2});
    pen.line({at.x() + 1.4, at.t + 2}, {at.x() + 1.4, at.t + 4.2});
    pen.box(at.l - 2.2, at.y() - 1.6, 5.4, 3.2, 0.8, Fill::black);
    pen.circle(at.x(), at.bottom() - 2, 0.7);
}

void draw_concentrator(HookupPen& pen, const Place& at) {
    pen.box(at.l + 2, at.bottom() - 3, 3.4, 2.6, 0.6, Fill::black);
    pen.box(at.right() - 5.4, at.bottom() - 3, 3.4, 2.6, 0.6, Fill::black);
    pen.box(at.l, at.t, at.w, at.h - 2, 3);
    pen.circle(at.x(), at.t + 7, 3.2);
    pen.line({at.x(), at.t + 7}, {at.x() + 1.7, at.t + 5.2});
    for (int bar = 0; bar < 3; ++bar) {
        const double y = at.t + 13.5 + 2.6 * bar;
        pen.line({at.l + 4, y}, {at.right() - 4, y});
    }
}

/// A tall bottle with its valve and gauge.
void draw_cylinder(HookupPen& pen, const Place& at) {
    constexpr double kHalf = 5;
    pen.box(at.x() - 1.6, at.t + 4, 3.2, 5, 0.4);
    pen.box(at.x() - 2.6, at.t + 0.6, 5.2, 4, 0.8);
    pen.circle(at.x() + 5.2, at.t + 2.8, 2.4);
    pen.line({at.x() + 5.2, at.t + 2.8}, {at.x() + 6.4, at.t + 1.7});
    pen.box(at.x() - kHalf, at.t + 8, 2 * kHalf, at.h - 8.5, 4.4);
    pen.line({at.x() - kHalf, at.t + 17}, {at.x() + kHalf, at.t + 17});
}

/// A wide vessel with a domed top.
void draw_liquid_oxygen(HookupPen& pen, const Place& at) {
    pen.box(at.x() - 2, at.t + 0.6, 4, 5, 0.6);
    pen.box(at.l, at.t + 5, at.w, at.h - 5.5, 8);
    pen.wave({at.l + 1, at.t + 15}, {at.right() - 1, at.t + 15}, 1.4, 3);
}

/// A drum in the hose, with a slanting mesh.
void draw_hose_filter(HookupPen& pen, const Place& at) {
    pen.box(at.l, at.t, at.w, at.h, 1.6);
    for (int bar = 0; bar < 3; ++bar) {
        const double x = at.l + 1.2 + bar * (at.w - 4) / 2;
        pen.line({x, at.bottom() - 1.6}, {x + 1.6, at.t + 1.6}, 0.45);
    }
}

void draw_oxygen_adapter(HookupPen& pen, const Place& at) {
    pen.box(at.l, at.t, at.w, 6.8, 0.8);
    pen.box(at.x() - 1.3, at.t + 6.8, 2.6, at.h - 6.8, 0.3, Fill::black);
}

void draw_humidifier(HookupPen& pen, const Place& at, double disc) {
    const double base = disc + 1.6;
    const double dome = at.bottom() - base;
    pen.box(at.l + 8 - 3, at.t, 6, 4.4, 0.5);
    pen.box(at.right() - 8 - 3, at.t, 6, 4.4, 0.5);
    pen.box(at.l + 3.4, at.t + 4, at.w - 6.8, dome + 1 - at.t - 4, 4);
    const double water = at.t + 4 + (dome - at.t - 4) * 0.42;
    pen.wave({at.l + 4, water}, {at.right() - 4, water}, 1.3, 4);
    constexpr double kDashes = 5;  // from one to the next
    const auto dashes = static_cast<int>((at.w - 12) / kDashes);
    for (int dash = 0; dash < dashes; ++dash) {
        const double x = at.l + 7 + kDashes * dash;
        pen.line({x, water + 2.6}, {x + 2.6, water + 2.6}, 0.4);
    }
    pen.box(at.l, dome, at.w, base - 0.3, 1.6);
}

void draw_trap(HookupPen& pen, const Place& at) {
    pen.box(at.x() - 2, at.t, 4, 3, 0.3);
    pen.box(at.l, at.t + 1.8, at.w, 2, 0.6);
    pen.box(at.l + 0.6, at.t + 3.8, at.w - 1.2, at.h - 3.8, 1.8);
    pen.wave({at.l + 1, at.t + 6}, {at.right() - 1, at.t + 6}, 1, 2);
}

// --- At the person's end

/// Air blows out of a hole, to the left.
void draw_rays(HookupPen& pen, double x, double y) {
    for (const int side : {-1, 1}) pen.line({x, y + side * 1.4}, {x - 3.4, y + side * 2.8});
    pen.line({x, y}, {x - 3, y});
    arrow_head(pen, {x - 4.4, y}, {-1, 0}, 2, 0.9);
}

void draw_port(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    pen.box(at.l + 0.4, at.t + 0.9, at.w - 0.8, at.h - 1.8, 0.8);
    pen.circle(at.x() - 1, at.y(), 1.5);
    draw_rays(pen, at.l - 0.6, at.y());
}

/// A body with an arrow toward the person, and a dome with two nipples on its right.
void draw_valve(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    const double t = at.t + 0.7;
    const double h = at.h - 1.4;
    const double x = at.x();
    pen.box(x + 1.4, t + 0.5, 4.2, h - 1, 2.1);
    pen.box(x - 3.7, t, 7.4, h, 0.8);
    pen.line({x, t + 1.2}, {x, t + h - 3}, 1.1);
    arrow_head(pen, {x, t + h - 1}, {0, 1}, 2.4, 1.7);
}

void draw_y_piece(HookupPen& pen, const Place& at) {
    constexpr double kOuter = 5.2;
    const double fork = at.t + 8;
    const Point left[]{{at.x() - 5, at.t}, {at.x() - 5, at.t + 2}, {at.x(), fork}, {at.x(), at.bottom()}};
    const Point right[]{{at.x() + 5, at.t}, {at.x() + 5, at.t + 2}, {at.x(), fork}, {at.x(), at.bottom()}};
    for (const auto& [width, ink] : {std::pair{kOuter, Ink::black}, std::pair{kOuter - 2 * kLine, Ink::white}}) {
        pen.polyline(left, width, ink);
        pen.polyline(right, width, ink);
    }
    pen.line({at.x() - 7.8, at.t}, {at.x() - 2.2, at.t}, 1.2);
    pen.line({at.x() + 2.2, at.t}, {at.x() + 7.8, at.t}, 1.2);
}

void draw_exchanger(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    const double t = at.t + 0.9;
    const double h = at.h - 1.8;
    pen.box(at.l, t, at.w, h, 1.8);
    for (int bar = 1; bar <= 5; ++bar) {
        const double x = at.l + bar * at.w / 6;
        pen.line({x, t + 1.4}, {x, t + h - 1.4}, 0.45);
    }
}

void draw_person_filter(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    draw_hose_filter(pen, {at.l, at.t + 1.2, at.w, at.h - 2.4});
}

/// Rings like those of a bellows.
void draw_flexible_adapter(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    constexpr int kRings = 4;
    const double ring = (at.h - 0.8) / kRings;
    for (int at_ring = 0; at_ring < kRings; ++at_ring)
        pen.box(at.x() - 3.5, at.t + 0.4 + ring * at_ring, 7, ring, ring / 2);
}

/// A side arm with a catheter in its sleeve.
void draw_in_line_suction(HookupPen& pen, const Place& at) {
    draw_stub(pen, at);
    pen.box(at.x() - 6, at.y() - 1.5, 5, 3, 0.3);
    pen.box(at.x() - 3, at.t + 0.9, 6, at.h - 1.8, 0.8);
    pen.wave({at.x() - 9.2, at.y()}, {at.x() - 6, at.y()}, 1.6, 1.5);
    pen.box(at.x() - 10.8, at.y() - 1.9, 1.6, 3.8, 0.5, Fill::black);
}

// --- How the hose meets the person

/// From the level of neck or face to the right, then up to the other parts.
void draw_elbow(HookupPen& pen, double from, double level, double x, double top) {
    const Point corners[]{{from, level}, {x, level}, {x, top}};
    pen.bent(corners, 4, kStub + kLine, Ink::black);
    pen.bent(corners, 4, kStub - kLine, Ink::white);
    pen.line({x - kStub / 2 - 0.3, top}, {x + kStub / 2 + 0.3, top});
    pen.line({from, level - kStub / 2 - 0.3}, {from, level + kStub / 2 + 0.3});
}

void draw_neck_tube(HookupPen& pen, const Place& at, bool lying) {
    if (lying) {
        pen.box(at.x() - 1.7, at.t, 3.4, at.h, 0.3, Fill::black);
        pen.box(at.l, at.bottom() - 1.4, at.w, 1.4, 0.5, Fill::black);
        return;
    }
    const double level = at.bottom() - 2.2;
    draw_elbow(pen, at.l + 5, level, at.right() - 2.2, at.t);
    pen.box(at.l, level - 1.7, 6, 3.4, 0.3, Fill::black);
    pen.box(at.l, level - 4.2, 1.4, 8.4, 0.5, Fill::black);
}

void draw_mask(HookupPen& pen, const Place& at, bool lying, bool vented) {
    if (lying) {
        pen.line({at.l - 0.4, at.bottom()}, {at.l - 2.2, at.bottom() + 7});
        pen.line({at.right() + 0.4, at.bottom()}, {at.right() + 2.2, at.bottom() + 7});
        pen.polygon(
            {{at.x() - 2.2, at.t}, {at.x() + 2.2, at.t}, {at.right() + 1, at.bottom()}, {at.l - 1, at.bottom()}});
        if (!vented) return;
        pen.circle(at.x() - 1, at.bottom() - 2.4, 1);
        draw_rays(pen, at.l - 1.2, at.bottom() - 3);
        return;
    }
    const double level = at.bottom() - 2.2;
    pen.line({at.l + 1, level - 3.4}, {at.l - 11, level - 4.6});
    pen.line({at.l + 1, level + 3.4}, {at.l - 10, level + 2.6});
    draw_elbow(pen, at.l + 5, level, at.right() - 2.2, at.t);
    pen.polygon({{at.l, level - 5}, {at.l + 6, level - 2.2}, {at.l + 6, level + 2.2}, {at.l, level + 5}});
    if (!vented) return;
    pen.circle(at.l + 2.4, level + 1.2, 1);
    for (const double x : {1.0, 3.2, 5.4}) pen.line({at.l + x, level + 5.6}, {at.l + x + 0.4, level + 8});
}

void draw_mouthpiece(HookupPen& pen, const Place& at, bool lying) {
    if (lying) {
        pen.box(at.x() - 2.2, at.t, 4.4, 2.6, 0.3);
        pen.box(at.x() - 1.1, at.t + 2.6, 2.2, at.h - 2.6, 0.3);
        return;
    }
    const double level = at.bottom() - 2.2;
    draw_elbow(pen, at.l + 9, level, at.right() - 2.2, at.t);
    pen.box(at.l, level - 1.1, 9.4, 2.2, 0.6);
}

// --- Scenery

void draw_bed(HookupPen& pen, const Place& at) {
    for (const double x : {at.l + 2, at.right() - 2}) pen.line({x, at.t + 5}, {x, at.bottom()}, 1.2);
    pen.box(at.l, at.t, at.w, 5.5, 1.4);
    pen.box(at.l + 0.5, at.t - 2.8, 15, 2.8, 1.4);
}

void draw_seat(HookupPen& pen, const Place& at, bool wheels) {
    const double head = at.l + 16;
    const double floor = at.bottom();
    if (wheels) {
        pen.circle(head - 3, floor - 11.4, 11);
        pen.circle(head - 3, floor - 11.4, 1.6);
        pen.circle(head + 12, floor - 4, 3.5);
        pen.line({head + 18, floor - 2}, {head + 23, floor - 2}, 1.2);
        pen.line({head - 14, floor - 50.4}, {head - 10, floor - 50.4}, 1.2);
    } else {
        pen.line({head - 10, floor - 22}, {head - 10, floor}, 1.2);
        pen.line({head + 9, floor - 22}, {head + 9, floor}, 1.2);
    }
    pen.line({head - 10, floor - 51}, {head - 10, floor - 21}, 1.2);
    pen.line({head - 10, floor - 21.6}, {head + 14, floor - 21.6}, 1.2);
}

void draw_lying(HookupPen& pen, const Place& at) {
    const double head = at.l + 6.5;
    pen.box(head + 3, at.bottom() - 11.2, 14, 10.6, 1.5);
    pen.circle(head, at.bottom() - 8, 6.5);
    pen.disc(head - 1.8, at.bottom() - 11.4, 0.6, Ink::black);
    pen.box(head + 12.5, at.bottom() - 13, at.right() - head - 12.5, 12.6, 3.5);
    pen.line({head + 22, at.bottom() - 12.6}, {head + 20, at.bottom() - 0.8});
}

void draw_seated(HookupPen& pen, const Place& at) {
    const double head = at.l + 9;
    const double floor = at.bottom();
    pen.box(head - 3, floor - 53, 6.4, 6, 0.6);
    pen.circle(head, floor - 58.2, 6.5);
    pen.disc(head + 3.2, floor - 59.6, 0.6, Ink::black);
    pen.box(head + 12, floor - 5, 10, 4, 1.8);
    pen.box(head + 12, floor - 30, 6.4, 25.6, 2.4);
    pen.box(head - 8, floor - 48.5, 13, 26.4, 4.5);
    pen.box(head - 6, floor - 30, 24.4, 7.6, 3);
    pen.line({head - 1, floor - 42}, {head + 1, floor - 34});
    pen.line({head + 1, floor - 34}, {head + 9, floor - 32.6});
}

// --- Hoses

/// What is left of the run between two corners when their roundings are taken off.
struct Straight {
    Point from;
    Point to;
    Point toward;
    double length;
};

std::vector<Straight> straights(const HookupPipe& pipe, double radius) {
    std::vector<Straight> runs;
    for (std::size_t at = 1; at < pipe.corners.size(); ++at) {
        Point from = pipe.corners[at - 1];
        Point to = pipe.corners[at];
        const double length = std::abs(to.x - from.x) + std::abs(to.y - from.y);
        if (length < 0.01) continue;
        const Point toward{(to.x - from.x) / length, (to.y - from.y) / length};
        const double before = at > 1 ? std::min(radius, length / 2) : 0;
        const double after = at + 1 < pipe.corners.size() ? std::min(radius, length / 2) : 0;
        from = {from.x + before * toward.x, from.y + before * toward.y};
        to = {to.x - after * toward.x, to.y - after * toward.y};
        runs.push_back({from, to, toward, length - before - after});
    }
    return runs;
}

/// One arrow for each straight run that has room for it, clear of discs.
void draw_arrows(HookupPen& pen, const HookupPipe& pipe, const HookupPlan& plan, double radius, bool wire) {
    constexpr double kLength = 4;
    constexpr double kHalf = 1.5;
    for (const Straight& run : straights(pipe, radius)) {
        if (run.length < 9) continue;
        for (const double share : {0.5, 0.25, 0.75}) {
            const double on = share * run.length + kLength / 2;
            if (on < kLength || on > run.length - 1) continue;
            const Point tip{run.from.x + on * run.toward.x, run.from.y + on * run.toward.y};
            const Point middle{tip.x - kLength / 2 * run.toward.x, tip.y - kLength / 2 * run.toward.y};
            const auto near = [&](Point other, double reach) {
                return std::hypot(other.x - middle.x, other.y - middle.y) < reach;
            };
            if (std::ranges::any_of(plan.discs,
                                    [&](const HookupDisc& one) { return near(one.centre, plan.disc / 2 + 3.4); }))
                continue;
            if (wire) {
                const Point clear[]{{tip.x + 0.8 * run.toward.x, tip.y + 0.8 * run.toward.y},
                                    {tip.x - 4.8 * run.toward.x, tip.y - 4.8 * run.toward.y}};
                pen.polyline(clear, pipe.width() - 2 * kLine, Ink::white);
            }
            arrow_head(pen, tip, run.toward, kLength, kHalf);
            break;
        }
    }
}

void draw_hose(HookupPen& pen, const HookupPipe& pipe, const HookupPlan& plan) {
    constexpr double kRadius = 5;
    const bool wire = pipe.look == HookupPipe::Look::heated_hose;
    pen.bent(pipe.corners, kRadius, pipe.width(), Ink::black);
    pen.bent(pipe.corners, kRadius, pipe.width() - 2 * kLine, Ink::white);
    if (wire)
        for (const Straight& run : straights(pipe, kRadius)) pen.wave(run.from, run.to, 2.2, 3.2);
    draw_arrows(pen, pipe, plan, kRadius, wire);
}

void draw_dashes(HookupPen& pen, const HookupPipe& pipe) {
    constexpr double kRadius = 4;
    constexpr double kStep = 0.25;
    constexpr std::size_t kDash = 6;  // steps: 1.5 mm
    pen.bent(pipe.corners, kRadius, pipe.width() + 1.4, Ink::white);
    const std::vector<Point> points = points_along(pipe.corners, kRadius, kStep);
    for (std::size_t at = 0; at + 1 < points.size(); at += 2 * kDash) {
        const std::size_t count = std::min(kDash + 1, points.size() - at);
        if (count > 1) pen.polyline(std::span{points}.subspan(at, count), pipe.width());
    }
}

/// A small line with the socket that it is plugged into at either end.
void draw_small_line(HookupPen& pen, const HookupPipe& pipe) {
    constexpr double kRadius = 4;
    pen.bent(pipe.corners, kRadius, pipe.width() + 1.2, Ink::white);
    pen.bent(pipe.corners, kRadius, pipe.width(), Ink::black);
    if (pipe.look == HookupPipe::Look::pressure_line)
        pen.bent(pipe.corners, kRadius, pipe.width() - 2 * 0.5, Ink::white);
    const double half = pipe.width() / 2 + 0.5;
    const Point machine = pipe.corners.back();
    const Point valve = pipe.corners.front();
    pen.box(machine.x - half, machine.y - 1.8, 2 * half, 1.8, 0.2);
    pen.box(valve.x, valve.y - half, 1.4, 2 * half, 0.2, Fill::black);
}

}  // namespace

void draw_scenery(HookupPen& pen, const HookupScenery& scenery) {
    using Kind = HookupScenery::Kind;
    const Place at{scenery.left, scenery.top, scenery.width, scenery.height};
    switch (scenery.kind) {
        case Kind::table:
            for (const double x : {at.l + 5, at.right() - 5}) pen.line({x, at.t}, {x, at.bottom()}, 1.2);
            return pen.line({at.l, at.t + 0.6}, {at.right(), at.t + 0.6}, 1.2);
        case Kind::tray:
            return pen.line({at.l, at.t + 0.6}, {at.right(), at.t + 0.6}, 1.2);
        case Kind::bed:
            return draw_bed(pen, at);
        case Kind::seat:
        case Kind::wheelchair:
            return draw_seat(pen, at, scenery.kind == Kind::wheelchair);
        case Kind::person_lying:
            return draw_lying(pen, at);
        case Kind::person_seated:
            return draw_seated(pen, at);
    }
}

void draw_pipe(HookupPen& pen, const HookupPipe& pipe, const HookupPlan& plan) {
    switch (pipe.look) {
        case HookupPipe::Look::hose:
        case HookupPipe::Look::heated_hose:
            return draw_hose(pen, pipe, plan);
        case HookupPipe::Look::oxygen:
            return draw_dashes(pen, pipe);
        case HookupPipe::Look::pressure_line:
        case HookupPipe::Look::valve_line:
            return draw_small_line(pen, pipe);
        case HookupPipe::Look::cord:
            return pen.bent(pipe.corners, 2, pipe.width(), Ink::black);
    }
}

void draw_piece(HookupPen& pen, const HookupPiece& piece, bool lying, double disc) {
    const Place at = place_of(piece);
    switch (piece.part) {
        case HookupPart::wall_power:
            return draw_socket(pen, at);
        case HookupPart::ventilator:
            return draw_ventilator(pen, at);
        case HookupPart::built_in_humidifier:
            return draw_built_in_humidifier(pen, at);
        case HookupPart::air_filter:
            return draw_air_filter(pen, at);
        case HookupPart::concentrator:
            return draw_concentrator(pen, at);
        case HookupPart::cylinder:
            return draw_cylinder(pen, at);
        case HookupPart::liquid_oxygen:
            return draw_liquid_oxygen(pen, at);
        case HookupPart::oxygen_to_outlet:
            return draw_oxygen_adapter(pen, at);
        case HookupPart::outlet_filter:
        case HookupPart::return_filter:
            return draw_hose_filter(pen, at);
        case HookupPart::humidifier:
            return draw_humidifier(pen, at, disc);
        case HookupPart::water_trap:
        case HookupPart::return_trap:
            return draw_trap(pen, at);
        case HookupPart::exhalation_port:
            return draw_port(pen, at);
        case HookupPart::exhalation_valve:
            return draw_valve(pen, at);
        case HookupPart::y_piece:
            return draw_y_piece(pen, at);
        case HookupPart::person_filter:
            return draw_person_filter(pen, at);
        case HookupPart::moisture_exchanger:
            return draw_exchanger(pen, at);
        case HookupPart::flexible_adapter:
            return draw_flexible_adapter(pen, at);
        case HookupPart::in_line_suction:
            return draw_in_line_suction(pen, at);
        case HookupPart::neck_tube:
            return draw_neck_tube(pen, at, lying);
        case HookupPart::mask:
        case HookupPart::vented_mask:
            return draw_mask(pen, at, lying, piece.part == HookupPart::vented_mask);
        case HookupPart::mouthpiece:
            return draw_mouthpiece(pen, at, lying);
        case HookupPart::oxygen_to_inlet:
            return pen.box(at.l, at.t, at.w, at.h, 0.5);
        case HookupPart::oxygen_to_mask:
        case HookupPart::short_hose:
        case HookupPart::hose:
        case HookupPart::heated_hose:
        case HookupPart::pressure_line:
        case HookupPart::valve_line:
        case HookupPart::return_hose:
        case HookupPart::heated_return_hose:
            return;  // pipes
    }
}

}  // namespace ventfolio
