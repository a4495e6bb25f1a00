#pragma once

#include <span>
#include <vector>

#include "layout/blocks.hpp"

namespace ventfolio {

/// The grid on which sections share the width of a page.
inline constexpr std::size_t kAllColumns = 12;

/// A heading of level 2 and the blocks up to the next one.
struct Section {
    const Block* heading = nullptr;
    std::span<const Block> blocks;

    bool has(std::string_view name) const { return heading && heading->attributes.has(name); }
    bool has_words_in_heading() const { return heading && !heading->inlines.empty(); }
    /// Columns of twelve that it takes: `span=6` or `.half`.
    std::size_t span() const;
    /// Kept on one page if a page can hold it: rescue steps and other boxes, and what is marked `.whole`.
    bool keeps_together() const { return has("act") || has("box") || has("whole"); }
    /// A flowchart, which has the whole width and makes its own sides.
    bool is_chart() const { return has("ladder"); }
};

/// Cuts a document at its headings of levels 1 and 2. The blocks stay where they are; the sections point at them.
std::vector<Section> sections_of(std::span<const Block> blocks);

/// A section set to a width, as pieces between which it may be broken. Counts context.node up by one for itself.
///
/// The looks, by the heading's classes: `.strip` white on black, the headline; `.act` a strong box: act on this;
/// `.banner` the same under a black bar; `.box` a thin box; `.place` a tag in white on black before its heading;
/// `.pointer` a tag beside words in a thin box; `.index` a black bar over a list of numbers; `.letterhead` a clinic's
/// logo beside its words; `.hookup` a drawing of joined parts, see hookup.hpp; `.wallet` a card to cut out, see
/// wallet.hpp; none: a heading over a rule. Tables and lists in it have looks of their own: see layout/tables.hpp and
/// layout/lists.hpp. A `.ladder` is placed by the pager: see set_ladder.
Pieces set_section(const Section& section, double width, LayoutContext& context);

/// Where a heading is not set: words at its side have no line to stand on, and are refused.
void refuse_aside(const Section& section, LayoutContext& context);

/// An empty piece of this width with the section's place in the template and the first field of its parts or, failing
/// that, of its heading.
Piece section_piece(const Section& section, const Pieces& parts, double width);

}  // namespace ventfolio
