#pragma once

#include <vector>

#include "layout/drawing.hpp"
#include "pdf/programs.hpp"

/// What becomes of a page in an office and a home.
namespace ventfolio::testing {

struct Copy {
    const char* name;
    double dots_across = 0;  ///< an inch
    double dots_down = 0;
    bool black_and_white = true;
    double scale = 1;  ///< 0.94: a printer fitted the page to its paper
};

/// Fine resolution of a fax machine, 8 by 7.7 dots a millimetre (ITU-T T.4; from memory).
inline constexpr Copy kFax{"fax", 204, 196};
inline constexpr Copy kGreyScan{"grey scan", 204, 196, false};
inline constexpr Copy kFitToPage{"fit to page", 204, 196, true, 0.94};
inline constexpr Copy kCopies[] = {kFax, kGreyScan, kFitToPage};

/// All pages of sheets in their order, as poppler draws them in the dots of the copy.
std::vector<trial::DrawnPage> copied(const std::vector<const PlacedSheet*>& sheets, const Copy& copy);

}  // namespace ventfolio::testing
