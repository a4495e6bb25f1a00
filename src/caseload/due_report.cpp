#include "caseload/due_report.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <vector>

#include "calc/next_due_date.hpp"
#include "caseload/csv.hpp"
#include "caseload/text_table.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Row = std::vector<std::string>;

std::string day(const Due& due) { return due.by ? due.by->iso() : "now"; }

bool is_late(const Due& due, Date on) { return !due.by || *due.by < on; }

std::string what(const Due& due, bool names) {
    return names && !due.named.empty() ? fmt::format("{} ({})", due.what, due.named) : due.what;
}

std::string lateness(const Due& due, Date on) {
    const auto days = due.by ? calc::days_overdue(*due.by, on) : std::nullopt;
    return days ? fmt::format("{} {}", *days, *days == 1 ? "day" : "days") : "";
}

std::string part(std::span<const Due> dues, Date on, bool names, bool late) {
    std::vector<Row> rows;
    for (const Due& due : dues) {
        Row row{day(due)};
        if (late) row.push_back(lateness(due, on));
        row.push_back(due.record_number);
        if (names) row.push_back(due.person);
        row.push_back(with_replaced(std::string{name_of(due.kind)}, "-", " "));
        row.push_back(what(due, names));
        rows.push_back(std::move(row));
    }
    return text_table(rows);
}

}  // namespace

std::string due_text(std::span<const Due> dues, Date on, bool names) {
    const auto middle = std::ranges::find_if(dues, [&](const Due& due) { return !is_late(due, on); });
    const auto late = static_cast<std::size_t>(middle - dues.begin());
    std::string text;
    if (late > 0) text += "Overdue, or due now\n" + part(dues.first(late), on, names, true);
    if (late > 0 && late < dues.size()) text += "\n";
    if (late < dues.size()) text += "Coming\n" + part(dues.subspan(late), on, names, false);
    return text.empty() ? "Nothing is due.\n" : text;
}

std::string due_csv(std::span<const Due> dues, Date on, bool names) {
    Row head{"record_number"};
    if (names) head.emplace_back("name");
    for (const char* column : {"kind", "due", "days_overdue", "what"}) head.emplace_back(column);
    if (names) head.emplace_back("who");
    std::string text = csv_row(head);
    for (const Due& due : dues) {
        Row row{due.record_number};
        if (names) row.push_back(due.person);
        row.emplace_back(name_of(due.kind));
        row.push_back(day(due));
        const auto days = due.by ? calc::days_overdue(*due.by, on) : std::nullopt;
        row.push_back(days ? std::to_string(*days) : "");
        row.push_back(due.what);
        if (names) row.push_back(due.named);
        text += csv_row(row);
    }
    return text;
}

}  // namespace ventfolio
