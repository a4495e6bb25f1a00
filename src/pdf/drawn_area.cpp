#include "pdf/drawn_area.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

DrawnArea area_between(Point corner, double width, double height, double around) {
    DrawnArea area;
    area.take_in(corner, around);
    area.take_in({corner.x + width, corner.y + height}, around);
    return area;
}

DrawnArea area_of(const Path& path) {
    DrawnArea area;
    const double around = path.stroke / 2;
    for (const Path::Segment& segment : path.segments) {
        if (segment.kind == Path::Segment::Kind::close) continue;
        area.take_in(segment.a, around);
        if (segment.kind != Path::Segment::Kind::curve) continue;
        area.take_in(segment.b, around);
        area.take_in(segment.c, around);
    }
    return area;
}

}  // namespace

void DrawnArea::take_in(const DrawnArea& other) {
    left = std::min(left, other.left);
    top = std::min(top, other.top);
    right = std::max(right, other.right);
    bottom = std::max(bottom, other.bottom);
}

void DrawnArea::take_in(Point point, double around) {
    take_in({point.x - around, point.y - around, point.x + around, point.y + around});
}

DrawnArea drawn_area(const PlacedItem& item) {
    switch (item.kind) {
        case PlacedItem::Kind::text: {
            const TextRun& run = item.text;
            return area_between({run.origin.x, run.origin.y - run.ascent}, run.width, run.ascent + run.descent, 0);
        }
        case PlacedItem::Kind::box:
            return area_between(item.box.corner, item.box.width, item.box.height, item.box.stroke / 2);
        case PlacedItem::Kind::rule: {
            DrawnArea area;
            area.take_in(item.rule.from, item.rule.stroke / 2);
            area.take_in(item.rule.to, item.rule.stroke / 2);
            return area;
        }
        case PlacedItem::Kind::path:
            return area_of(item.path);
        case PlacedItem::Kind::picture:
            return area_between(item.picture.corner, item.picture.width, item.picture.height, 0);
    }
    return {};
}

}  // namespace ventfolio
