#include "layout/letterhead.hpp"

#include <algorithm>

#include "layout/measures.hpp"
#include "layout/pictures.hpp"

namespace ventfolio {

Piece set_letterhead(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    constexpr double kBesideLogo = mm(5);
    constexpr double kBetween = mm(0.6);
    constexpr double kAboveRule = mm(2.6);
    if (section.has_words_in_heading()) context.refuse_unprinted("the heading of a letterhead", section.heading->line);
    refuse_aside(section, context);
    std::span<const Block> words = section.blocks;
    Frame logo;
    if (!words.empty() && is_picture(words.front())) {
        ++context.node;
        logo = set_picture(words.front(), width, context);
        words = words.subspan(1);
    }
    const double indent = logo.width > 0 ? logo.width + kBesideLogo : 0;
    Pieces lines = set_blocks(words, style, width - indent, context);
    for (Piece& line : lines) line.gap = kBetween;
    Piece piece = section_piece(section, lines, width);
    Frame text = stacked(std::move(lines), width - indent);
    piece.frame.height = std::max(logo.height, text.height);
    piece.frame.put_in_middle(std::move(logo), 0);
    piece.frame.put_in_middle(std::move(text), indent);
    piece.frame.height += kAboveRule;
    piece.frame.put_bottom_rule(kThinLine);
    return piece;
}

}  // namespace ventfolio
