#pragma once

#include <optional>
#include <span>
#include <vector>

#include "layout/layout_context.hpp"

namespace ventfolio {

/// A flowchart as the template writes it: an ordered list that reads from the top down. A step with a list below it is
/// a question; the one item of that list says where "No" leads, after its label and a colon:
///
///     2. **Free of mucus sounds?**
///        - No: Suction to 11 cm.
///     3. ![Stop here](figure:end) Call the equipment provider.
///
/// An exit goes back to the line unless it opens with the figure `end` (stop here) or `chart` (go to that chart). An
/// exit with an ordered list of its own is a box of steps: the rescue steps beside the first question.
struct LadderWords {
    enum class Kind { question, action, end, chart, steps };
    Kind kind = Kind::action;
    Inlines words;  ///< without the figure that says the kind
    std::size_t line = 0;
    std::size_t number = kNoElement;  ///< element of the step's number
    std::size_t figure = kNoElement;  ///< element of the figure that says the kind

    /// The reader leaves the ladder here.
    bool ends() const { return kind == Kind::end || kind == Kind::chart || kind == Kind::steps; }
};

struct LadderExit {
    Inlines label;  ///< "No"
    LadderWords to;
    const Block* steps = nullptr;  ///< of a box of steps
};

struct LadderStep {
    LadderWords main;
    std::optional<LadderExit> exit;  ///< of a question
};

struct LadderPlan {
    std::vector<const Block*> before;  ///< paragraphs: when to use the chart, and what holds for all steps
    std::vector<LadderStep> steps;
    std::vector<const Block*> remarks;  ///< paragraphs after the steps
    const Block* legend = nullptr;      ///< a list after the steps
};

/// Reads a chart. Refuses what has no place in it: a question or action that leads nowhere, a step after an end, an
/// exit without a label, more than one exit. `onward`: the last step leads to what stands below the chart.
LadderPlan ladder_plan(std::span<const Block> blocks, bool onward, LayoutContext& context);

}  // namespace ventfolio
