#include "markup/markdown_position.hpp"

#include <algorithm>

namespace ventfolio {

MarkdownPosition::MarkdownPosition(std::string_view text) : text_{text}, escaped_(text.size() + 1, false) {
    for (std::size_t at = 0; at < text.size(); ++at) escaped_[at + 1] = text[at] == '\\' && !escaped_[at];
}

void MarkdownPosition::reach_line_end(std::size_t offset) {
    if (!text_.empty()) reach(std::min(line_end(offset), text_.size() - 1));
}

std::size_t MarkdownPosition::line_begin(std::size_t offset) const {
    if (offset == 0) return 0;
    const std::size_t before = text_.rfind('\n', offset - 1);
    return before == text_.npos ? 0 : before + 1;
}

std::size_t MarkdownPosition::line_end(std::size_t offset) const {
    return std::min(text_.find('\n', offset), text_.size());
}

std::size_t MarkdownPosition::next_line() const {
    std::size_t at = read_ ? std::min(line_end(*read_) + 1, text_.size()) : 0;
    const std::size_t found = text_.find_first_not_of(" >\n", at);
    return found == text_.npos ? std::min(at, text_.empty() ? 0 : text_.size() - 1) : found;
}

}  // namespace ventfolio
