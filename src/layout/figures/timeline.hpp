#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// How long each thing lasts, drawn to scale: a section `.timeline`. Each row of the table is a bar:
///
///     | Hours without power | | | |
///     |---|---|---|---|
///     | **1** Outside battery | 0 h 0 min | 6 h 15 min | ![A bar with rising lines](figure:bar-rising) To 6 h 15 min |
///     | | | | |
///     | Leave by 9 h 15 min | | 9 h 15 min | ![A heavy line](figure:mark-heavy) |
///
/// First cell: the name, bold words at its head on a tag. Second and third: from and to, an hour and a minute number
/// each, which are drawn, not set. Fourth: how it is drawn (see hatch_named), and words that stand in the bar or beside
/// it. `mark-heavy` and `mark-dashed` are lines down the chart under a flag with the row's name. An empty row is a rule
/// across; what stands below it does not lengthen the axis: a bar that goes on is cut off with an arrow.
///
/// The axis goes from 0 to the next even hour. Bars that have no place for their words have them under their name.
/// One piece: a chart is never broken.
Pieces set_timeline(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
