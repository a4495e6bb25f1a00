#include "layout/figures/hatch.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

constexpr double kPitch = mm(2);
constexpr double kLine = kBoxLine;
constexpr double kDot = mm(0.8);
constexpr double kDash = mm(2);
constexpr double kDashGap = mm(1.4);

struct NamedHatch {
    std::string_view figure;
    Hatch hatch;
};
constexpr std::array kHatches{NamedHatch{"bar-solid", Hatch::solid},     NamedHatch{"bar-rising", Hatch::rising},
                              NamedHatch{"bar-falling", Hatch::falling}, NamedHatch{"bar-upright", Hatch::upright},
                              NamedHatch{"bar-level", Hatch::level},     NamedHatch{"bar-cross", Hatch::cross},
                              NamedHatch{"bar-dots", Hatch::dots},       NamedHatch{"bar-open", Hatch::open}};

/// A part of a bar that is filled, and where the bar begins, from which its lines are counted.
struct Field {
    Stretch across;
    Stretch down;
    double begin;
    double end;
};

void put_line(Frame& frame, Point from, Point to, const Origin& origin) {
    frame.put_rule({from, to, kLine, Ink::black}, origin);
}

/// The places from `first` on, one step apart, that lie before `end`.
std::vector<double> places(double first, double end, double step) {
    std::vector<double> all;
    const double count = std::max(0.0, std::ceil((end - first) / step));
    for (std::size_t at = 0; at < static_cast<std::size_t>(count); ++at)
        all.push_back(first + static_cast<double>(at) * step);
    return all;
}

/// How many lines, evenly apart, a field of this height takes.
std::size_t lines_in(double height) { return static_cast<std::size_t>(std::max(1.0, std::round(height / kPitch) - 1)); }

/// Lines at 45 degrees, cut off where the field ends. `rises`: from the lower left to the upper right.
void put_slanted(Frame& frame, const Field& field, bool rises, const Origin& origin) {
    const double height = field.down.width();
    const double step = kPitch * std::numbers::sqrt2;
    for (const double foot : places(field.begin - height + step / 2, field.end, step)) {
        // `along` runs from the left end of a line to its right end, both as far as its height.
        const double first = std::max(0.0, field.across.from - foot);
        const double last = std::min(height, field.across.to - foot);
        if (last - first < kLine) continue;
        const auto point = [&](double along) {
            return Point{foot + along, rises ? field.down.to - along : field.down.from + along};
        };
        put_line(frame, point(first), point(last), origin);
    }
}

void put_upright(Frame& frame, const Field& field, const Origin& origin) {
    for (const double x : places(field.begin + kPitch, field.across.to - kLine, kPitch))
        if (x > field.across.from + kLine) put_line(frame, {x, field.down.from}, {x, field.down.to}, origin);
}

void put_level(Frame& frame, const Field& field, const Origin& origin) {
    const std::size_t lines = lines_in(field.down.width());
    for (std::size_t line = 1; line <= lines; ++line) {
        const double y =
            field.down.from + field.down.width() * static_cast<double>(line) / static_cast<double>(lines + 1);
        put_line(frame, {field.across.from, y}, {field.across.to, y}, origin);
    }
}

void put_dots(Frame& frame, const Field& field, const Origin& origin) {
    const std::size_t rows = lines_in(field.down.width());
    for (std::size_t row = 1; row <= rows; ++row) {
        const double below = field.down.width() * static_cast<double>(row) / static_cast<double>(rows + 1);
        const double y = field.down.from + below - kDot / 2;
        const double shift = row % 2 == 1 ? kPitch / 2 : 0;
        for (const double x : places(field.begin + kPitch / 2 + shift, field.across.to - kDot, kPitch))
            if (x > field.across.from) frame.put_box({{x, y}, kDot, kDot, 0, true, Ink::black}, origin);
    }
}

void fill(Frame& frame, Hatch hatch, const Field& field, const Origin& origin) {
    switch (hatch) {
        case Hatch::solid:
            frame.put_box(
                {{field.across.from, field.down.from}, field.across.width(), field.down.width(), 0, true, Ink::black},
                origin);
            break;
        case Hatch::rising:
            put_slanted(frame, field, true, origin);
            break;
        case Hatch::falling:
            put_slanted(frame, field, false, origin);
            break;
        case Hatch::cross:
            put_slanted(frame, field, true, origin);
            put_slanted(frame, field, false, origin);
            break;
        case Hatch::upright:
            put_upright(frame, field, origin);
            break;
        case Hatch::level:
            put_level(frame, field, origin);
            break;
        case Hatch::dots:
            put_dots(frame, field, origin);
            break;
        case Hatch::open:
            break;
    }
}

void put_dashed_outline(Frame& frame, Stretch across, Stretch down, const Origin& origin) {
    put_dashed(frame, {across.from, down.from}, {across.to, down.from}, kBoldLine, origin);
    put_dashed(frame, {across.to, down.from}, {across.to, down.to}, kBoldLine, origin);
    put_dashed(frame, {across.from, down.to}, {across.to, down.to}, kBoldLine, origin);
    put_dashed(frame, {across.from, down.from}, {across.from, down.to}, kBoldLine, origin);
}

}  // namespace

std::optional<Hatch> hatch_named(std::string_view figure) {
    const auto found = std::ranges::find(kHatches, figure, &NamedHatch::figure);
    return found == kHatches.end() ? std::nullopt : std::optional{found->hatch};
}

std::vector<Stretch> without(Stretch all, std::vector<Stretch> taken) {
    std::ranges::sort(taken, {}, &Stretch::from);
    std::vector<Stretch> left;
    double at = all.from;
    for (const Stretch& one : taken) {
        if (one.to <= at) continue;
        if (one.from >= all.to) break;
        if (one.from > at) left.push_back({at, one.from});
        at = one.to;
    }
    if (at < all.to) left.push_back({at, all.to});
    return left;
}

void put_bar(Frame& frame, Hatch hatch, Stretch across, Stretch down, const std::vector<Stretch>& kept_free,
             const Origin& origin) {
    for (const Stretch& part : without(across, kept_free))
        fill(frame, hatch, {part, down, across.from, across.to}, origin);
    if (hatch == Hatch::solid) return;
    if (hatch == Hatch::open) return put_dashed_outline(frame, across, down, origin);
    frame.put_box({{across.from, down.from}, across.width(), down.width(), kBoldLine, false, Ink::black}, origin);
}

void put_dashed(Frame& frame, Point from, Point to, double stroke, const Origin& origin) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double dashes = std::max(1.0, std::round((length + kDashGap) / (kDash + kDashGap)));
    const double dash = (length + kDashGap) / dashes - kDashGap;
    const auto point = [&](double along) {
        const double share = length > 0 ? along / length : 0;
        return Point{std::lerp(from.x, to.x, share), std::lerp(from.y, to.y, share)};
    };
    for (const double at : places(0, length - kFitTolerance, dash + kDashGap))
        frame.put_rule({point(at), point(std::min(length, at + dash)), stroke, Ink::black}, origin);
}

}  // namespace ventfolio
