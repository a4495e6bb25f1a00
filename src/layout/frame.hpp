#pragma once

#include <string>
#include <utility>
#include <vector>

#include "layout/drawing.hpp"

namespace ventfolio {

/// A part of a page that is measured and drawn but not yet placed: its items count from its own top left corner.
struct Frame {
    double width = 0;
    double height = 0;
    std::vector<PlacedItem> items;

    /// Puts another frame into this one with its corner at (x, y). The size stays.
    void put(Frame other, double x, double y);
    void put_box(Box box, Origin origin = {});
    void put_rule(Rule rule, Origin origin = {});
    void put_path(Path path, Origin origin = {});
};

/// Moves an item by (x, y).
void move(PlacedItem& item, double x, double y);

/// A frame that may not be broken, within a section that may be broken between its pieces.
struct Piece {
    Frame frame;
    double gap = 0;               ///< above the piece, unless it stands first on its page
    bool keep_with_next = false;  ///< a heading, a table head
    bool repeats = false;         ///< set again at the head of the next page when the section goes on there
    std::string field;            ///< of the first value in it, for messages
    std::size_t line = 0;         ///< of the template
};
using Pieces = std::vector<Piece>;

double height_of(const Pieces& pieces);
/// All pieces below one another in one frame.
Frame stacked(Pieces pieces, double width);

}  // namespace ventfolio
