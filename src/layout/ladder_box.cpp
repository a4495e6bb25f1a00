#include "layout/ladder_box.hpp"

#include <algorithm>
#include <span>
#include <string>
#include <vector>

#include "layout/blocks.hpp"
#include "layout/headings.hpp"
#include "layout/ladder_symbols.hpp"

namespace ventfolio {
namespace {

constexpr double kSide = mm(3.2);
constexpr double kBelowBar = mm(2.4);
constexpr double kBetween = mm(1.8);
constexpr double kBottom = mm(2.4);

/// A black square with a number, smaller than a rung's: the steps of the box.
Frame small_number(std::size_t number, std::size_t element, LayoutContext& context) {
    const double side = mm(6) * std::min(context.scale, 1.35);
    TextStyle look = plain_style(12 * std::min(context.scale, 1.35), Face::bold);
    look.ink = Ink::white;
    look.leading = 1;
    look.alignment = Alignment::center;
    Frame text = set_text(words(std::to_string(number), element), look, side, "step number", context);
    Frame frame;
    frame.width = frame.height = side;
    frame.put_black_field({context.node, "step", {}});
    const double top = top_with_capitals_in_middle(text, side);
    frame.put(std::move(text), 0, top);
    return frame;
}

Frame step_of_box(const Block& item, std::size_t number, double width, LayoutContext& context) {
    ++context.node;
    if (item.children.size() > 1 || (!item.children.empty() && item.children.front().kind == Block::Kind::list))
        context.refuse_unprinted("what follows the words of a step", item.line);
    Frame mark = small_number(number, item.element, context);
    const TextStyle look = ladder_style(context.scale);
    const double indent = mark.width + mm(2.6);
    Frame text = set_text(inlines_of(item), look, width - indent, "step", context);
    const double drop = top_with_capitals_in_middle(text, mark.height);
    Frame frame;
    frame.width = width;
    frame.height = std::max(mark.height, drop + text.height);
    frame.put(std::move(mark), 0, 0);
    frame.put(std::move(text), indent, drop);
    return frame;
}

/// White on black: the name of the box at the left, the rest of its words small at the right.
Frame set_bar(const LadderExit& exit, double width, LayoutContext& context) {
    constexpr double kPad = mm(1.1);
    constexpr double kDrop = mm(0.5);  // brings the words to the middle of what the outline leaves of the bar
    HeadingLook look{plain_style(16 * context.scale, Face::bold), plain_style(11 * context.scale, Face::bold)};
    look.heading.ink = look.aside.ink = Ink::white;
    look.heading.leading = look.aside.leading = 1.15;
    const auto [name, aside] = split_after_strong(exit.to.words);
    Frame words = set_heading(name, aside, look, width - 2 * kSide, context);
    Frame bar;
    bar.width = width;
    bar.height = words.height + 2 * kPad;
    bar.put_black_field({context.node, "steps", {}});
    bar.put(std::move(words), kSide, kPad + kDrop);
    return bar;
}

Frame boxed(Frame bar, std::span<Frame> steps, std::size_t node) {
    Frame box = std::move(bar);
    for (Frame& step : steps) {
        const double gap = &step == &steps.front() ? kBelowBar : kBetween;
        box.append(std::move(step), kSide, gap);
    }
    box.height += kBottom;
    box.put_outline(kEndLine, {node, "steps", {}});
    return box;
}

/// How many steps a box of this height holds.
std::size_t steps_that_fit(std::span<const Frame> steps, double bar, double room) {
    double height = bar + kBelowBar - kBetween + kBottom;
    std::size_t count = 0;
    while (count < steps.size() && height + kBetween + steps[count].height <= room + kFitTolerance)
        height += kBetween + steps[count++].height;
    return count;
}

/// Takes the first of what is left: one at least.
std::span<Frame> take(std::span<Frame>& left, std::size_t count) {
    const std::span<Frame> taken = left.first(std::min(std::max<std::size_t>(count, 1), left.size()));
    left = left.subspan(taken.size());
    return taken;
}

}  // namespace

TextStyle ladder_style(double scale) {
    TextStyle look = plain_style(14 * scale);
    look.leading = 1.144;
    return look;
}

StepsBox set_steps_box(const LadderExit& exit, double width, const BoxRoom& room, LayoutContext& context) {
    constexpr std::size_t kLeast = 3;
    const std::size_t node = ++context.node;
    Frame bar = set_bar(exit, width, context);
    std::vector<Frame> steps;
    for (const Block& item : exit.steps->children)
        steps.push_back(step_of_box(item, steps.size() + 1, width - 2 * kSide, context));
    const bool whole_on_a_page = steps_that_fit(steps, bar.height, std::max(room.first, room.later)) == steps.size();
    std::size_t count = steps_that_fit(steps, bar.height, room.first);
    if (whole_on_a_page && count < kLeast) count = steps.size();
    std::span<Frame> left{steps};
    StepsBox box;
    box.box = boxed(Frame{bar}, take(left, count), node);
    for (PlacedItem& item : bar.items) item.origin.element = kNoElement;
    while (!left.empty()) {
        count = steps_that_fit(left, bar.height, room.later);
        box.rest.push_back(boxed(Frame{bar}, take(left, count), node));
    }
    return box;
}

}  // namespace ventfolio
