#include "markup/bold_marks.hpp"

#include <algorithm>
#include <string_view>

namespace ventfolio {
namespace {

class BoldMarks {
  public:
    explicit BoldMarks(std::string& text) : text_{text} {}

    void settle() {
        for (std::size_t at = 0; at < text_.size();) {
            if (text_[at] == '\\') {
                at += 2;
            } else if (std::string_view{text_}.substr(at).starts_with("\n\n")) {
                open_ = false;
                ++at;
            } else if (text_[at] == '*') {
                at = stars(at);
            } else {
                ++at;
            }
        }
    }

  private:
    std::size_t end_of(char sign, std::size_t at) const {
        return std::min(text_.find_first_not_of(sign, at), text_.size());
    }

    /// Handles a run of stars; gives where to go on.
    std::size_t stars(std::size_t begin) {
        const std::size_t end = end_of('*', begin);
        if (end - begin == 4 && !open_ && !fills_line(begin, end))
            std::fill(text_.begin() + at(begin), text_.begin() + at(end), ' ');
        if (end - begin != 2) return end;
        return open_ ? close(begin) : open(begin);
    }

    bool fills_line(std::size_t begin, std::size_t end) const {
        const std::size_t before = text_.find_last_not_of(" >", begin == 0 ? 0 : begin - 1);
        const std::size_t after = end_of(' ', end);
        return (begin == 0 || before == text_.npos || text_[before] == '\n') &&
               (after == text_.size() || text_[after] == '\n');
    }

    std::size_t open(std::size_t begin) {
        const std::size_t words = end_of(' ', begin + 2);
        if (words < text_.size() && text_.compare(words, 2, "**") == 0 && end_of('*', words) == words + 2) {
            std::fill(text_.begin() + at(begin), text_.begin() + at(words + 2), ' ');
            return words + 2;
        }
        if (words == text_.size() || text_[words] == '\n') return begin + 2;
        std::rotate(text_.begin() + at(begin), text_.begin() + at(begin + 2), text_.begin() + at(words));
        open_ = true;
        return words;
    }

    std::size_t close(std::size_t begin) {
        std::size_t words_end = begin;
        while (text_[words_end - 1] == ' ') --words_end;
        if (text_[words_end - 1] == '\n') return begin + 2;
        std::rotate(text_.begin() + at(words_end), text_.begin() + at(begin), text_.begin() + at(begin + 2));
        open_ = false;
        return begin + 2;
    }

    static std::ptrdiff_t at(std::size_t offset) { return static_cast<std::ptrdiff_t>(offset); }

    std::string& text_;
    bool open_ = false;
};

}  // namespace

void settle_bold_marks(std::string& markdown) { BoldMarks{markdown}.settle(); }

}  // namespace ventfolio
