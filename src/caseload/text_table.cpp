#include "caseload/text_table.hpp"

#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {

std::string text_table(const std::vector<std::vector<std::string>>& rows, std::size_t indent) {
    std::vector<std::size_t> widths;
    for (const auto& row : rows) {
        widths.resize(std::max(widths.size(), row.size()));
        for (std::size_t at = 0; at < row.size(); ++at) widths[at] = std::max(widths[at], display_cells(row[at]));
    }
    std::string text;
    for (const auto& row : rows) {
        std::string line(indent, ' ');
        for (std::size_t at = 0; at < row.size(); ++at)
            line += row[at] + std::string(widths[at] - display_cells(row[at]) + 2, ' ');
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + "\n";
    }
    return text;
}

}  // namespace ventfolio
