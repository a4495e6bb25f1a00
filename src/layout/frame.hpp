#pragma once

#include <string>
#include <utility>
#include <vector>

#include "layout/drawing.hpp"

namespace ventfolio {

/// A part of a page that is measured and drawn but not yet placed: its items count from its own top left corner.
///
/// Whoever makes a frame sees to it that its items lie between (0, 0) and (width, height), half the width of a rule at
/// its edge excepted. What is placed by these sizes alone then neither overlaps nor leaves the page.
struct Frame {
    double width = 0;
    double height = 0;
    std::vector<PlacedItem> items;

    /// Puts another frame into this one with its corner at (x, y). The size stays.
    void put(Frame other, double x, double y);
    /// The same with the other's lower end at `bottom`.
    void put_above(Frame other, double x, double bottom);
    /// The same with the other half way down.
    void put_in_middle(Frame other, double x);
    /// Puts another frame below all that is there, and grows by the gap and its height.
    void append(Frame other, double x = 0, double gap = 0);
    void put_box(Box box, Origin origin = {});
    /// A black field over the whole frame, for white text. Comes first: what is put later lies on it.
    void put_black_field(Origin origin);
    /// A line round the whole frame, on its inner side.
    void put_outline(double stroke, Origin origin = {});
    /// A line along the frame's lower edge.
    void put_bottom_rule(double stroke, Ink ink = Ink::black, Origin origin = {});
    /// A line down the whole frame.
    void put_column_rule(double x, double stroke);
    void put_rule(Rule rule, Origin origin = {});
    void put_path(Path path, Origin origin = {});
    void put_picture(PlacedPicture picture, Origin origin);
};

/// Moves an item by (x, y).
void move(PlacedItem& item, double x, double y);

/// A frame that may not be broken, within a section that may be broken between its pieces. A piece taller than a page
/// is a finding.
struct Piece {
    Frame frame;
    double gap = 0;               ///< above the piece, unless it stands first on its page
    bool keep_with_next = false;  ///< a heading, a table head
    bool repeats = false;         ///< set again at the head of the next page when the
                                  ///< section goes on there
    std::size_t repeats_for = 0;  ///< how many pieces behind it; 0: all of the section
    std::string field;            ///< of the first value in it, for messages
    std::size_t line = 0;         ///< of the template
};
using Pieces = std::vector<Piece>;

/// With the gaps between them, without the one above the first.
double height_of(const Pieces& pieces);
/// The piece together with those that must follow it on the same page; 0 behind the last one.
double height_with_companions(const Pieces& pieces, std::size_t at);
/// The field of the first value in any of them; empty when there is none.
std::string first_field(const Pieces& pieces);
/// All pieces below one another in one frame.
Frame stacked(Pieces pieces, double width);

}  // namespace ventfolio
