#pragma once

#include "layout/lay_out.hpp"

namespace ventfolio {

/// The live box of a page. A sheet breaks alike on both papers: what A4 is longer stays free above the footer.
struct PageBox {
    double page_width;
    double page_height;
    double left;
    double top;
    double width;
    double bottom;       ///< y of the lower end of the footer
    double body_bottom;  ///< the same on the shorter paper, which says how much a page holds
};
PageBox page_box(Paper paper, bool landscape = false);

/// Whether the front matter says `orientation: landscape`.
bool is_landscape(const Document& document);

/// Which page a header is for.
struct PageNumber {
    std::size_t page;   ///< counts from 1
    std::size_t pages;  ///< of the sheet
    bool poster;        ///< the name is read across the room
};

/// The header of a page. Its height does not depend on the numbers, as long as they have two digits or fewer.
Frame set_header(const Furniture& furniture, const Inlines& title, PageNumber number, double width,
                 LayoutContext& context);
/// The footer, the same on each page of a sheet.
Frame set_footer(const Furniture& furniture, double width, LayoutContext& context);

}  // namespace ventfolio
