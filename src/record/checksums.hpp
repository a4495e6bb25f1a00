#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ventfolio {

/// A file and the SHA-256 of its bytes.
struct Checksum {
    std::string name;
    std::string digest;  ///< 64 digits in lower case
    friend auto operator<=>(const Checksum&, const Checksum&) = default;
};

Checksum checksum_of(std::string name, std::string_view bytes);

/// The text that `sha256sum -c` reads: a line for each file, by name.
///
/// Example: {{"a.pdf", "ba78…15ad"}} is "ba78…15ad  a.pdf\n".
/// Source: GNU coreutils manual, "sha2 utilities" and "md5sum invocation".
std::string checksum_list(std::vector<Checksum> checksums);

/// Reads what checksum_list wrote; nothing if a line is anything else, or a name stands twice.
std::optional<std::vector<Checksum>> read_checksum_list(std::string_view text);

}  // namespace ventfolio
