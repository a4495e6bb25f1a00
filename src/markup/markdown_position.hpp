#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace ventfolio {

/// How far a Markdown text has been read, line by line.
class MarkdownPosition {
  public:
    explicit MarkdownPosition(std::string_view text);

    /// Reading has come to this byte.
    void reach(std::size_t offset) { read_ = read_ ? std::max(*read_, offset) : offset; }
    /// Reading has come to the end of the line of this byte.
    void reach_line_end(std::size_t offset);
    /// Where the next line that holds something begins, behind blanks and the marks of quotes.
    std::size_t next_line() const;
    /// The last byte that has been read; 0 before any.
    std::size_t read() const { return read_.value_or(0); }

    std::size_t line_begin(std::size_t offset) const;
    std::size_t line_end(std::size_t offset) const;
    /// True if the character there has a backslash before it that is not itself written with one.
    bool escaped(std::size_t offset) const { return escaped_[offset]; }

  private:
    std::string_view text_;
    std::vector<bool> escaped_;
    std::optional<std::size_t> read_;
};

}  // namespace ventfolio
