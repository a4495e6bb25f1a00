#include "profile/yaml_extent.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

constexpr std::string_view kBlank = " \r\n";

std::optional<std::size_t> end_of_double_quoted(std::string_view text, std::size_t begin) {
    for (std::size_t at = begin + 1; at < text.size(); ++at) {
        if (text[at] == '\\')
            ++at;
        else if (text[at] == '"')
            return at + 1;
    }
    return std::nullopt;
}

std::optional<std::size_t> end_of_single_quoted(std::string_view text, std::size_t begin) {
    for (std::size_t at = begin + 1; at < text.size(); ++at) {
        if (text[at] != '\'') continue;
        if (!text.substr(at + 1).starts_with('\'')) return at + 1;
        ++at;
    }
    return std::nullopt;
}

std::string_view without_line_end(std::string_view line) {
    const auto last = line.find_last_not_of(kBlank);
    return last == std::string_view::npos ? std::string_view{} : line.substr(0, last + 1);
}

/// A block runs for as long as its lines are indented; blank lines at its end do not belong to it.
std::size_t end_of_block(std::string_view text, std::size_t begin, int parent_indent) {
    const auto header_end = std::min(text.find('\n', begin), text.size());
    const std::string_view header = text.substr(begin, header_end - begin);
    const auto digit = header.substr(0, header.find_first_of(" #")).find_first_of("123456789");
    std::size_t indent = digit == std::string_view::npos
                             ? 0
                             : static_cast<std::size_t>(std::max(parent_indent, 0) + (header[digit] - '0'));
    std::size_t end = begin + without_line_end(header.substr(0, header.find(" #"))).size();
    for (std::size_t at = header_end + 1; at < text.size();) {
        const auto line_end = std::min(text.find('\n', at), text.size());
        const std::string_view line = without_line_end(text.substr(at, line_end - at));
        if (!line.empty()) {
            const std::size_t depth = line.find_first_not_of(' ');
            if (indent == 0) indent = std::max(depth, static_cast<std::size_t>(parent_indent + 1));
            if (depth < indent) break;
            if (depth == 0 && (line.starts_with("---") || line.starts_with("..."))) break;
            end = at + line.size();
        }
        at = line_end + 1;
    }
    return end;
}

/// Folding changes blanks and line breaks only, so the other letters lead through the source.
std::size_t end_of_plain(std::string_view text, std::size_t begin, std::string_view value) {
    std::size_t end = begin;
    for (const char letter : value) {
        if (kBlank.find(letter) != std::string_view::npos) continue;
        const auto found = text.find_first_not_of(kBlank, end);
        if (found == std::string_view::npos || text[found] != letter) return end;
        end = found + 1;
    }
    return end;
}

}  // namespace

std::optional<std::size_t> end_of_scalar(std::string_view text, std::size_t begin, std::string_view value,
                                         int parent_indent) {
    switch (begin < text.size() ? text[begin] : ' ') {
        case '"':
            return end_of_double_quoted(text, begin);
        case '\'':
            return end_of_single_quoted(text, begin);
        case '|':
        case '>':
            return end_of_block(text, begin, parent_indent);
        default:
            return end_of_plain(text, begin, value);
    }
}

}  // namespace ventfolio
