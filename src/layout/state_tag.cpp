#include "layout/state_tag.hpp"

#include <algorithm>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

// In type sizes.
constexpr double kSide = 0.28;  // left and right of the words
constexpr double kHeight = 1.3;

TextStyle style_of(double size) {
    TextStyle look = plain_style(size);
    look.leading = 1;
    return look;
}

bool is_bold(const Inlines& inlines) {
    return std::ranges::all_of(inlines, [](const Inline& piece) { return piece.strong; });
}

}  // namespace

double state_tag_width(const Inlines& inlines, double size, LayoutContext& context) {
    if (inlines.empty()) return 0;
    return natural_width(inlines, style_of(size), context) + 2 * kSide * size;
}

Frame set_state_tag(const Inlines& inlines, double size, std::string_view role, LayoutContext& context) {
    if (inlines.empty()) return {};
    const bool black = is_bold(inlines);
    TextStyle look = style_of(size);
    if (black) look.ink = Ink::white;
    Frame tag;
    tag.width = state_tag_width(inlines, size, context);
    tag.height = kHeight * size;
    const Origin origin{context.node, "tag", {}};
    if (black)
        tag.put_black_field(origin);
    else
        tag.put_outline(kBoxLine, origin);
    Frame text = set_text(inlines, look, tag.width - 2 * kSide * size + kFitTolerance, role, context);
    const double top = top_with_capitals_in_middle(text, tag.height);
    tag.put(std::move(text), kSide * size, top);
    return tag;
}

}  // namespace ventfolio
