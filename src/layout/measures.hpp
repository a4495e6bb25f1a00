#pragma once

#include <cmath>

/// Lengths of the house style. Everything in layout/ is in points; lengths that a person can check with a ruler are
/// written in millimetres.
namespace ventfolio {

/// Millimetres in points.
constexpr double mm(double millimetres) { return millimetres * 72.0 / 25.4; }

/// Coordinates stand on a grid of 1/100 pt, so that the same sheet gives the same numbers everywhere.
inline double snapped(double points) { return std::round(points * 100) / 100; }

/// Room for rounding when a thing is asked whether it fits.
inline constexpr double kFitTolerance = 0.05;

// Widths of lines. A fax (ITU-T T.30, fine) has dots of 0.125 mm: a line that means something is two dots wide or more.
// Width alone never carries meaning, since a fax adds or takes a dot at random.
inline constexpr double kHairline = mm(0.18);  ///< between rows; nothing is lost with it
inline constexpr double kThinLine = mm(0.25);  ///< between columns and rows, and to write on
inline constexpr double kBoxLine = mm(0.35);   ///< round a thin box, a sign or a check box
inline constexpr double kBoldLine = mm(0.5);   ///< below a heading
inline constexpr double kHeavyLine = mm(0.8);  ///< round what is to be acted on

/// Side of a box to tick; common practice, no source: a pen hits 5 mm without care.
inline constexpr double kTickBox = mm(5);

/// A value, a column or a fact keeps this distance from what stands to its left.
inline constexpr double kColumnGap = mm(3);
/// Between sections that stand side by side, and between columns of a list.
inline constexpr double kGutter = mm(8);
/// Between sections that stand below one another.
inline constexpr double kRowGap = mm(2.8);
/// Inside the sides of a box or a black bar.
inline constexpr double kBoxSide = mm(4);
/// The same in a column that shares the width.
inline constexpr double kNarrowBoxSide = mm(3);

}  // namespace ventfolio
