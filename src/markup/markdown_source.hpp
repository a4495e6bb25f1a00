#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "markup/template.hpp"

namespace ventfolio {

/// Code points that stand for things which must not pass through Mustache or Markdown as text. Planes 15 and 16 are for
/// private use (The Unicode Standard, 23.5); a template that holds one is refused, so none can be forged.
///
/// Between Mustache and us, plane 15 numbers the pieces of the template. In Markdown text it is a check box (0) or a
/// line to write on (its length). Plane 16 numbers the values of one rendering.
inline constexpr char32_t kFirstPieceToken = 0xF0000;
inline constexpr char32_t kFirstValueToken = 0x100000;
inline constexpr char32_t kCheckBoxToken = 0xF0000;
inline constexpr std::size_t kMostTemplatePieces = 0xFFFE;
inline constexpr std::size_t kMostValues = 0xFFFE;

/// Cuts a line of a template into pieces, so that `[ ]` and `____` become tokens before Markdown sees them: it would
/// take underscores for bold type or a line across, and brackets for a link. The box that opens a list item is left to
/// Markdown's task lists.
class MarkdownLine {
  public:
    /// Pieces of one stretch of words that does not go beyond a line end; at least one.
    std::vector<TemplatePiece> pieces(TemplateSpan span, std::string_view file);
    /// Something else that stands in the line: a value.
    void add(std::string_view words);

  private:
    bool opens_task(std::string_view before) const;

    std::string before_;  ///< what the line holds so far
};

}  // namespace ventfolio
