#pragma once

#include "layout/frame.hpp"
#include "layout/ladder_plan.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// The words of all steps of a flowchart, in a symbol or in a box.
TextStyle ladder_style(double scale);

/// A box of steps, and what of it did not fit: a box of its own with the same name. No height: nothing.
struct StepsBox {
    Frame box;
    Frame rest;
};

/// The heavy box of an exit: a black bar with its name, then its steps. Cut where it is taller than `room`, if three
/// steps or more fit.
StepsBox set_steps_box(const LadderExit& exit, double width, double room, LayoutContext& context);

}  // namespace ventfolio
