#include "caseload/csv.hpp"

#include "units/text.hpp"

namespace ventfolio {

std::string csv_cell(std::string_view text) {
    constexpr std::string_view kRunBySpreadsheets = "=+-@\t\r\n";
    std::string cell{text};
    if (!cell.empty() && kRunBySpreadsheets.find(cell.front()) != std::string_view::npos) cell.insert(0, "'");
    if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
    return "\"" + with_replaced(std::move(cell), "\"", "\"\"") + "\"";
}

std::string csv_row(std::span<const std::string> cells) {
    std::string row;
    for (const std::string& cell : cells) {
        if (&cell != &cells.front()) row += ',';
        row += csv_cell(cell);
    }
    return row + "\r\n";
}

}  // namespace ventfolio
