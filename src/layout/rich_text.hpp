#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "layout/fonts.hpp"
#include "layout/frame.hpp"
#include "profile/finding.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// Remembers the width of words, since the same ones come again and again. One per process or thread.
class Measurer {
  public:
    const FontMetrics::Advance& advance(Face face, const std::u32string& text);

  private:
    std::unordered_map<std::u32string, FontMetrics::Advance> known_[2];
};

/// What all layout functions share: the measurer, where findings go, and the sheet they are about.
struct LayoutContext {
    Measurer& measurer;
    std::vector<Finding>& findings;
    const Document& document;
    double scale = 1;      ///< of all type: 1.5 for large print
    std::size_t node = 0;  ///< of the block being set

    Finding& refuse(std::string_view rule, std::string message, std::size_t line, std::string field = {});
};

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
    std::string field;
    std::size_t line = 0;
    bool solid = false;       ///< may not be broken inside
    double object_width = 0;  ///< of a check box or a write-in line; `text` is then U+FFFC
    bool check_box = false;
};
using TextSpans = std::vector<TextSpan>;

TextSpans spans_of(const Inlines& inlines, const TextStyle& style, LayoutContext& context);

/// Width of the text on one line.
double natural_width(const Inlines& inlines, const TextStyle& style, LayoutContext& context);

/// Width of the widest part that cannot be broken.
double widest_word(const Inlines& inlines, const TextStyle& style, LayoutContext& context);

/// Sets text into lines of at most `width`. A word that is wider than the column is a finding that names its field.
Frame set_text(const Inlines& inlines, const TextStyle& style, double width, std::string_view role,
               LayoutContext& context);

/// Distance from the top of a set text to its first baseline.
double first_baseline(const Frame& frame);
/// The field of the first value in the inlines; empty when there is none.
std::string first_field(const Inlines& inlines);

Inlines words(std::string_view text, bool strong = false);

}  // namespace ventfolio
