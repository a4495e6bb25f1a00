#include "caseload/outage_report.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <vector>

#include "caseload/csv.hpp"
#include "caseload/text_table.hpp"
#include "sheets/printed_dates.hpp"

namespace ventfolio {
namespace {

constexpr const char* kNotKnown = "not known";
constexpr const char* kNow = "now";

using Row = std::vector<std::string>;

std::string time_or(const std::optional<long long>& minutes, const char* otherwise) {
    return minutes ? hours_and_minutes(*minutes) : otherwise;
}
std::string number_or(const std::optional<long long>& minutes, const char* otherwise) {
    return minutes ? std::to_string(*minutes) : otherwise;
}

std::string oxygen_text(const HomeInOutage& home) {
    if (home.oxygen_needed) return time_or(home.oxygen, kNotKnown);
    return home.oxygen ? "if needed " + hours_and_minutes(*home.oxygen) : "not needed";
}

std::string unaided_text(const UnaidedTime& time) {
    if (time.hours) return "hours";
    return time.minutes == 0 ? "none" : fmt::format("{} min", time.minutes);
}
std::string unaided_cell(const UnaidedTime& time) {
    if (time.hours) return "hours";
    return time.minutes == 0 ? "none" : std::to_string(time.minutes);
}

std::string leave_at(const HomeInOutage& home, const OutageQuestion& question) {
    return home.leave_by ? after_minutes(*question.starting, *home.leave_by).iso() : kNow;
}

std::string call_text(const HomeCall& call, bool names) {
    const std::string name = names && !call.name.empty() ? " (" + call.name + ")" : "";
    return fmt::format("{} {}{}", name_of(call.role), call.phone, name);
}

std::string calls_text(const HomeInOutage& home, bool names) {
    if (home.calls.empty()) return "no number recorded";
    std::string text = call_text(home.calls.front(), names);
    if (home.calls.size() > 1) text += ", else " + call_text(home.calls[1], names);
    return text;
}

std::string heading(Standing standing, const OutageQuestion& question) {
    const std::string needed = hours_and_minutes(question.needed);
    switch (standing) {
        case Standing::not_judged:
            return "Not judged: the profile is refused or cannot be used. Call at once.";
        case Standing::not_known:
            return "Time not known. Call at once.";
        case Standing::falls_short:
            return fmt::format("Lasts less than {}, shortest first", needed);
        case Standing::lasts:
            return fmt::format("Lasts {} or longer", needed);
    }
    return {};
}

Row text_head(const OutageQuestion& question) {
    Row row{"record"};
    if (question.names) row.emplace_back("name");
    for (const char* column : {"power", "oxygen", "unaided awake", "asleep", "travel", "leave by", "call"})
        row.emplace_back(column);
    return row;
}

Row text_row(const HomeInOutage& home, const OutageQuestion& question) {
    Row row{home.record_number};
    if (question.names) row.push_back(home.person);
    row.push_back(time_or(home.power, kNotKnown));
    row.push_back(oxygen_text(home));
    row.push_back(unaided_text(home.awake));
    row.push_back(unaided_text(home.asleep));
    row.push_back(home.travel ? hours_and_minutes(*home.travel) : kNotKnown);
    row.push_back(question.starting ? leave_at(home, question) : time_or(home.leave_by, kNow));
    row.push_back(calls_text(home, question.names));
    return row;
}

Row not_judged_row(const HomeInOutage& home, const OutageQuestion& question) {
    Row row{home.record_number.empty() ? "no record" : home.record_number};
    if (question.names) row.push_back(home.person);
    row.push_back(home.file + ": " + home.not_judged);
    row.push_back(calls_text(home, question.names));
    return row;
}

Row csv_head(const OutageQuestion& question) {
    Row row{"record_number"};
    if (question.names) row.emplace_back("name");
    for (const char* column : {"standing", "minutes_left", "power_minutes", "oxygen_minutes", "oxygen_needed",
                               "unaided_awake", "unaided_asleep", "travel_minutes", "leave_by_minutes"})
        row.emplace_back(column);
    if (question.starting) row.emplace_back("leave_at");
    for (const std::string number : {"call", "then"}) {
        row.emplace_back(number == "call" ? "call" : "then_call");
        if (question.names) row.push_back(number + "_name");
        row.emplace_back(number == "call" ? "phone" : "then_phone");
    }
    row.emplace_back("profile");
    row.emplace_back("why_not_judged");
    return row;
}

void add_times(Row& row, const HomeInOutage& home, const OutageQuestion& question) {
    row.push_back(number_or(home.time_left, kNotKnown));
    row.push_back(number_or(home.power, kNotKnown));
    row.push_back(number_or(home.oxygen, home.oxygen_needed ? kNotKnown : ""));
    row.emplace_back(home.oxygen_needed ? "yes" : "no");
    row.push_back(unaided_cell(home.awake));
    row.push_back(unaided_cell(home.asleep));
    row.push_back(number_or(home.travel, kNotKnown));
    row.push_back(number_or(home.leave_by, kNow));
    if (question.starting) row.push_back(leave_at(home, question));
}

/// Nothing is known of the times of a home that was not judged.
void add_no_times(Row& row, const OutageQuestion& question) {
    for (int at = 0; at < 7; ++at) row.emplace_back(kNotKnown);
    row.emplace_back(kNow);
    if (question.starting) row.emplace_back(kNow);
}

Row csv_cells(const HomeInOutage& home, const OutageQuestion& question) {
    Row row{home.record_number};
    if (question.names) row.push_back(home.person);
    row.emplace_back(name_of(home.standing(question.needed)));
    if (home.not_judged.empty())
        add_times(row, home, question);
    else
        add_no_times(row, question);
    for (std::size_t at = 0; at < 2; ++at) {
        const HomeCall* call = at < home.calls.size() ? &home.calls[at] : nullptr;
        row.emplace_back(call ? std::string{name_of(call->role)} : at == 0 ? "no number recorded" : "");
        if (question.names) row.push_back(call ? call->name : "");
        row.push_back(call ? call->phone : "");
    }
    row.push_back(home.file);
    row.push_back(home.not_judged);
    return row;
}

}  // namespace

std::string hours_and_minutes(long long minutes) { return fmt::format("{} h {} min", minutes / 60, minutes % 60); }

std::string outage_text(std::span<const HomeInOutage> homes, const OutageQuestion& question) {
    std::string text = fmt::format("{} {} without power for {}{}. Call from the top.\n", homes.size(),
                                   homes.size() == 1 ? "home" : "homes", hours_and_minutes(question.needed),
                                   question.starting ? " from " + question.starting->iso() : "");
    for (auto first = homes.begin(); first != homes.end();) {
        const Standing standing = first->standing(question.needed);
        const auto end = std::find_if(
            first, homes.end(), [&](const HomeInOutage& home) { return home.standing(question.needed) != standing; });
        std::vector<Row> rows;
        if (standing != Standing::not_judged) rows.push_back(text_head(question));
        for (; first != end; ++first)
            rows.push_back(standing == Standing::not_judged ? not_judged_row(*first, question)
                                                            : text_row(*first, question));
        text += "\n" + heading(standing, question) + "\n" + text_table(rows);
    }
    return text;
}

std::string outage_csv(std::span<const HomeInOutage> homes, const OutageQuestion& question) {
    std::string text = csv_row(csv_head(question));
    for (const HomeInOutage& home : homes) text += csv_row(csv_cells(home, question));
    return text;
}

}  // namespace ventfolio
