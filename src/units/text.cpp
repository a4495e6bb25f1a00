#include "units/text.hpp"

#include <utf8proc.h>
#include <algorithm>
#include <cstdlib>
#include <memory>

namespace ventfolio {
namespace {

const utf8proc_uint8_t* bytes(std::string_view text) { return reinterpret_cast<const utf8proc_uint8_t*>(text.data()); }

// Nearly all text is ASCII, and most of it needs no table.
bool is_ascii(std::string_view text) {
    return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

bool is_printable_ascii(char c) { return c >= ' ' && c <= '~'; }

utf8proc_ssize_t length(std::string_view text) { return static_cast<utf8proc_ssize_t>(text.size()); }

}  // namespace

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::vector<std::string> split(std::string_view text, char separator) {
    std::vector<std::string> parts;
    for (;;) {
        const auto end = text.find(separator);
        parts.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + 1);
    }
}

std::string joined(std::span<const std::string> parts, std::string_view separator) {
    std::string text;
    for (const std::string& part : parts) {
        if (&part != parts.data()) text += separator;
        text += part;
    }
    return text;
}

std::string lower_ascii(std::string_view text) {
    std::string lowered{text};
    std::ranges::transform(lowered, lowered.begin(),
                           [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; });
    return lowered;
}

std::string with_replaced(std::string text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
    return text;
}

std::u32string code_points(std::string_view text) {
    std::u32string points;
    points.reserve(text.size());
    while (!text.empty()) {
        utf8proc_int32_t point = -1;
        const auto used = utf8proc_iterate(bytes(text), length(text), &point);
        if (used <= 0) break;
        points.push_back(static_cast<char32_t>(point));
        text.remove_prefix(static_cast<std::size_t>(used));
    }
    return points;
}

std::string utf8(char32_t code_point) {
    utf8proc_uint8_t buffer[4];
    const auto used = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code_point), buffer);
    return {reinterpret_cast<const char*>(buffer), static_cast<std::size_t>(used)};
}

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        utf8proc_int32_t point = -1;
        const auto used = utf8proc_iterate(bytes(text.substr(at)), length(text.substr(at)), &point);
        if (used <= 0) return at;
        at += static_cast<std::size_t>(used);
    }
    return std::nullopt;
}

namespace {

/// The text itself where the library cannot map it.
std::string mapped(std::string_view text, int options) {
    utf8proc_uint8_t* made = nullptr;
    const auto size = utf8proc_map(bytes(text), length(text), &made, static_cast<utf8proc_option_t>(options));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner{made, &std::free};
    return size < 0 ? std::string{text}
                    : std::string{reinterpret_cast<const char*>(made), static_cast<std::size_t>(size)};
}

}  // namespace

std::string normal_form(std::string_view text) {
    return is_ascii(text) ? std::string{text} : mapped(text, UTF8PROC_STABLE | UTF8PROC_COMPOSE);
}

std::string without_accents(std::string_view text) {
    constexpr int kBaseLetters = UTF8PROC_STABLE | UTF8PROC_DECOMPOSE | UTF8PROC_STRIPMARK;
    return is_ascii(text) ? std::string{text} : mapped(text, kBaseLetters);
}

std::string capitals(std::string_view text) {
    std::string raised;
    for (const char32_t point : code_points(text))
        raised += utf8(static_cast<char32_t>(utf8proc_toupper(static_cast<utf8proc_int32_t>(point))));
    return raised;
}

std::string sentence_start(std::string_view text) {
    const std::u32string points = code_points(text.substr(0, 4));
    if (points.empty()) return std::string{text};
    const std::size_t first = utf8(points.front()).size();
    return capitals(text.substr(0, first)) + std::string{text.substr(first)};
}

std::size_t display_cells(std::string_view text) {
    if (is_ascii(text)) return static_cast<std::size_t>(std::ranges::count_if(text, is_printable_ascii));
    std::size_t cells = 0;
    for (const char32_t point : code_points(text))
        cells += static_cast<std::size_t>(std::max(0, utf8proc_charwidth(static_cast<utf8proc_int32_t>(point))));
    return cells;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = a[i - 1] == b[j - 1] ? 0 : 1;
            cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + changed});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
    }
    return cost[a.size()][b.size()];
}

std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates) {
    constexpr std::size_t kFarthest = 3;
    std::optional<std::string> best;
    std::size_t best_distance = kFarthest + 1;
    for (const std::string& candidate : candidates) {
        if (candidate.size() > word.size() + kFarthest || word.size() > candidate.size() + kFarthest) continue;
        const std::size_t distance = edit_distance(lower_ascii(word), lower_ascii(candidate));
        if (distance < best_distance && 2 * distance < std::max<std::size_t>(word.size(), 2)) {
            best = candidate;
            best_distance = distance;
        }
    }
    return best;
}

}  // namespace ventfolio
