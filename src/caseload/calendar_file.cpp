#include "caseload/calendar_file.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <tuple>
#include <vector>

#include "units/text.hpp"

namespace ventfolio {
namespace {

using EventKey = std::tuple<Date, std::string, DueKind>;

std::string basic(Date day) { return with_replaced(day.iso(), "-", ""); }

std::string described(const std::vector<const Due*>& dues) {
    std::vector<std::string> lines{dues.front()->person};
    for (const Due* due : dues)
        lines.push_back(due->named.empty() ? due->what : fmt::format("{} ({})", due->what, due->named));
    return calendar_text(joined(lines, "\n"));
}

std::string event(const EventKey& key, const std::vector<const Due*>& dues, Date on, bool names) {
    const auto& [day, record, kind] = key;
    const std::string count = dues.size() > 1 ? fmt::format(" ({})", dues.size()) : "";
    std::vector<std::string> lines{
        "BEGIN:VEVENT",
        fmt::format("UID:{}.{}.{}@ventfolio", record, name_of(kind), day.iso()),
        fmt::format("DTSTAMP:{}T000000Z", basic(on)),
        fmt::format("DTSTART;VALUE=DATE:{}", basic(day)),
        "SUMMARY:" +
            calendar_text(fmt::format("{}: {}{}", record, with_replaced(std::string{name_of(kind)}, "-", " "), count)),
        "TRANSP:TRANSPARENT",
    };
    if (names) lines.push_back("DESCRIPTION:" + described(dues));
    lines.emplace_back("END:VEVENT");
    std::string text;
    for (const std::string& line : lines) text += folded_line(line);
    return text;
}

}  // namespace

std::string folded_line(std::string_view line) {
    constexpr std::size_t kMost = 75;  // octets, without the line end
    std::string text;
    std::size_t room = kMost;
    while (line.size() > room) {
        std::size_t cut = room;
        const auto continues = [&](std::size_t at) { return (static_cast<unsigned char>(line[at]) & 0xC0U) == 0x80U; };
        while (cut > 0 && continues(cut)) --cut;
        text.append(line.substr(0, cut)).append("\r\n ");
        line.remove_prefix(cut);
        room = kMost - 1;  // the blank that marks the line as folded counts
    }
    return text.append(line).append("\r\n");
}

std::string calendar_text(std::string_view text) {
    std::string escaped;
    for (const char letter : text) {
        if (letter == '\\' || letter == ';' || letter == ',') escaped += '\\';
        if (letter == '\n')
            escaped += "\\n";
        else if (letter != '\r')
            escaped += letter;
    }
    return escaped;
}

std::string calendar_file(std::span<const Due> dues, Date on, bool names) {
    std::map<EventKey, std::vector<const Due*>> events;
    for (const Due& due : dues)
        if (due.by) events[{*due.by, due.record_number, due.kind}].push_back(&due);
    if (events.empty()) return {};
    std::string text;
    for (const char* line : {"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//ventfolio//due//EN"})
        text += folded_line(line);
    for (const auto& [key, together] : events) text += event(key, together, on, names);
    return text + folded_line("END:VCALENDAR");
}

}  // namespace ventfolio
