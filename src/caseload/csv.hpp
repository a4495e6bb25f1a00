#pragma once

#include <span>
#include <string>
#include <string_view>

namespace ventfolio {

/// A cell of a comma-separated file: in quotes where it holds a comma, a quote or a line end (RFC 4180, section 2). A
/// cell that a spreadsheet would run as a formula, because it begins with = + - @, a tab or a line end, gets an
/// apostrophe before it: then it is text.
///
/// Example: csv_cell("=1+1") is "'=1+1"; csv_cell("a, b") is "\"a, b\"".
std::string csv_cell(std::string_view text);

/// The cells of one record, and its line end (CR LF).
std::string csv_row(std::span<const std::string> cells);

}  // namespace ventfolio
