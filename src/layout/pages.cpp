#include <fmt/format.h>
#include <algorithm>
#include <charconv>

#include "layout/furniture.hpp"
#include "layout/lay_out.hpp"
#include "layout/measures.hpp"
#include "layout/section.hpp"

namespace ventfolio {
namespace {

constexpr double kRowGap = mm(2.8);
constexpr double kGutter = mm(8);
/// Room that a page has over is shared among its gaps, up to this much each, so that a page looks composed.
constexpr double kMostSpread = mm(2.6);

/// Sections that stand side by side; a single one may be broken over pages.
enum class PageStart {
    anywhere,
    back,      ///< `.back`: on the second page, or wherever the text is if it is beyond the first
    new_page,  ///< `.page`
};

struct Row {
    Pieces pieces;
    PageStart start = PageStart::anywhere;
    bool keep_together = false;
};

PageStart page_start(const Section& section) {
    return section.has("page") ? PageStart::new_page : section.has("back") ? PageStart::back : PageStart::anywhere;
}

/// Sections that share the width: side by side by their spans, or `.half` ones that fill two columns in order.
std::vector<std::vector<Section>> rows_of_sections(const std::vector<Section>& sections) {
    std::vector<std::vector<Section>> rows;
    std::size_t used = 0;
    for (const Section& section : sections) {
        const bool goes_on = !rows.empty() && rows.back().back().has("half") && section.has("half");
        if (goes_on && page_start(section) == PageStart::anywhere) {
            rows.back().push_back(section);
            continue;
        }
        if (rows.empty() || used + section.span() > 12 || page_start(section) != PageStart::anywhere) {
            rows.emplace_back();
            used = 0;
        }
        rows.back().push_back(section);
        used += section.has("half") ? 12 : section.span();
    }
    return rows;
}

/// A section that has been set, waiting for its column.
struct ColumnItem {
    Frame frame;
    std::string field;
    std::size_t line = 0;
};

double column_height(const std::vector<ColumnItem>& items, std::size_t from, std::size_t to) {
    double height = 0;
    for (std::size_t at = from; at < to; ++at) height += (at == from ? 0 : kRowGap) + items[at].frame.height;
    return height;
}

/// How many of the first `count` items go into the left column, so that both columns are of like height.
std::size_t best_split(const std::vector<ColumnItem>& items, std::size_t count) {
    std::size_t best = (count + 1) / 2;
    double lowest = mm(100000);
    for (std::size_t split = 1; split <= count; ++split) {
        const double height = std::max(column_height(items, 0, split), column_height(items, split, count));
        if (height < lowest - kFitTolerance) {
            lowest = height;
            best = split;
        }
    }
    return best;
}

/// The first `count` items in two columns, taken out of the list.
Piece two_columns(std::vector<ColumnItem>& items, std::size_t count, double width) {
    const double column = (width - kGutter) / 2;
    const std::size_t split = best_split(items, count);
    Piece piece;
    piece.frame.width = width;
    piece.field = items.front().field;
    piece.line = items.front().line;
    piece.frame.height = std::max(column_height(items, 0, split), column_height(items, split, count));
    double y = 0;
    for (std::size_t at = 0; at < count; ++at) {
        if (at == split) y = 0;
        const double height = items[at].frame.height;
        piece.frame.put(std::move(items[at].frame), at < split ? 0 : column + kGutter, y);
        y += height + kRowGap;
    }
    items.erase(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(count));
    return piece;
}

Pieces side_by_side(const std::vector<Section>& sections, double width, LayoutContext& context) {
    const double room = width - kGutter * static_cast<double>(sections.size() - 1);
    std::size_t total = 0;
    for (const Section& section : sections) total += section.span();
    total = std::max<std::size_t>(total, 12);
    Piece row;
    row.frame.width = width;
    double x = 0;
    for (const Section& section : sections) {
        const double column = room * static_cast<double>(section.span()) / static_cast<double>(total);
        Pieces pieces = set_section(section, column, context);
        if (row.field.empty() && !pieces.empty()) row.field = pieces.back().field;
        if (row.line == 0 && !pieces.empty()) row.line = pieces.front().line;
        Frame frame = stacked(std::move(pieces), column);
        row.frame.height = std::max(row.frame.height, frame.height);
        row.frame.put(std::move(frame), x, 0);
        x += column + kGutter;
    }
    return {std::move(row)};
}

std::vector<ColumnItem> column_items(const std::vector<Section>& sections, double width, LayoutContext& context) {
    std::vector<ColumnItem> items;
    for (const Section& section : sections) {
        Pieces pieces = set_section(section, width, context);
        ColumnItem item;
        for (const Piece& piece : pieces)
            if (item.field.empty()) item.field = piece.field;
        item.line = pieces.empty() ? 0 : pieces.front().line;
        item.frame = stacked(std::move(pieces), width);
        items.push_back(std::move(item));
    }
    return items;
}

class Pager {
  public:
    Pager(const Document& document, const Furniture& furniture, const PageSetup& setup, LayoutContext& context)
        : document_{document}, furniture_{furniture}, context_{context}, box_{page_box(setup.paper)} {
        poster_ = document.front("header") == "poster";
    }

    void place(Row row) {
        if (row.start == PageStart::new_page && page_has_content()) next_page();
        if (row.start == PageStart::back && pages_.empty() && page_has_content()) next_page();
        const double gap = page_has_content() ? kRowGap : 0;
        if (fits(row.pieces, gap)) return put_all(std::move(row.pieces), gap);
        const bool whole = row.keep_together && height_of(row.pieces) <= body_height(pages_.size() + 1) + kFitTolerance;
        if (row.pieces.size() == 1 || whole || !room_for_start(row.pieces, gap)) {
            if (page_has_content()) next_page();
            if (fits(row.pieces, 0)) return put_all(std::move(row.pieces), 0);
        }
        put_broken(std::move(row.pieces));
    }

    /// Fills two columns; what does not fit goes on in two columns on the next page.
    void place_columns(std::vector<ColumnItem> items, double width, PageStart start) {
        while (!items.empty()) {
            const double gap = page_has_content() && start == PageStart::anywhere ? kRowGap : 0;
            std::size_t count = items.size();
            const auto height = [&] {
                const std::size_t split = best_split(items, count);
                return std::max(column_height(items, 0, split), column_height(items, split, count));
            };
            while (count > 1 && gap + height() > left() + kFitTolerance) --count;
            // One section alone at the foot of a page looks lost: the next page has room for it.
            if (count < std::min<std::size_t>(items.size(), 2) && page_has_content() && start == PageStart::anywhere) {
                next_page();
                continue;
            }
            place({{two_columns(items, count, width)}, start});
            start = PageStart::anywhere;
        }
    }

    PlacedSheet finish() {
        close_page();
        PlacedSheet sheet;
        sheet.name = document_.name;
        sheet.title = plain_text(document_.title);
        sheet.language = document_.language;
        for (std::size_t at = 0; at < pages_.size(); ++at) sheet.pages.push_back(finished_page(at));
        return sheet;
    }
    std::size_t page_count() const { return pages_.size(); }
    /// First field beyond a page and how much stands there, for the message about the page budget.
    std::pair<std::string, double> beyond(std::size_t page) const {
        double height = 0;
        std::string field;
        for (std::size_t at = page; at < pages_.size(); ++at) {
            for (const Placed& placed : pages_[at].placed) {
                if (field.empty()) field = placed.field;
                height += placed.gap + placed.frame.height;
            }
        }
        return {field, height};
    }

  private:
    struct Placed {
        Frame frame;
        double gap = 0;
        bool row_start = false;  ///< its gap may grow
        std::string field;
    };
    struct Page {
        std::vector<Placed> placed;
        double used = 0;
    };

    bool page_has_content() const { return !current_.placed.empty(); }

    const SetFurniture& furniture_of(std::size_t page) {
        // Heights depend only on whether it is the first page; "Page 88 of 88" measures the widest numbers.
        auto& set = page == 0 ? first_ : later_;
        if (!set) set = set_furniture(furniture_, document_.title, 88, 88, poster_ && page == 0, box_.width, context_);
        return *set;
    }

    double body_top(std::size_t page) {
        const double header = furniture_of(page).header.height;
        return box_.top + header + mm(3);
    }
    double body_height(std::size_t page) {
        return box_.body_bottom - furniture_of(page).footer.height - mm(1.6) - body_top(page);
    }
    double left() { return body_height(pages_.size()) - current_.used; }

    bool fits(const Pieces& pieces, double gap) { return gap + height_of(pieces) <= left() + kFitTolerance; }

    /// A broken section starts here only if its heading and two pieces after it fit.
    bool room_for_start(const Pieces& pieces, double gap) {
        double height = gap;
        std::size_t content = 0;
        for (const Piece& piece : pieces) {
            height += (&piece == pieces.data() ? 0 : piece.gap) + piece.frame.height;
            if (!piece.keep_with_next && ++content == 2) break;
        }
        return height <= left() + kFitTolerance;
    }

    void put(Piece piece, double gap, bool row_start) {
        current_.used += gap + piece.frame.height;
        current_.placed.push_back({std::move(piece.frame), gap, row_start, std::move(piece.field)});
    }

    void put_all(Pieces pieces, double gap) {
        bool first = true;
        for (Piece& piece : pieces) {
            const double above = first ? gap : piece.gap;
            put(std::move(piece), above, first);
            first = false;
        }
    }

    /// The piece together with those that must follow it on the same page.
    static double height_with_companions(const Pieces& pieces, std::size_t at) {
        double height = pieces[at].frame.height;
        while (pieces[at].keep_with_next && at + 1 < pieces.size()) {
            ++at;
            height += pieces[at].gap + pieces[at].frame.height;
        }
        return height;
    }

    void put_broken(Pieces pieces) {
        Pieces repeated;
        bool first = true;
        for (std::size_t at = 0; at < pieces.size(); ++at) {
            const double gap = !page_has_content() ? 0 : first ? kRowGap : pieces[at].gap;
            const double needed = height_with_companions(pieces, at);
            if (gap + needed > left() + kFitTolerance && page_has_content()) {
                next_page();
                for (const Piece& head : repeated) put(head, page_has_content() ? head.gap : 0, false);
            }
            if (needed > left() + kFitTolerance) report_too_tall(pieces[at], needed - left());
            if (pieces[at].repeats) repeated.push_back(pieces[at]);
            const double above = page_has_content() ? gap : 0;
            put(std::move(pieces[at]), above, first);
            first = false;
        }
    }

    void report_too_tall(const Piece& piece, double excess) {
        const std::string about = piece.field.empty() ? "a part" : "the part with " + piece.field;
        context_.refuse("part-taller-than-page",
                        fmt::format("On {}, {} is {:.0f} mm taller than a whole page and cannot be broken.",
                                    document_.sheet, about, std::max(1.0, excess / mm(1))),
                        piece.line, piece.field);
    }

    void next_page() {
        close_page();
        current_ = {};
    }
    void close_page() {
        if (page_has_content() || pages_.empty()) pages_.push_back(std::move(current_));
    }

    PlacedPage finished_page(std::size_t number) {
        Page& page = pages_[number];
        PlacedPage placed;
        placed.width = box_.page_width;
        placed.height = box_.page_height;
        placed.margin_left = box_.left;
        placed.margin_top = box_.top;
        placed.margin_right = box_.page_width - box_.left - box_.width;
        placed.margin_bottom = box_.page_height - box_.bottom;
        put_furniture(placed, number);
        const auto gaps = static_cast<double>(
            std::ranges::count_if(page.placed, [](const Placed& one) { return one.row_start && one.gap > 0; }));
        const double spare = body_height(number) - page.used;
        const bool full_enough = spare < 0.18 * body_height(number);
        const double spread = gaps > 0 && full_enough ? std::clamp(spare / gaps, 0.0, kMostSpread) : 0;
        double y = body_top(number);
        for (Placed& one : page.placed) {
            y += one.gap + (one.row_start && one.gap > 0 ? spread : 0);
            for (PlacedItem& item : one.frame.items) {
                move(item, box_.left, y);
                placed.items.push_back(std::move(item));
            }
            y += one.frame.height;
        }
        for (PlacedItem& item : placed.items) snap(item);
        return placed;
    }

    void put_furniture(PlacedPage& placed, std::size_t number) {
        std::vector<Finding> known;  // its faults were reported when it was measured
        LayoutContext quiet{context_.measurer, known, document_, context_.scale, Origin::kFurniture};
        SetFurniture set = set_furniture(furniture_, document_.title, number + 1, pages_.size(), poster_ && number == 0,
                                         box_.width, quiet);
        for (PlacedItem& item : set.header.items) {
            move(item, box_.left, box_.top);
            placed.items.push_back(std::move(item));
        }
        for (PlacedItem& item : set.footer.items) {
            move(item, box_.left, box_.bottom - set.footer.height);
            placed.items.push_back(std::move(item));
        }
        for (PlacedItem& item : placed.items) item.origin.node = Origin::kFurniture;
    }

    static void snap(Point& point) { point = {snapped(point.x), snapped(point.y)}; }
    static void snap(PlacedItem& item) {
        snap(item.text.origin);
        snap(item.box.corner);
        item.box.width = snapped(item.box.width);
        item.box.height = snapped(item.box.height);
        snap(item.rule.from);
        snap(item.rule.to);
        for (Path::Segment& segment : item.path.segments) {
            snap(segment.a);
            snap(segment.b);
            snap(segment.c);
        }
    }

    const Document& document_;
    const Furniture& furniture_;
    LayoutContext& context_;
    PageBox box_;
    bool poster_ = false;
    std::optional<SetFurniture> first_;
    std::optional<SetFurniture> later_;
    std::vector<Page> pages_;
    Page current_;
};

void check_page_budget(const Document& document, const Pager& pager, LayoutContext& context) {
    const auto text = document.front("pages");
    std::size_t budget = 0;
    if (text) std::from_chars(text->data(), text->data() + text->size(), budget);
    if (budget == 0) return;
    if (context.scale > 1) budget *= 3;  // large print: every line half as tall again, and half as long
    if (pager.page_count() <= budget) return;
    const auto [field, height] = pager.beyond(budget);
    context.refuse("sheet-over-page-budget",
                   fmt::format("{} needs {} pages and may have {}: from {} on, {:.0f} mm do not fit.", document.name,
                               pager.page_count(), budget, field.empty() ? "the last part" : field, height / mm(1)),
                   1, field);
}

}  // namespace

PlacedSheet lay_out(const Document& document, const Furniture& furniture, const PageSetup& setup, Measurer& measurer,
                    std::vector<Finding>& findings) {
    LayoutContext context{measurer, findings, document, setup.scale, 0};
    Pager pager{document, furniture, setup, context};
    const double width = page_box(setup.paper).width;
    const std::vector<Section> sections = sections_of(document.blocks);
    for (const std::vector<Section>& row : rows_of_sections(sections)) {
        const PageStart start = page_start(row.front());
        if (row.size() > 1 && row.front().has("half") && setup.scale <= 1.2) {
            pager.place_columns(column_items(row, (width - kGutter) / 2, context), width, start);
            continue;
        }
        // Large print has one column: sections that stood side by side follow one another.
        if (setup.scale > 1.2 || row.size() == 1) {
            bool first = true;
            for (const Section& section : row) {
                pager.place({set_section(section, width, context), first ? start : PageStart::anywhere,
                             section.keeps_together()});
                first = false;
            }
        } else {
            pager.place({side_by_side(row, width, context), start});
        }
    }
    PlacedSheet sheet = pager.finish();
    check_page_budget(document, pager, context);
    return sheet;
}

}  // namespace ventfolio
