#include "layout/lay_out.hpp"

#include <fmt/format.h>
#include <charconv>
#include <span>

#include "layout/measures.hpp"
#include "layout/pager.hpp"
#include "layout/structure.hpp"

namespace ventfolio {
namespace {

/// Large print: every line is half as tall again, and holds two thirds of the letters.
constexpr std::size_t kPagesOfLargePrint = 3;

/// The pages that the front matter allows; 0: as many as it takes.
std::size_t page_budget(const Document& document) {
    const auto text = document.front("pages");
    std::size_t budget = 0;
    if (text) std::from_chars(text->data(), text->data() + text->size(), budget);
    return budget;
}

void check_page_budget(const Document& document, const Pager& pager, LayoutContext& context) {
    const std::size_t budget = page_budget(document) * (context.scale > 1 ? kPagesOfLargePrint : 1);
    if (budget == 0 || pager.page_count() <= budget) return;
    const auto [field, height] = pager.beyond(budget);
    context.refuse(
        "sheet-over-page-budget",
        fmt::format("{} needs {} pages and may have {}: from {} on, "
                    "{:.0f} mm do not fit.",
                    document.name, pager.page_count(), budget, field.empty() ? "the last part" : field, height / mm(1)),
        1, field);
}

void place_one_by_one(const std::vector<Section>& sections, Pager& pager, double width, LayoutContext& context) {
    for (const Section& section : sections) {
        const bool first = &section == &sections.front();
        pager.place({set_section(section, width, context), first ? page_start(section) : PageStart::anywhere,
                     section.keeps_together()});
    }
}

using Rows = std::span<const std::vector<Section>>;

/// Height of rows below one another, each with the gap above it. They are set again when they are placed.
double height_of(Rows rows, double width, const LayoutContext& context) {
    std::vector<Finding> reported_when_placed;
    LayoutContext quiet{context.measurer, reported_when_placed, context.document, context.scale, context.node};
    double height = 0;
    for (const std::vector<Section>& row : rows) {
        if (row.size() > 1 && !quiet.large_print()) {
            height += kRowGap + side_by_side(row, width, quiet).frame.height;
            continue;
        }
        for (const Section& section : row) height += kRowGap + height_of(set_section(section, width, quiet));
    }
    return height;
}

/// Of a row that is broken: its heading and what must stand with it.
double begin_height(const std::vector<Section>& row, double width, const LayoutContext& context) {
    std::vector<Finding> reported_when_placed;
    LayoutContext quiet{context.measurer, reported_when_placed, context.document, context.scale, context.node};
    return kRowGap + height_with_companions(set_section(row.front(), width, quiet), 0);
}

/// A chart leaves room for what follows it on the sheet: whom to call.
void place_ladder(const Section& section, Rows below, Pager& pager, double width, LayoutContext& context) {
    pager.place_ladder(section, width, height_of(below, width, context));
}

/// A strip that says nothing itself is the title of what follows it.
bool is_title(const std::vector<Section>& row) {
    return row.size() == 1 && row.front().has("strip") && row.front().blocks.empty();
}

void place_row(const std::vector<Section>& sections, Rows below, Pager& pager, double width, LayoutContext& context) {
    if (is_title(sections) && !below.empty() && !below.front().front().is_chart()) {
        const Section& title = sections.front();
        return pager.place({.pieces = set_section(title, width, context),
                            .start = page_start(title),
                            .below = height_of(below.first(1), width, context),
                            .begin_below = begin_height(below.front(), width, context)});
    }
    if (sections.size() == 1 || context.large_print()) return place_one_by_one(sections, pager, width, context);
    const PageStart start = page_start(sections.front());
    if (sections.front().has("half"))
        pager.place_columns(column_items(sections, width, context), width, start);
    else
        pager.place({{side_by_side(sections, width, context)}, start});
}

}  // namespace

PlacedSheet lay_out(const Document& document, const Furniture& furniture, const PageSetup& setup, Measurer& measurer,
                    std::vector<Finding>& findings) {
    const bool fixed_size = document.front("type_size") == "fixed";  // a card must fit its wallet in large print, too
    Document numbered = document;
    std::vector<StructureElement> structure = number_elements(numbered);
    LayoutContext context{measurer, findings, numbered, fixed_size ? 1 : setup.scale};
    Pager pager{numbered, furniture, setup.paper, context};
    const double width = page_box(setup.paper, is_landscape(document)).width;
    const std::vector<Section> sections = sections_of(numbered.blocks);
    const std::vector<std::vector<Section>> rows = rows_of_sections(sections);
    for (std::size_t at = 0; at < rows.size(); ++at) {
        if (rows[at].front().is_chart())
            place_ladder(rows[at].front(), Rows{rows}.subspan(at + 1), pager, width, context);
        else
            place_row(rows[at], Rows{rows}.subspan(at + 1), pager, width, context);
    }
    PlacedSheet sheet = pager.finish();
    sheet.structure = std::move(structure);
    check_page_budget(numbered, pager, context);
    return sheet;
}

}  // namespace ventfolio
