#include <fmt/format.h>
#include <algorithm>
#include <filesystem>

#include "caseload/calendar_file.hpp"
#include "caseload/due_report.hpp"
#include "cli/commands.hpp"
#include "cli/judged_homes.hpp"
#include "cli/world.hpp"

namespace ventfolio {
namespace {

void add_packet(std::vector<Due>& dues, const Household& home, const std::string& packets) {
    const std::string record = home.profile.record_number.or_else("");
    const std::filesystem::path folder = std::filesystem::path{packets} / record;
    try {
        if (auto due = stale_packet(home, read_packet_folder(folder))) dues.push_back(std::move(*due));
    } catch (const FolderError& fault) {
        dues.push_back(packet_due(home, fault.what()));
    }
}

void add_home(std::vector<Due>& dues, const JudgedHome& judged, const DueOptions& options) {
    if (!judged.home.readable) return;
    const Household home{judged.home.profile, options.on};
    std::vector<Due> own = dues_of(home);
    if (!options.packets.empty()) add_packet(own, home, options.packets);
    keep_due_by(own, options.on.plus_days(options.within));
    std::ranges::move(own, std::back_inserter(dues));
}

/// What has no day is not lost in silence.
std::string calendar(const std::vector<Due>& dues, const DueOptions& options) {
    const auto undated = std::ranges::count_if(dues, [](const Due& due) { return !due.by; });
    if (undated > 0)
        fmt::print(stderr, "ventfolio: {} due now {} no day and {} not in the calendar; see the list as text\n",
                   undated, undated == 1 ? "has" : "have", undated == 1 ? "is" : "are");
    std::string text = calendar_file(dues, options.on, options.names);
    if (text.empty()) fmt::print(stderr, "ventfolio: nothing has a day, so there is no calendar to write\n");
    return text;
}

std::string listed(const std::vector<Due>& dues, const DueOptions& options) {
    switch (options.format) {
        case DueOptions::Format::text:
            return due_text(dues, options.on, options.names);
        case DueOptions::Format::csv:
            return due_csv(dues, options.on, options.names);
        case DueOptions::Format::ics:
            return calendar(dues, options);
    }
    return {};
}

}  // namespace

int due_command(const DueOptions& options) {
    std::vector<Due> dues;
    const int status = for_each_judged_home(
        options.profiles, options.on, [&](const JudgedHome& judged) { add_home(dues, judged, options); },
        [](const std::string&, const std::string&) {});
    keep_due_by(dues, options.on.plus_days(options.within));
    const std::string text = listed(dues, options);
    if (!text.empty()) write_output(options.output, text);
    return status;
}

}  // namespace ventfolio
