#include "misplaced.hpp"

#include <algorithm>
#include <vector>

#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

/// Coordinates are snapped to 1/100 pt, and a run is as wide as the sum of its letters.
constexpr double kTolerance = 0.06;

struct Area {
    double left, top, right, bottom;
};

Area area_of(const TextRun& run) {
    return {run.origin.x, run.origin.y - run.ascent, run.origin.x + run.width, run.origin.y + run.descent};
}

bool within(const Area& one, const Area& other) {
    return one.left >= other.left - kTolerance && one.right <= other.right + kTolerance &&
           one.top >= other.top - kTolerance && one.bottom <= other.bottom + kTolerance;
}

bool overlap(const Area& one, const Area& other) {
    constexpr double kSeen = 0.3;
    return std::min(one.right, other.right) - std::max(one.left, other.left) > kSeen &&
           std::min(one.bottom, other.bottom) - std::max(one.top, other.top) > kSeen;
}

std::string text_of(const TextRun& run) {
    std::string text;
    for (const char32_t letter : run.text) text += utf8(letter);
    return text;
}

std::string misplaced_text(const PlacedPage& page) {
    const Area live{page.margin_left, page.margin_top, page.width - page.margin_right,
                    page.height - page.margin_bottom};
    std::vector<const TextRun*> seen;
    for (const PlacedItem& item : page.items) {
        if (item.kind != PlacedItem::Kind::text) continue;
        const Area area = area_of(item.text);
        if (!within(area, live)) return text_of(item.text) + " leaves the margins";
        for (const TextRun* other : seen)
            if (overlap(area, area_of(*other))) return text_of(item.text) + " lies over " + text_of(*other);
        seen.push_back(&item.text);
    }
    return {};
}

std::string beside_paper(const PlacedPage& page) {
    const Area paper{0, 0, page.width, page.height};
    const auto at = [](const Point& point) { return Area{point.x, point.y, point.x, point.y}; };
    for (const PlacedItem& item : page.items) {
        const Point& corner = item.box.corner;
        if (item.kind == PlacedItem::Kind::box &&
            !within({corner.x, corner.y, corner.x + item.box.width, corner.y + item.box.height}, paper))
            return "a box leaves the paper";
        if (item.kind == PlacedItem::Kind::rule &&
            (!within(at(item.rule.from), paper) || !within(at(item.rule.to), paper)))
            return "a line leaves the paper";
        const PlacedPicture& picture = item.picture;
        if (item.kind == PlacedItem::Kind::picture &&
            !within({picture.corner.x, picture.corner.y, picture.corner.x + picture.width,
                     picture.corner.y + picture.height},
                    paper))
            return "a picture leaves the paper";
        if (item.kind != PlacedItem::Kind::path) continue;
        for (const Path::Segment& segment : item.path.segments)
            if (segment.kind != Path::Segment::Kind::close && !within(at(segment.a), paper))
                return "a path leaves the paper";
    }
    return {};
}

}  // namespace

std::string misplaced(const PlacedSheet& sheet) {
    for (const PlacedPage& page : sheet.pages) {
        if (std::string fault = misplaced_text(page); !fault.empty()) return fault;
        if (std::string fault = beside_paper(page); !fault.empty()) return fault;
    }
    return {};
}

}  // namespace ventfolio::testing
