#pragma once

#include <string>
#include <vector>

namespace ventfolio {

/// Rows of cells for a terminal: each column as wide as its widest cell, two blanks between columns, `indent` blanks
/// before the first, none at the end of a line.
std::string text_table(const std::vector<std::vector<std::string>>& rows, std::size_t indent = 2);

}  // namespace ventfolio
