#pragma once

#include <initializer_list>
#include <span>
#include <vector>

#include "layout/frame.hpp"

namespace ventfolio {

/// Draws in millimetres with one weight of line, onto a frame in points.
class HookupPen {
  public:
    enum class Fill { none, white, black };
    static constexpr double kLine = 0.6;

    HookupPen(Frame& frame, Origin origin) : frame_{frame}, origin_{std::move(origin)} {}

    void of(std::size_t element) { origin_.element = element; }

    void box(double left, double top, double width, double height, double radius, Fill fill = Fill::white);
    void circle(double x, double y, double radius, Fill fill = Fill::white);
    void disc(double x, double y, double radius, Ink ink);
    void line(Point from, Point to, double width = kLine);
    void polyline(std::span<const Point> points, double width = kLine, Ink ink = Ink::black);
    void polygon(std::initializer_list<Point> points, Fill fill = Fill::white);
    /// A line from corner to corner with rounded corners.
    void bent(std::span<const Point> corners, double radius, double width, Ink ink);
    /// A wave between two points, as of water or of a wire.
    void wave(Point from, Point to, double height, double pitch);

  private:
    void paint(Path path, Fill fill);

    Frame& frame_;
    Origin origin_;
};

/// The points of a line with rounded corners, a step apart.
std::vector<Point> points_along(std::span<const Point> corners, double radius, double step);

}  // namespace ventfolio
