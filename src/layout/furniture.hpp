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
PageBox page_box(Paper paper);

/// Header and footer of a page, set to the live box. `poster` is the header of a sheet whose name is read across the
/// room.
struct SetFurniture {
    Frame header;
    Frame footer;
};
SetFurniture set_furniture(const Furniture& furniture, const Inlines& title, std::size_t page, std::size_t pages,
                           bool poster, double width, LayoutContext& context);

}  // namespace ventfolio
