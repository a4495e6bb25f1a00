#pragma once

#include "layout/lay_out.hpp"

namespace ventfolio {

/// The live box of a page: the same on both papers, so that a sheet breaks alike on either.
struct PageBox {
    double page_width;
    double page_height;
    double left;
    double top;
    double width;
    double bottom;  ///< y of the lower end of the footer
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
