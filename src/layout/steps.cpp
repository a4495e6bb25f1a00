#include "layout/steps.hpp"

#include <fmt/format.h>
#include <algorithm>

namespace ventfolio {
namespace {

/// A black square with the number of the step in white.
Frame step_number(std::size_t number, const Block& item, const TypeSizes& sizes, LayoutContext& context) {
    Frame frame;
    frame.width = frame.height = sizes.step_box;
    frame.put_black_field({context.node, "step", {}});
    TextStyle look = plain_style(sizes.verb, Face::bold);
    look.ink = Ink::white;
    look.alignment = Alignment::center;
    Frame text = set_text(words(fmt::format("{}", number), item.element), look, sizes.step_box, "step number", context);
    const double top = top_with_capitals_in_middle(text, sizes.step_box);
    frame.put(std::move(text), 0, top);
    return frame;
}

Frame step_text(const Block& item, const TypeSizes& sizes, double width, LayoutContext& context) {
    const auto [verb, result] = split_after_strong(inlines_of(item));
    TextStyle verb_style = plain_style(sizes.verb, Face::bold);
    verb_style.leading = 1.1;
    TextStyle result_style = plain_style(sizes.result);
    result_style.leading = 1.22;
    Frame text;
    text.width = width;
    text.append(set_text(verb, verb_style, width, "step", context));
    text.append(set_text(result, result_style, width, "step", context));
    return text;
}

}  // namespace

Piece set_step(const Block& item, std::size_t number, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kNumberDrop = mm(0.3);  // brings the square level with the capitals of the first line
    const double indent = style.sizes.step_box + mm(3.6) * context.scale;
    Frame text = step_text(item, style.sizes, width - indent, context);
    Frame frame;
    frame.width = width;
    frame.height = std::max(style.sizes.step_box, text.height);
    frame.put(step_number(number, item, style.sizes, context), 0, kNumberDrop);
    frame.put(std::move(text), indent, 0);
    return piece_of(std::move(frame), mm(1.9) * context.scale, item);
}

Piece set_inline_step(const Block& item, std::size_t number, const SectionStyle& style, double width,
                      LayoutContext& context) {
    constexpr double kSide = 1.45;  // of the number's square, in type sizes
    TypeSizes sizes = style.sizes;
    sizes.verb = (style.has("tight") ? 11 : 13) * context.scale;
    sizes.step_box = kSide * sizes.verb;
    TextStyle look = plain_style(sizes.verb);
    look.leading = 1.22;
    const double indent = sizes.step_box + mm(3) * context.scale;
    Frame text = set_text(inlines_of(item), look, width - indent, "step", context);
    Frame frame;
    frame.width = width;
    const double drop = std::max(0.0, (sizes.step_box - look.leading * sizes.verb) / 2);
    frame.height = std::max(sizes.step_box, text.height + drop);
    frame.put(step_number(number, item, sizes, context), 0, 0);
    frame.put(std::move(text), indent, drop);
    return piece_of(std::move(frame), mm(1.2) * context.scale, item);
}

}  // namespace ventfolio
