#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// How far the facts of a line stand apart.
struct FactSpacing {
    double gap;
    double least_if_spread = 0;  ///< if all fit on one line this far apart, they
                                 ///< are spread over the width; 0: never
};

/// Short facts, the items of a list, one after the other in lines; a fact is broken only if it is wider than the line.
Frame set_facts(const Block& list, const TextStyle& look, FactSpacing spacing, double width, LayoutContext& context);

}  // namespace ventfolio
