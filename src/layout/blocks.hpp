#pragma once

#include <span>

#include "layout/frame.hpp"
#include "layout/rich_text.hpp"
#include "layout/type_sizes.hpp"

namespace ventfolio {

/// What a block has to know of the section it stands in.
struct SectionStyle {
    TypeSizes sizes;
    const Attributes* attributes = nullptr;  ///< of the section's heading; null
                                             ///< for text before the first heading
    bool steps = false;                      ///< ordered lists are rescue steps with boxed numbers

    bool has(std::string_view name) const { return attributes && attributes->has(name); }
    /// A whole number given as an option, such as `columns=3`.
    std::size_t number(std::string_view name, std::size_t fallback) const;
};

/// Above a paragraph, a list and what is set like one.
inline constexpr double kParagraphGap = mm(1.6);

/// Sets blocks below one another. Each block counts context.node up by one, and each item or row of it by one more, so
/// that no two of them share a number.
Pieces set_blocks(std::span<const Block> blocks, const SectionStyle& style, double width, LayoutContext& context);

/// A piece that is a block or an item, with the block's place in the template and its first field.
Piece piece_of(Frame frame, double gap, const Block& block);

/// The inlines of an item or paragraph: its own, or those of its first paragraph.
const Inlines& inlines_of(const Block& block);

/// Running text of the section.
TextStyle body_style(const SectionStyle& style);

}  // namespace ventfolio
