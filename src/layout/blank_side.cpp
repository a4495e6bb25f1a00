#include "layout/blank_side.hpp"

#include <stdexcept>

#include "layout/furniture.hpp"
#include "layout/layout_context.hpp"
#include "layout/type_sizes.hpp"

namespace ventfolio {

PlacedPage blank_side(std::string_view words, const PageSetup& setup, Measurer& measurer) {
    const Document no_sheet;
    std::vector<Finding> findings;
    LayoutContext context{measurer, findings, no_sheet, setup.scale, Origin::kFurniture};
    const PageBox box = page_box(setup.paper);
    TextStyle look = plain_style(kSmallestText * setup.scale);
    look.alignment = Alignment::center;
    Frame line = set_text(ventfolio::words(words), look, box.width, "blank side", context);
    if (!findings.empty()) throw std::logic_error{"a blank side cannot say so: " + findings.front().message};
    PlacedPage page;
    page.width = box.page_width;
    page.height = box.page_height;
    page.margin_left = box.left;
    page.margin_top = box.top;
    page.margin_right = box.page_width - box.left - box.width;
    page.margin_bottom = box.page_height - box.bottom;
    const double top = (box.top + box.bottom - line.height) / 2;
    for (PlacedItem& item : line.items) {
        move(item, box.left, top);
        page.items.push_back(std::move(item));
    }
    return page;
}

}  // namespace ventfolio
