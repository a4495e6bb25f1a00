#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "layout/frame.hpp"

/// Bars that are told apart without colour, after a photocopy and after a fax (204 x 196 dots an inch, 1 bit).
namespace ventfolio {

/// Lines stand 2 mm apart and are 0.35 mm wide: measured, seven fillings stay distinct on a fax, and finer ones run
/// into one another. They are drawn as lines cut off at the bar's edge; a fill pattern becomes a grey image.
enum class Hatch { solid, rising, falling, upright, level, cross, dots, open };

/// The hatch that a template's figure names: `bar-solid`, `bar-rising` …
std::optional<Hatch> hatch_named(std::string_view figure);

/// From left to right, in points.
struct Stretch {
    double from = 0;
    double to = 0;

    double width() const { return to - from; }
    bool holds(double at) const { return from < at && at < to; }
};

/// What is left of a stretch when others are taken out of it.
std::vector<Stretch> without(Stretch all, std::vector<Stretch> taken);

/// Draws a bar: its outline, and its filling in the parts that are not kept free. `open` has a dashed outline and no
/// filling; `solid` has no outline where it is kept free.
void put_bar(Frame& frame, Hatch hatch, Stretch across, Stretch down, const std::vector<Stretch>& kept_free,
             const Origin& origin);

/// A line in dashes, upright or level.
void put_dashed(Frame& frame, Point from, Point to, double stroke, const Origin& origin);

}  // namespace ventfolio
