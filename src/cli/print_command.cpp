#include <fmt/format.h>
#include <algorithm>
#include <filesystem>
#include <map>

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "packet/folder_writer.hpp"
#include "pdf/pdf_error.hpp"
#include "rules/report_text.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

bool known_sheets(const PrintOptions& options, const Stationery& stationery) {
    const std::vector<std::string> names = stationery.in_order();
    for (const std::string& sheet : options.order.sheets) {
        if (std::ranges::find(names, sheet) != names.end()) continue;
        const auto near = nearest(sheet, names);
        fmt::print(stderr, "ventfolio: there is no sheet \"{}\"{}; the sheets are: {}\n", sheet,
                   near ? fmt::format(", did you mean \"{}\"?", *near) : "", joined(names, ", "));
        return false;
    }
    return true;
}

/// Paper with the hours of one night may not get into a folder that stays.
bool outage_start_fits(const PrintOptions& options) {
    const bool plan_only = options.order.sheets == std::vector<std::string>{"outage-plan"};
    if (!options.order.outage_start || plan_only) return true;
    fmt::print(stderr, "ventfolio: --outage-start is for one outage; use it with --sheet outage-plan alone\n");
    return false;
}

/// Which profile of this run has a record number already.
using KnownRecords = std::map<std::string, std::string>;

int print_one(const std::string& name, const PrintOptions& options, const Stationery& stationery, Measurer& measurer,
              KnownRecords& known) {
    const SourceText profile = read_file(name);
    const PrintedHome home = print_home(profile, options.on, options.order, stationery, measurer);
    print_findings(home.findings, &profile, stationery.sources, options.quiet);
    for (const std::string& sheet : home.missing_sheets)
        fmt::print(stderr, "{}: there is no {} for this home; see what the findings say\n", name, sheet);
    if (home.refused) {
        fmt::print(stderr, "{}: nothing printed: {}\n", name, summary_line(home.findings));
        return kFindings;
    }
    const auto [first, is_new] = known.emplace(home.record.record_number, name);
    if (!is_new) {
        fmt::print(stderr, "{}: nothing printed: record number {} is already that of {}\n", name,
                   home.record.record_number, first->second);
        return kFindings;
    }
    const std::filesystem::path folder{options.folder};
    FolderOrder order;
    order.target = options.profiles.size() > 1 ? folder / home.record.record_number : folder;
    order.record_number = home.record.record_number;
    order.revision = home.record.revision;
    const std::optional<PacketFolder> before = packet_to_replace(order.target);
    const std::vector<FolderFile> files = folder_files(home, profile, before ? &*before : nullptr);
    order.files = files;
    order.other_files = options.order.sheets.empty() ? OtherFiles::leave_behind : OtherFiles::carry_over;
    write_folder(order);
    if (!options.quiet)
        fmt::print("{}: {} sheets, {} pages, in {}\n", home.record.record_number, home.record.sheets.size(), home.pages,
                   order.target.string());
    return kDone;
}

}  // namespace

int print_command(const PrintOptions& options) {
    std::vector<Finding> faults;
    const Stationery stationery = built_in_stationery("en", "us", faults);
    if (!faults.empty()) {
        print_findings(faults, nullptr, stationery.sources, options.quiet);
        return kUnusable;
    }
    if (!known_sheets(options, stationery) || !outage_start_fits(options)) return kUsage;
    Measurer measurer;
    KnownRecords known;
    int status = kDone;
    for (const std::string& name : options.profiles) {
        try {
            status = std::max(status, print_one(name, options, stationery, measurer, known));
        } catch (const std::runtime_error& fault) {  // the world: a file, a folder, the disk
            fmt::print(stderr, "ventfolio: {}\n", fault.what());
            status = kUnusable;
        }
    }
    return status;
}

}  // namespace ventfolio
