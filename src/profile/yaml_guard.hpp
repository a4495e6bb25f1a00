#pragma once

#include <optional>
#include <string_view>

#include "profile/finding_list.hpp"
#include "profile/place.hpp"

namespace ventfolio {

/// Bytes of a byte-order mark at the start of a text: 3 or 0.
std::size_t length_of_byte_order_mark(std::string_view text);

/// Looks at a profile before any parser does: its size (at most 1 MiB), UTF-8, tabs, and characters that do not print
/// or that only this program may use. A byte-order mark and CRLF line ends pass. Nothing may be parsed after a finding.
void guard_text(const SourceText& source, FindingList& findings);

/// "U+0007" for the first character of a value that must not reach paper; line breaks pass. Escapes in quoted text can
/// make characters that the file itself does not hold. The text must be valid UTF-8.
std::optional<std::string> first_unprintable(std::string_view text);

}  // namespace ventfolio
