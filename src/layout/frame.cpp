#include "layout/frame.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

void move(Point& point, double x, double y) {
    point.x += x;
    point.y += y;
}

PlacedItem item_of(PlacedItem::Kind kind, Origin origin) {
    PlacedItem item;
    item.kind = kind;
    item.origin = std::move(origin);
    return item;
}

}  // namespace

void move(PlacedItem& item, double x, double y) {
    switch (item.kind) {
        case PlacedItem::Kind::text:
            move(item.text.origin, x, y);
            break;
        case PlacedItem::Kind::box:
            move(item.box.corner, x, y);
            break;
        case PlacedItem::Kind::rule:
            move(item.rule.from, x, y);
            move(item.rule.to, x, y);
            break;
        case PlacedItem::Kind::path:
            for (Path::Segment& segment : item.path.segments) {
                move(segment.a, x, y);
                move(segment.b, x, y);
                move(segment.c, x, y);
            }
            break;
    }
}

void Frame::put(Frame other, double x, double y) {
    items.reserve(items.size() + other.items.size());
    for (PlacedItem& item : other.items) {
        move(item, x, y);
        items.push_back(std::move(item));
    }
}

void Frame::put_box(Box box, Origin origin) {
    PlacedItem item = item_of(PlacedItem::Kind::box, std::move(origin));
    item.box = box;
    items.push_back(std::move(item));
}

void Frame::put_rule(Rule rule, Origin origin) {
    PlacedItem item = item_of(PlacedItem::Kind::rule, std::move(origin));
    item.rule = rule;
    items.push_back(std::move(item));
}

void Frame::put_path(Path path, Origin origin) {
    PlacedItem item = item_of(PlacedItem::Kind::path, std::move(origin));
    item.path = std::move(path);
    items.push_back(std::move(item));
}

double height_of(const Pieces& pieces) {
    double height = 0;
    for (const Piece& piece : pieces) height += (&piece == pieces.data() ? 0 : piece.gap) + piece.frame.height;
    return height;
}

Frame stacked(Pieces pieces, double width) {
    Frame frame;
    frame.width = width;
    frame.height = height_of(pieces);
    double y = 0;
    for (Piece& piece : pieces) {
        if (&piece != pieces.data()) y += piece.gap;
        const double height = piece.frame.height;
        frame.put(std::move(piece.frame), 0, y);
        y += height;
    }
    return frame;
}

}  // namespace ventfolio
