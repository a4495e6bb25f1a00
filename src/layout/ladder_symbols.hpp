#pragma once

#include <optional>
#include <string_view>

#include "layout/ladder_plan.hpp"
#include "layout/measures.hpp"
#include "layout/rich_text.hpp"

/// The symbols of a flowchart (ISO 5807: decision, process, terminator, connector) and its arrows.
namespace ventfolio {

inline constexpr double kSymbolLine = mm(0.7);
inline constexpr double kEndLine = mm(1.0);  ///< round what ends a way
inline constexpr double kArrowLine = mm(0.6);
inline constexpr double kReturnLine = mm(0.5);

/// How far the point of a decision box reaches beyond its shoulders.
inline constexpr double kQuestionPoint = mm(5);
/// The same of the sign that sends to another chart, downwards.
inline constexpr double kChartPoint = mm(2.6);

/// The kind of this name: `question`, `action`, `end` or `chart`.
std::optional<LadderWords::Kind> ladder_kind(std::string_view name);

/// The outline of a kind over a whole frame, on its inner side.
void put_symbol(Frame& frame, LadderWords::Kind kind, const Origin& origin);
/// A decision as a diamond over a whole frame.
void put_diamond(Frame& frame, const Origin& origin);

/// A step's number in white: on a black diamond for a question, on a black square for an action. The frame is the
/// square round it.
Frame step_mark(std::size_t number, bool question, std::size_t element, LayoutContext& context);
double step_mark_side(const LayoutContext& context);

/// A letter in a circle: where a chart goes on, on another side.
Frame connector(std::size_t number, LayoutContext& context);
double connector_side(const LayoutContext& context);

/// A straight arrow along one axis; its tip is at `to`.
void put_arrow(Frame& frame, Point from, Point to, double stroke, const Origin& origin);

}  // namespace ventfolio
