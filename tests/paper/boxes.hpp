#pragma once

#include <string>
#include <vector>

#include "packet/print_home_sheets.hpp"

namespace ventfolio::testing {

/// Letters of one size that touch each other on one line: where they stand, and what they belong to. A figure, digits
/// with their point, comma or hyphen, has a box of its own, as has every value.
struct TextBox {
    std::size_t page = 0;  ///< among all pages of the sheets
    Area area;             ///< of the letters, without blanks at their ends
    bool white = false;    ///< on black
    bool figure = false;
    std::string field;  ///< of a value; empty for words of the template
    struct DecimalPoint {
        Area dot;    ///< where its ink must be
        Area above;  ///< where none may be: a point stands alone
    };
    std::vector<DecimalPoint> points;
};

/// The boxes of sheets in reading order. Header and footer have theirs.
std::vector<TextBox> boxes_of(const std::vector<const PlacedSheet*>& sheets);

}  // namespace ventfolio::testing
