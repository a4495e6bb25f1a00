#pragma once

#include <span>
#include <vector>

#include "layout/blocks.hpp"

namespace ventfolio {

/// A heading of level 2 and the blocks up to the next one.
struct Section {
    const Block* heading = nullptr;
    std::span<const Block> blocks;

    bool has(std::string_view name) const { return heading && heading->attributes.has(name); }
    /// Columns of twelve that it takes: `span=6` or `.half`.
    std::size_t span() const;
    /// Kept on one page if a page can hold it: rescue steps and other boxes.
    bool keeps_together() const { return has("act") || has("box"); }
};

std::vector<Section> sections_of(std::span<const Block> blocks);

/// A section set to a width. A section in a box or a strip is one piece; a plain one may be broken between its pieces.
///
/// The looks, by the heading's classes: `.strip` white on black, the headline; `.act` a strong box: act on this;
/// `.banner` the same under a black bar; `.box` a thin box; `.place` a tag in white on black before its heading;
/// `.pointer` a tag beside words in a thin box; none: a heading over a rule.
Pieces set_section(const Section& section, double width, LayoutContext& context);

}  // namespace ventfolio
