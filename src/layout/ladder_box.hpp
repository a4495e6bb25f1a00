#pragma once

#include <vector>

#include "layout/frame.hpp"
#include "layout/ladder_plan.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// The words of all steps of a flowchart, in a symbol or in a box.
TextStyle ladder_style(double scale);

/// A box of steps, and what of it did not fit: boxes of their own with the same name.
struct StepsBox {
    Frame box;
    std::vector<Frame> rest;
};

/// How tall a box of steps may be where it begins, and on each page after that.
struct BoxRoom {
    double first = 0;
    double later = 0;
};

/// The heavy box of an exit: a black bar with its name, then its steps. Cut where it is taller than its room, if three
/// steps or more fit or no page holds it whole.
StepsBox set_steps_box(const LadderExit& exit, double width, const BoxRoom& room, LayoutContext& context);

}  // namespace ventfolio
