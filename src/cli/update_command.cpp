#include <fmt/format.h>
#include <algorithm>
#include <filesystem>

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "packet/update_home.hpp"
#include "profile/read_profile.hpp"
#include "rules/report_text.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using State = SheetChange::State;

std::string_view name_of(State state) {
    switch (state) {
        case State::kept:
            return "stays";
        case State::replaced:
            return "new";
        case State::added:
            return "added";
        case State::withdrawn:
            return "goes";
    }
    return "";
}

/// "because of the profile and the wording".
std::string reasons_of(const UpdatedSheet& sheet) {
    if (sheet.state != State::replaced) return {};
    std::vector<std::string> reasons;
    if (sheet.by_profile) reasons.emplace_back("the profile");
    if (sheet.by_words) reasons.emplace_back("the wording of this version");
    if (sheet.by_time) reasons.emplace_back("the day");
    return reasons.empty() ? "it lists the others" : "because of " + joined(reasons, " and ");
}

std::string codes_of(const UpdatedSheet& sheet) {
    if (sheet.state == State::kept) return sheet.code_was;
    if (sheet.state == State::added) return sheet.code_now;
    if (sheet.state == State::withdrawn) return "was " + sheet.code_was;
    return fmt::format("was {}, now {}", sheet.code_was, sheet.code_now);
}

void print_sheets(const std::vector<UpdatedSheet>& sheets) {
    std::size_t widest = 0;
    for (const UpdatedSheet& sheet : sheets) widest = std::max(widest, sheet.name.size());
    for (const State state : {State::replaced, State::added, State::withdrawn, State::kept}) {
        for (const UpdatedSheet& sheet : sheets) {
            if (sheet.state != state) continue;
            const std::string reasons = reasons_of(sheet);
            fmt::print("  {:5}  {:{}}  {}{}{}\n", name_of(state), sheet.name, widest, codes_of(sheet),
                       reasons.empty() ? "" : ", ", reasons);
        }
    }
}

/// What is worked out is made from settings, which hang on the wall.
bool is_private(const ListedChange& change) {
    return change.kind != ListedChange::Kind::derived && is_private_field(change.path);
}

/// "Holds revision, Unit A": which of several, if its name may be seen.
std::string named_without_value(const ListedChange& change) {
    const std::string item = (change.item.audiences & wall) != 0 ? change.item.text() : "";
    return item.empty() ? change.label.text() : change.label.text() + ", " + item;
}

void print_changes(const char* head, const std::vector<ListedChange>& changes, const Printer& printer, bool unmasked) {
    if (changes.empty()) return;
    fmt::print("{}\n", head);
    for (const ListedChange& change : changes) {
        if (!unmasked && is_private(change))
            fmt::print("  {}: changed (not shown here)\n", named_without_value(change));
        else
            fmt::print("  {}\n", with_replaced(in_one_line(change, printer), kNoBreakSpace, " "));
    }
}

void print_plan(const UpdatedHome& home, const PacketFolder& from, const Stationery& stationery,
                const UpdateOptions& options) {
    const Printer printer{stationery.words, stationery.region};
    const bool unmasked = options.unmasked || standard_output_is_terminal();
    print_changes("Changed", home.edited, printer, unmasked);
    print_changes("What follows from it", home.derived, printer, unmasked);
    if (home.refused) return;
    fmt::print("Sheets\n");
    print_sheets(home.sheets);
    const auto kept = std::ranges::count(home.sheets, State::kept, &UpdatedSheet::state);
    const auto printed = std::ranges::count_if(home.sheets, [](const UpdatedSheet& sheet) {
        return sheet.state == State::replaced || sheet.state == State::added;
    });
    fmt::print("{}: {} to {}, {} sheets on {} pages to hang, {} stay{}\n", home.record.record_number,
               from.record.revision, home.record.revision, printed, home.pages, kept,
               options.dry_run ? "; nothing written" : ", in " + options.folder);
}

void write(const UpdatedHome& home, const std::string& folder) {
    FolderOrder order;
    order.target = folder;
    order.record_number = home.record.record_number;
    order.revision = home.record.revision;
    order.files = home.files;
    write_folder(order);
}

int update_one(const UpdateOptions& options) {
    const SourceText profile = read_file(options.profile);
    const PacketFolder from = read_packet_folder(options.from);
    print_chain_faults(from);
    const StationeryShelf shelf = open_shelf(options.stationery);
    const std::optional<StationeryChoice> choice = chosen_stationery(options.stationery, shelf);
    if (!choice) return kUsage;
    const ReadResult read = read_profile(profile);
    if (const auto fault = shelf.fault_of_region(read.profile, profile)) {
        print_findings({*fault}, &profile, {}, options.quiet, options.unmasked);
        return kFindings;
    }
    const Stationery* chosen = without_faults(shelf.for_home(read.profile, *choice, &from.record), options.quiet);
    if (chosen == nullptr) return kUnusable;
    const Stationery& stationery = *chosen;
    require_translated(stationery, stationery.in_order());
    Measurer measurer;
    const std::string& target = options.folder.empty() ? options.from : options.folder;  // a dry run needs none
    const UpdatedHome home = update_home(profile, options.on, from, target, stationery, measurer);
    print_findings(home.findings, &profile, stationery.sources, options.quiet, options.unmasked);
    if (!home.refused && !options.dry_run) write(home, options.folder);
    if (!options.quiet) print_plan(home, from, stationery, options);
    if (!home.refused) return kDone;
    fmt::print(stderr, "{}: nothing printed: {}\n", options.profile, summary_line(home.findings));
    return kFindings;
}

}  // namespace

int update_command(const UpdateOptions& options) {
    if (options.folder.empty() && !options.dry_run) {
        fmt::print(stderr,
                   "ventfolio: say with -o where the new packet goes, or ask with --dry-run what would change\n");
        return kUsage;
    }
    std::error_code error;
    if (!options.folder.empty() && std::filesystem::equivalent(options.from, options.folder, error)) {
        fmt::print(stderr, "ventfolio: the new packet needs a folder of its own; the old one stays as it is\n");
        return kUsage;
    }
    return update_one(options);
}

}  // namespace ventfolio
