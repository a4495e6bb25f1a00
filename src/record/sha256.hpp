#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace ventfolio {

using Sha256 = std::array<std::uint8_t, 32>;

/// The SHA-256 digest of bytes (FIPS 180-4). Throws std::runtime_error if the cryptography library refuses.
///
/// Example: sha256_hex("abc") begins with "ba7816bf".
Sha256 sha256(std::string_view bytes);
/// The same as 64 digits in lower case: the form that `sha256sum` reads and writes.
std::string sha256_hex(std::string_view bytes);

}  // namespace ventfolio
