#include "layout/section_rows.hpp"

#include <algorithm>

#include "layout/measures.hpp"

namespace ventfolio {

PageStart page_start(const Section& section) {
    return section.has("page") ? PageStart::new_page : section.has("back") ? PageStart::back : PageStart::anywhere;
}

std::vector<std::vector<Section>> rows_of_sections(const std::vector<Section>& sections) {
    std::vector<std::vector<Section>> rows;
    std::size_t used = 0;
    for (const Section& section : sections) {
        const bool alone = section.is_chart() || (!rows.empty() && rows.back().back().is_chart());
        const bool may_join = !rows.empty() && !alone && page_start(section) == PageStart::anywhere;
        const bool half = section.has("half");
        const bool in_columns = may_join && half && rows.back().back().has("half");
        if (!in_columns && (!may_join || used + section.span() > kAllColumns)) {
            rows.emplace_back();
            used = 0;
        }
        rows.back().push_back(section);
        used += half ? kAllColumns : section.span();
    }
    return rows;
}

Piece side_by_side(const std::vector<Section>& sections, double width, LayoutContext& context) {
    const double room = width - kGutter * static_cast<double>(sections.size() - 1);
    std::size_t total = 0;
    for (const Section& section : sections) total += section.span();
    total = std::max(total, kAllColumns);
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
    return row;
}

}  // namespace ventfolio
