#pragma once

#include "layout/figures/hookup_pen.hpp"
#include "layout/figures/hookup_plan.hpp"

/// Our own pictures of the parts of a hook-up, of no make: outlines of one weight, told apart by shape alone.
namespace ventfolio {

void draw_scenery(HookupPen& pen, const HookupScenery& scenery);
void draw_pipe(HookupPen& pen, const HookupPipe& pipe, const HookupPlan& plan);
/// `lying`: the way that the part at the person faces. Parts joined to a hose draw their own short ends.
void draw_piece(HookupPen& pen, const HookupPiece& piece, bool lying, double disc);

}  // namespace ventfolio
