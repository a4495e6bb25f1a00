#pragma once

#include <limits>

#include "layout/drawing.hpp"

namespace ventfolio {

/// What something covers on its page, in points from the top left corner. A new one covers nothing.
struct DrawnArea {
    double left = std::numeric_limits<double>::max();
    double top = std::numeric_limits<double>::max();
    double right = std::numeric_limits<double>::lowest();
    double bottom = std::numeric_limits<double>::lowest();

    void take_in(const DrawnArea& other);
    /// A point with so much around it.
    void take_in(Point point, double around = 0);
};

/// The area of an item, strokes included. A curve counts with its control points, between which it stays.
DrawnArea drawn_area(const PlacedItem& item);

}  // namespace ventfolio
