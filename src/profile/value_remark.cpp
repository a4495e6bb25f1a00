#include "profile/value_remark.hpp"

#include <fmt/format.h>

namespace ventfolio {

std::string quoted(std::string_view text) {
    constexpr std::size_t kLongest = 60;
    if (text.size() <= kLongest) return fmt::format("\"{}\"", text);
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return fmt::format("\"{}...\"", text.substr(0, end));
}

std::string listed(std::span<const std::string> words, std::string_view last) {
    std::string text;
    for (std::size_t at = 0; at < words.size(); ++at) {
        if (at > 0) text += at + 1 == words.size() ? last : std::string_view{", "};
        text += words[at];
    }
    return text;
}

std::string with_example(const FieldInfo& info) {
    return info.example.empty() ? "" : fmt::format(", for example {}", info.example);
}

}  // namespace ventfolio
