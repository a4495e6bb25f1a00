#pragma once

#include "layout/section.hpp"

namespace ventfolio {

/// The room that a chart finds: what is left of the page it begins on, a whole page after that, and what must stay free
/// on the last one for the sections that follow.
struct LadderRoom {
    double first = 0;
    double later = 0;
    double foot = 0;
    std::size_t page = 1;  ///< of the sheet, on which it begins
};

/// A section `.ladder`: a flowchart (see LadderPlan for how it is written), one piece for each side that it takes.
///
/// Yes goes down, the exit goes right; an exit that comes back joins the way in the gap below its step, so no arrow
/// crosses words or another arrow, and none goes up. What does not fit goes on overleaf, at the same letter in a
/// circle, below the first question and its box of steps, which stand there again; in large print, with the words of
/// `again` in place of the box. Where all fits with the foot, the last piece fills its room. On a sheet in two
/// languages whose box of steps finds no room on its side, the first question and the box have a side in each.
///
/// Options of the heading: `yes` is the word at the arrows down, `overleaf` stands beside the circle where the chart
/// goes on, `again` says where the box of steps is, each with that page for `{page}`. Class `.onward`: the steps stand
/// beside the box of the first question and lead to the section below; the box may go on in a second piece.
Pieces set_ladder(const Section& section, double width, const LadderRoom& room, LayoutContext& context);

}  // namespace ventfolio
