#include "layout/pager.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

constexpr double kBelowHeader = mm(3);
constexpr double kAboveFooter = mm(1.6);

/// Room that a page has over is shared among the gaps between rows, up to this much each, so that a page looks
/// composed.
constexpr double kMostSpread = mm(2.6);
/// A page with more of it free than this keeps its gaps: it would only look torn apart.
constexpr double kMostFreeToSpread = 0.18;

void put_items(PlacedPage& page, Frame frame, double x, double y) {
    for (PlacedItem& item : frame.items) {
        move(item, x, y);
        page.items.push_back(std::move(item));
    }
}

void snap(Point& point) { point = {snapped(point.x), snapped(point.y)}; }

void snap(PlacedItem& item) {
    snap(item.text.origin);
    snap(item.box.corner);
    item.box.width = snapped(item.box.width);
    item.box.height = snapped(item.box.height);
    snap(item.rule.from);
    snap(item.rule.to);
    snap(item.picture.corner);
    item.picture.width = snapped(item.picture.width);
    item.picture.height = snapped(item.picture.height);
    for (Path::Segment& segment : item.path.segments) {
        snap(segment.a);
        snap(segment.b);
        snap(segment.c);
    }
}

/// A piece that is set again: on paper only, since whoever hears the sheet has heard it.
Piece once_more(Piece piece) {
    for (PlacedItem& item : piece.frame.items) item.origin.element = Origin::kNoElement;
    return piece;
}

}  // namespace

Pager::Pager(const Document& document, const Furniture& furniture, Paper paper, LayoutContext& context)
    : document_{document},
      furniture_{furniture},
      context_{context},
      box_{page_box(paper, is_landscape(document))},
      poster_{document.front("header") == "poster"},
      footer_{set_footer(furniture, box_.width, context)} {}

void Pager::place(Row row) {
    if (row.start == PageStart::new_page && page_has_content()) next_page();
    if (row.start == PageStart::back && pages_.empty() && page_has_content()) next_page();
    const double page = body_height(pages_.size() + 1) + kFitTolerance;
    const bool holds_both = height_of(row.pieces) + row.below <= page;
    const double with_below = height_of(row.pieces) + (holds_both ? row.below : row.begin_below);
    const bool apart = row.below > 0 && kRowGap + with_below > room_left() + kFitTolerance;
    if (apart && page_has_content() && with_below <= page) next_page();
    const double gap = page_has_content() ? kRowGap : 0;
    if (fits(row.pieces, gap)) return put_all(std::move(row.pieces), gap);
    const bool whole = row.keep_together && height_of(row.pieces) <= body_height(pages_.size() + 1) + kFitTolerance;
    if (row.pieces.size() == 1 || whole || !room_for_start(row.pieces, gap)) {
        if (page_has_content()) next_page();
        if (fits(row.pieces, 0)) return put_all(std::move(row.pieces), 0);
    }
    put_broken(std::move(row.pieces));
}

std::size_t Pager::columns_that_fit(const ColumnItems& items, double gap) {
    std::size_t count = items.size();
    while (count > 1 && gap + best_split(items, count).height > room_left() + kFitTolerance) --count;
    return count;
}

void Pager::place_columns(ColumnItems items, double width, PageStart start) {
    // What fits is asked of the page on which the columns will stand.
    const bool break_first = start == PageStart::new_page || (start == PageStart::back && pages_.empty());
    if (break_first && page_has_content()) next_page();
    while (!items.empty()) {
        const bool goes_on = page_has_content() && start == PageStart::anywhere;
        const std::size_t count = columns_that_fit(items, goes_on ? kRowGap : 0);
        // One section alone at the foot of a page looks lost: the next page has room for it.
        if (count < std::min<std::size_t>(items.size(), 2) && goes_on) {
            next_page();
            continue;
        }
        place({{take_two_columns(items, count, width)}, start});
        start = PageStart::anywhere;
    }
}

void Pager::place_ladder(const Section& section, double width, double foot) {
    if (page_start(section) == PageStart::new_page && page_has_content()) next_page();
    const double gap = page_has_content() ? kRowGap : 0;
    const LadderRoom room{room_left() - gap, body_height(pages_.size() + 1), foot, pages_.size() + 1};
    Pieces sides = set_ladder(section, width, room, context_);
    if (sides.front().frame.height > room.first + kFitTolerance && page_has_content()) {
        next_page();
        const double page = body_height(pages_.size() + 1);
        sides = set_ladder(section, width, {room_left(), page, foot, pages_.size() + 1}, context_);
    }
    for (Piece& side : sides) {
        const bool first = &side == &sides.front();
        if (!first) next_page();
        const double above = page_has_content() ? kRowGap : 0;
        const double excess = above + side.frame.height - room_left();
        if (excess > kFitTolerance) report_too_tall(side, excess);
        put(std::move(side), above, true);
    }
}

PlacedSheet Pager::finish() {
    close_page();
    PlacedSheet sheet;
    sheet.name = document_.name;
    sheet.title = plain_text(document_.title);
    sheet.language = document_.language;
    for (std::size_t at = 0; at < pages_.size(); ++at) sheet.pages.push_back(finished_page(at));
    return sheet;
}

Pager::Overrun Pager::beyond(std::size_t pages) const {
    Overrun overrun;
    for (std::size_t at = pages; at < pages_.size(); ++at) {
        for (const Placed& placed : pages_[at].placed) {
            if (overrun.field.empty()) overrun.field = placed.field;
            overrun.height += placed.gap + placed.frame.height;
        }
    }
    return overrun;
}

double Pager::header_height(std::size_t page) {
    constexpr std::size_t kWidestNumber = 88;  // of two digits
    const bool first = page == 0;
    auto& height = first ? first_header_ : later_header_;
    if (!height)
        height = set_header(furniture_, document_.title, {kWidestNumber, kWidestNumber, poster_ && first}, box_.width,
                            context_)
                     .height;
    return *height;
}

double Pager::body_top(std::size_t page) { return box_.top + header_height(page) + kBelowHeader; }

double Pager::body_height(std::size_t page) {
    return box_.body_bottom - footer_.height - kAboveFooter - body_top(page);
}

bool Pager::fits(const Pieces& pieces, double gap) { return gap + height_of(pieces) <= room_left() + kFitTolerance; }

/// A broken section starts here only if its heading and two pieces after it fit.
bool Pager::room_for_start(const Pieces& pieces, double gap) {
    double height = gap;
    std::size_t content = 0;
    for (const Piece& piece : pieces) {
        height += (&piece == pieces.data() ? 0 : piece.gap) + piece.frame.height;
        if (!piece.keep_with_next && ++content == 2) break;
    }
    return height <= room_left() + kFitTolerance;
}

void Pager::put(Piece piece, double gap, bool row_start) {
    current_.used += gap + piece.frame.height;
    current_.placed.push_back({std::move(piece.frame), gap, row_start, std::move(piece.field)});
}

void Pager::put_all(Pieces pieces, double gap) {
    bool first = true;
    for (Piece& piece : pieces) {
        const double above = first ? gap : piece.gap;
        put(std::move(piece), above, first);
        first = false;
    }
}

void Pager::put_broken(Pieces pieces) {
    struct Repeated {
        Piece piece;
        std::size_t last;  ///< piece that it stands above
    };
    std::vector<Repeated> repeated;
    for (std::size_t at = 0; at < pieces.size(); ++at) {
        const bool first = at == 0;
        const double gap = !page_has_content() ? 0 : first ? kRowGap : pieces[at].gap;
        const double needed = height_with_companions(pieces, at);
        if (gap + needed > room_left() + kFitTolerance && page_has_content()) {
            next_page();
            for (const auto& [head, last] : repeated)
                if (at <= last) put(once_more(head), page_has_content() ? head.gap : 0, false);
        }
        const double own = pieces[at].frame.height;
        if (own > room_left() + kFitTolerance) report_too_tall(pieces[at], own - room_left());
        const std::size_t reach = pieces[at].repeats_for;
        if (pieces[at].repeats) repeated.push_back({pieces[at], reach > 0 ? at + reach : pieces.size()});
        put(std::move(pieces[at]), page_has_content() ? gap : 0, first);
    }
}

void Pager::report_too_tall(const Piece& piece, double excess) {
    const std::string about = piece.field.empty() ? "a part" : "the part with " + piece.field;
    context_.refuse("part-taller-than-page",
                    fmt::format("On {}, {} is {:.0f} mm taller than a whole page "
                                "and cannot be broken.",
                                document_.sheet, about, std::max(1.0, excess / mm(1))),
                    piece.line, piece.field);
}

void Pager::next_page() {
    close_page();
    current_ = {};
}

void Pager::close_page() {
    if (page_has_content() || pages_.empty()) pages_.push_back(std::move(current_));
}

/// How much each gap between rows grows.
double Pager::spread(const Page& page, double room) {
    const auto gaps = static_cast<double>(
        std::ranges::count_if(page.placed, [](const Placed& one) { return one.row_start && one.gap > 0; }));
    const double free = room - page.used;
    if (gaps == 0 || free >= kMostFreeToSpread * room) return 0;
    return std::clamp(free / gaps, 0.0, kMostSpread);
}

PlacedPage Pager::finished_page(std::size_t number) {
    Page& page = pages_[number];
    PlacedPage placed;
    placed.width = box_.page_width;
    placed.height = box_.page_height;
    placed.margin_left = box_.left;
    placed.margin_top = box_.top;
    placed.margin_right = box_.page_width - box_.left - box_.width;
    placed.margin_bottom = box_.page_height - box_.bottom;
    put_furniture(placed, number);
    const double growth = spread(page, body_height(number));
    double y = body_top(number);
    for (Placed& one : page.placed) {
        y += one.gap + (one.row_start && one.gap > 0 ? growth : 0);
        const double height = one.frame.height;
        put_items(placed, std::move(one.frame), box_.left, y);
        y += height;
    }
    for (PlacedItem& item : placed.items) snap(item);
    return placed;
}

void Pager::put_furniture(PlacedPage& placed, std::size_t number) {
    std::vector<Finding> known;  // its faults were reported when it was measured
    LayoutContext quiet{context_.measurer, known, document_, context_.scale, Origin::kFurniture};
    Frame header =
        set_header(furniture_, document_.title, {number + 1, pages_.size(), poster_ && number == 0}, box_.width, quiet);
    put_items(placed, std::move(header), box_.left, box_.top);
    put_items(placed, footer_, box_.left, box_.bottom - footer_.height);
    for (PlacedItem& item : placed.items) {
        item.origin.node = Origin::kFurniture;
        if (number > 0) item.origin.element = Origin::kNoElement;  // the title is heard once
    }
}

}  // namespace ventfolio
