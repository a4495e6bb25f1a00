#pragma once

namespace ventfolio {

// Letters of ASCII. Those of <cctype> ask the locale, and are undefined for the bytes of other letters.

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_small_letter(char c) { return c >= 'a' && c <= 'z'; }
constexpr bool is_capital_letter(char c) { return c >= 'A' && c <= 'Z'; }
/// One of the three.
constexpr bool is_letter_or_digit(char c) { return is_digit(c) || is_small_letter(c) || is_capital_letter(c); }

}  // namespace ventfolio
