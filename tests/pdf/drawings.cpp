#include "drawings.hpp"

#include <utility>

#include "layout/fonts.hpp"
#include "units/text.hpp"

namespace ventfolio::trial {

PlacedItem line(std::string_view utf8, double x, double y, double size, Face face, Ink ink) {
    PlacedItem item;
    item.kind = PlacedItem::Kind::text;
    item.text.origin = {x, y};
    item.text.size = size;
    item.text.face = face;
    item.text.ink = ink;
    item.text.text = code_points(utf8);
    const FontMetrics::Advance advance = FontMetrics::of(face).advance(item.text.text);
    item.text.kerns = advance.kerns;
    item.text.width = advance.width * size / 1000;
    return item;
}

PlacedItem without_kerns(PlacedItem text) {
    text.text.kerns.clear();
    return text;
}

PlacedItem box(double x, double y, double width, double height, double stroke, bool filled, Ink ink) {
    PlacedItem item;
    item.kind = PlacedItem::Kind::box;
    item.box = {{x, y}, width, height, stroke, filled, ink};
    return item;
}

PlacedItem rule(Point from, Point to, double stroke, Ink ink) {
    PlacedItem item;
    item.kind = PlacedItem::Kind::rule;
    item.rule = {from, to, stroke, ink};
    return item;
}

PlacedItem path(std::vector<Path::Segment> segments, double stroke, bool filled, Ink ink) {
    PlacedItem item;
    item.kind = PlacedItem::Kind::path;
    item.path = {std::move(segments), stroke, filled, ink};
    return item;
}

PlacedPage page(double width, double height, std::vector<PlacedItem> items) {
    PlacedPage page;
    page.width = width;
    page.height = height;
    page.items = std::move(items);
    return page;
}

PlacedSheet sheet(std::string title, std::vector<PlacedPage> pages) {
    PlacedSheet sheet;
    sheet.name = "trial";
    sheet.title = std::move(title);
    sheet.language = "en-US";
    sheet.pages = std::move(pages);
    return sheet;
}

std::string one_page(PlacedPage page) {
    const PlacedSheet placed = sheet("Trial", {std::move(page)});
    return write_pdf({.title = "Trial", .language = "en-US", .sheets = {{&placed, ""}}});
}

std::string sample() {
    using Kind = Path::Segment::Kind;
    const PlacedItem arrow = path({{Kind::move, {300, 300}, {}, {}},
                                   {Kind::line, {320, 310}, {}, {}},
                                   {Kind::curve, {320, 315}, {310, 320}, {300, 320}},
                                   {Kind::close, {}, {}, {}}},
                                  1.5, true);
    const PlacedSheet first =
        sheet("Bedside card",
              {page(612, 792,
                    {line("High pressure: 35\u00A0cmH2O", 72, 100, 24),
                     line("Tiếng Việt, Привет, Ελλάδα", 72, 140, 12.5, Face::bold), arrow,
                     box(72, 200, 100, 50, 0.75, false), rule({72, 260}, {300, 260}, 0.5)}),
               page(612, 792, {box(72, 72, 200, 40, 0, true), line("WARNING", 80, 100, 20, Face::bold, Ink::white)})});
    const PlacedSheet second = sheet("Outage plan", {page(595.28, 841.89, {line("To go: 3.5\u00A0h", 72, 100, 12)})});
    return write_pdf({.title = "Folder of one home",
                      .language = "en-US",
                      .sheets = {{&first, "Bedside card "}, {&second, "Outage plan "}}});
}

}  // namespace ventfolio::trial
