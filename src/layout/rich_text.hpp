#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "layout/frame.hpp"
#include "layout/text_spans.hpp"

/// Inlines set in lines. Frames made here have one text item for each look in each line; the first is of the first
/// line, which is what first_baseline goes by.
namespace ventfolio {

struct TextWidths {
    double natural;      ///< if lines end only where they must
    double widest_word;  ///< of the widest part that cannot be broken
};
/// Both widths of a text, measured once.
TextWidths widths_of(const Inlines& inlines, const TextStyle& style, LayoutContext& context);
double natural_width(const Inlines& inlines, const TextStyle& style, LayoutContext& context);
double widest_word(const Inlines& inlines, const TextStyle& style, LayoutContext& context);

/// Sets text into lines of at most `width`. A word that is wider than the column, and a character that has no glyph, is
/// a finding that names its field. `role` is what the text is for, see Origin.
Frame set_text(const Inlines& inlines, const TextStyle& style, double width, std::string_view role,
               LayoutContext& context);

/// Distance from the top of a set text to its first baseline; its height if it has no text.
double first_baseline(const Frame& frame);

/// Distance from the top of a line of one size to its baseline.
double baseline_at(double size, double leading);

/// Where the top of a set text goes, so that the capitals and digits of its first line stand in the middle of a field.
double top_with_capitals_in_middle(const Frame& text, double height);

/// The field of the first value in the inlines; empty when there is none.
std::string first_field(const Inlines& inlines);

/// Cuts inlines into the bold words at their head and the rest, blanks between them left out.
std::pair<Inlines, Inlines> split_after_strong(const Inlines& inlines);

/// Words of our own as inlines, of an element of the sheet's structure or of none.
Inlines words(std::string_view text, std::size_t element = kNoElement);

}  // namespace ventfolio
