#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "sheets/document.hpp"

namespace ventfolio {

/// The short name of what a sheet says, to be read over the phone: six characters in two groups, the first 30 bits of
/// a SHA-256 over canonical_words(). Two sheets with one code say the same; a word, number or date more or less gives
/// another code.
///
/// Example: "K7M-2QD".
/// Source: alphabet and reading rules of Douglas Crockford's base 32 (no I, L, O or U).
std::string sheet_code(const Document& document);

/// A code as someone typed or heard it: capitals or not, hyphen or not, O for 0, I or L for 1. Nothing when it is not
/// six characters of the alphabet.
///
/// Example: "k7m2qd" is "K7M-2QD"; "O1L-000" is "011-000".
std::optional<std::string> read_sheet_code(std::string_view typed);

/// `symbols` characters of base 32 for the lowest 5 x `symbols` bits of a number.
///
/// Example: base32(1234, 3) is "16J".
std::string base32(std::uint64_t number, int symbols);

}  // namespace ventfolio
