#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "sheets/document.hpp"

namespace ventfolio {

/// The words of a block while it is being read: each stretch still knows where it stands in the Markdown.
struct InlineRun {
    Inline piece;
    std::size_t offset = 0;  ///< of the first byte in the Markdown
    bool escaped = false;    ///< the first character has a backslash before it
    bool follows = true;     ///< byte n of the text stands at offset + n
};

class InlineRuns {
  public:
    /// Stands in `flat` for a value, a figure, a box, a line to write on or a break.
    static constexpr char kObject = '\x01';
    /// Stands in `flat` for a character that had a backslash before it and so means nothing but itself.
    static constexpr char kEscaped = '\x02';

    void add(InlineRun run) { runs_.push_back(std::move(run)); }
    bool empty() const { return runs_.empty(); }
    const std::vector<InlineRun>& all() const { return runs_; }

    /// All words as one text; anything that is not a word takes one byte.
    std::string flat() const;
    /// The bytes [begin, end) of `flat` as runs of their own.
    InlineRuns part(std::size_t begin, std::size_t end) const;
    /// Where a byte of `flat` stands in the Markdown.
    std::size_t offset(std::size_t at) const;
    /// Joined, without blanks at either end, and never two blanks in a row.
    Inlines joined() const;

  private:
    std::vector<InlineRun> runs_;
};

}  // namespace ventfolio
