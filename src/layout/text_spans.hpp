#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/layout_context.hpp"

namespace ventfolio {

/// How a passage is set. Numbers and units of a value may have a size and a weight of their own.
struct TextStyle {
    struct Look {
        double size = 12;
        Face face = Face::regular;
    };
    Look words;                  ///< the template's own words
    std::optional<Look> answer;  ///< a value in words; else like `words`
    std::optional<Look> number;  ///< the number of a value; else like `words`
    std::optional<Look> unit;    ///< the unit of a value; else like `words`
    Ink ink = Ink::black;
    double leading = 1.25;  ///< line pitch in type sizes
    Alignment alignment = Alignment::left;
    bool balanced = false;    ///< lines of like length
    bool unit_below = false;  ///< the unit of a value stands on a line of its own
};

/// A style in one size; bold if asked.
TextStyle plain_style(double size, Face face = Face::regular);

/// A stretch of one look, or a drawn thing that stands in the line.
struct TextSpan {
    std::u32string text;
    TextStyle::Look look;
    std::string field;        ///< of a value; empty for the template's own words
    std::size_t line = 0;     ///< of the template
    bool solid = false;       ///< may not be broken inside
    double object_width = 0;  ///< of a check box or a write-in line; `text` is then U+FFFC
    bool check_box = false;
    std::size_t element = kNoElement;  ///< of the sheet's structure
};
using TextSpans = std::vector<TextSpan>;

/// The inlines of a passage in a style. Figures are left out: they stand in cells of their own.
TextSpans spans_of(const Inlines& inlines, const TextStyle& style, double scale);

/// Refuses each character that the face has no glyph for, by its number, its place and the field that it is part of.
void check_coverage(const TextSpans& spans, LayoutContext& context);

/// Whether a line must end at this character.
bool is_line_end(char32_t letter);

}  // namespace ventfolio
