#pragma once

#include <string>
#include <string_view>

namespace ventfolio {

/// Bytes as a zlib stream (RFC 1950), as the filter FlateDecode of a PDF file takes them (ISO 32000-1, 7.4.4). The same
/// bytes always give the same stream.
///
/// Throws PdfError when there is not enough memory.
/// Example: compressed(std::string(1000, ' ')) has some 20 bytes.
std::string compressed(std::string_view bytes);

}  // namespace ventfolio
