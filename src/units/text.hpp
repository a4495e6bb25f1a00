#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ventfolio {

inline constexpr std::string_view kNoBreakSpace = "\u00A0";

/// Without blanks and tabs at either end.
std::string_view trimmed(std::string_view text);
std::vector<std::string> split(std::string_view text, char separator);
std::string joined(std::span<const std::string> parts, std::string_view separator);
std::string lower_ascii(std::string_view text);
std::string with_replaced(std::string text, std::string_view from, std::string_view to);

/// Code points of a text that is known to be valid UTF-8.
std::u32string code_points(std::string_view utf8);
std::string utf8(char32_t code_point);
/// Byte offset of the first bytes that are not UTF-8, or nothing.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);
/// Normal form C, which the fonts and the PDF library expect.
std::string normal_form(std::string_view utf8);
/// Letters without the marks above and below them: "Andrés" is "Andres". For names of parts of a folder, never for
/// paper.
std::string without_accents(std::string_view utf8);
/// In capitals, letters of every script that has them.
std::string capitals(std::string_view utf8);
/// The same with a capital at its start.
std::string sentence_start(std::string_view utf8);
/// Terminal cells that a text takes: combining marks none, wide letters two.
std::size_t display_cells(std::string_view utf8);

/// How many letters must change to turn one word into the other; swaps of neighbours count once.
std::size_t edit_distance(std::string_view a, std::string_view b);
/// The candidate nearest to a misspelt word, if it is near enough to be meant (distance 3 or less, and less than half
/// the word); nothing otherwise.
std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates);

}  // namespace ventfolio
