#include "layout/lay_out.hpp"

#include <fmt/format.h>
#include <charconv>

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

void place_row(const std::vector<Section>& sections, Pager& pager, double width, LayoutContext& context) {
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
    const double width = page_box(setup.paper).width;
    const std::vector<Section> sections = sections_of(numbered.blocks);
    for (const std::vector<Section>& row : rows_of_sections(sections)) place_row(row, pager, width, context);
    PlacedSheet sheet = pager.finish();
    sheet.structure = std::move(structure);
    check_page_budget(numbered, pager, context);
    return sheet;
}

}  // namespace ventfolio
