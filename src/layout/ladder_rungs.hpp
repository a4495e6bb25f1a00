#pragma once

#include <optional>
#include <vector>

#include "layout/frame.hpp"
#include "layout/ladder_box.hpp"
#include "layout/ladder_plan.hpp"
#include "layout/layout_context.hpp"
#include "layout/measures.hpp"

namespace ventfolio {

/// Places of a ladder across the page: the main column, the arrows to the right, the exits. Heights grow with the type,
/// these do not.
struct LadderColumns {
    double main = mm(92);        ///< width of the main column
    double exit_left = mm(106);  ///< what leaves to the right begins here
    double way = mm(46);         ///< x of every arrow down
    double first = mm(50);       ///< width of the first question, beside its box of steps
    double steps_left = mm(58.8);
};

/// A step and its exit, whole: number, symbols, words, the arrow to the right and its label.
struct Rung {
    Frame frame;
    std::size_t node = 0;  ///< of the step, in reading order
    bool question = false;
    bool ends = false;        ///< nothing leads on from the step
    bool exit_ends = false;   ///< nothing comes back from the exit
    double main_top = 0;      ///< where the step's own symbol begins: an arrow from above ends here
    double main_bottom = 0;   ///< and where one to below starts
    double return_x = 0;      ///< where an exit that comes back leaves its box
    double return_from = 0;   ///< and at which height; 0: nothing comes back
    std::vector<Frame> rest;  ///< of a box of steps that was cut
    std::string field;        ///< first value in it
    std::size_t line = 0;
};

/// Sets a step; `number` counts from 1. An end has none.
Rung set_rung(const LadderStep& step, std::size_t number, const LadderColumns& columns, double width,
              LayoutContext& context);

/// The first question with its box of steps at the right, over the whole width. With `beside`, further steps stand
/// below the question, as far as the box reaches, and the box is cut where it is taller than `room`. `columns.way` is
/// where the way leads on.
Rung set_first_rung(const std::vector<LadderStep>& steps, bool beside, std::string_view yes,
                    const LadderColumns& columns, double width, const BoxRoom& room, LayoutContext& context);

/// "Yes" at an arrow down that begins at `top` and is `length` long.
void put_way_label(Frame& frame, std::string_view label, std::size_t node, double way, double top, double length,
                   LayoutContext& context);

/// Room that an arrow down needs.
double least_ladder_gap(const LayoutContext& context);
/// Room that it takes where there is enough.
double best_ladder_gap(const LayoutContext& context);

}  // namespace ventfolio
