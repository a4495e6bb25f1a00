#pragma once

#include <span>

#include "layout/frame.hpp"
#include "layout/rich_text.hpp"
#include "layout/type_sizes.hpp"

namespace ventfolio {

/// What a block has to know of the section it stands in.
struct SectionStyle {
    TypeSizes sizes;
    const Attributes* attributes = nullptr;  ///< of the section's heading; null for text before the first heading
    bool steps = false;                      ///< ordered lists are rescue steps with boxed numbers

    bool has(std::string_view name) const { return attributes && attributes->has(name); }
    /// A whole number given as an option, such as `columns=3`.
    std::size_t number(std::string_view name, std::size_t fallback) const;
};

/// Sets blocks below one another.
Pieces set_blocks(std::span<const Block> blocks, const SectionStyle& style, double width, LayoutContext& context);

/// The inlines of an item or paragraph: its own, or those of its first paragraph.
const Inlines& inlines_of(const Block& block);

/// Cuts inlines into the bold words at their head and the rest.
std::pair<Inlines, Inlines> split_after_strong(const Inlines& inlines);

}  // namespace ventfolio
