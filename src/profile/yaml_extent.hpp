#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace ventfolio {

/// Where a scalar ends in its source, which the YAML library does not tell. `begin` is the byte where it begins and
/// `value` what the library read; `parent_indent` counts the columns before the keys or dashes that it stands under, -1
/// at the top. Nothing for a quotation mark that is never closed, which the library accepts at the end of a file.
std::optional<std::size_t> end_of_scalar(std::string_view text, std::size_t begin, std::string_view value,
                                         int parent_indent);

}  // namespace ventfolio
