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
        case PlacedItem::Kind::picture:
            move(item.picture.corner, x, y);
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

void Frame::put_above(Frame other, double x, double bottom) {
    const double y = bottom - other.height;
    put(std::move(other), x, y);
}

void Frame::put_in_middle(Frame other, double x) {
    const double y = (height - other.height) / 2;
    put(std::move(other), x, y);
}

void Frame::append(Frame other, double x, double gap) {
    const double y = height + gap;
    height = y + other.height;
    put(std::move(other), x, y);
}

void Frame::put_box(Box box, Origin origin) {
    PlacedItem item = item_of(PlacedItem::Kind::box, std::move(origin));
    item.box = box;
    items.push_back(std::move(item));
}

void Frame::put_black_field(Origin origin) { put_box({{0, 0}, width, height, 0, true, Ink::black}, std::move(origin)); }

void Frame::put_outline(double stroke, Origin origin) {
    put_box({{stroke / 2, stroke / 2}, width - stroke, height - stroke, stroke, false, Ink::black}, std::move(origin));
}

void Frame::put_bottom_rule(double stroke, Ink ink, Origin origin) {
    put_rule({{0, height}, {width, height}, stroke, ink}, std::move(origin));
}

void Frame::put_column_rule(double x, double stroke) { put_rule({{x, 0}, {x, height}, stroke, Ink::black}); }

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

void Frame::put_picture(PlacedPicture picture, Origin origin) {
    PlacedItem item = item_of(PlacedItem::Kind::picture, std::move(origin));
    item.picture = std::move(picture);
    items.push_back(std::move(item));
}

double height_of(const Pieces& pieces) {
    double height = 0;
    for (const Piece& piece : pieces) height += (&piece == pieces.data() ? 0 : piece.gap) + piece.frame.height;
    return height;
}

double height_with_companions(const Pieces& pieces, std::size_t at) {
    if (at >= pieces.size()) return 0;
    double height = pieces[at].frame.height;
    while (pieces[at].keep_with_next && at + 1 < pieces.size()) {
        ++at;
        height += pieces[at].gap + pieces[at].frame.height;
    }
    return height;
}

std::string first_field(const Pieces& pieces) {
    const auto found = std::ranges::find_if(pieces, [](const Piece& piece) { return !piece.field.empty(); });
    return found == pieces.end() ? std::string{} : found->field;
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
