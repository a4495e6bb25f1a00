#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "caseload/homes.hpp"
#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "profile/refusal.hpp"
#include "rules/report_json.hpp"
#include "rules/report_text.hpp"

namespace ventfolio {
namespace {

using State = FileReport::State;

bool stops(const Finding& finding, bool strict) {
    if (refuses(finding)) return true;
    return strict && finding.severity == Severity::acknowledge && !finding.accepted;
}

FileReport checked_file(const std::string& name, const CheckOptions& options, const StationeryShelf& shelf,
                        const StationeryChoice& choice, const Stationery*& used) {
    FileReport file;
    file.file = name;
    try {
        file.source = read_file(name);
        file.source.text.shrink_to_fit();  // it was made for the largest profile, and all are kept for the report
    } catch (const UnusableFile& fault) {
        file.state = State::unusable;
        file.message = without_name(fault.what(), name);
        return file;
    }
    ReadResult read = read_profile(file.source);
    if (auto fault = shelf.fault_of_region(read.profile, file.source)) read.findings.push_back(std::move(*fault));
    const ShelvedStationery& chosen = shelf.for_home(read.profile, choice);
    used = &chosen.stationery;
    const CheckedHome home = check_home(std::move(read), file.source, options.on, &used->region);
    file.findings = home.findings;
    const std::vector<Finding> of_sheets =
        chosen.faults.empty() ? check_sheets(home, options.on, chosen.stationery) : chosen.faults;
    file.findings.insert(file.findings.end(), of_sheets.begin(), of_sheets.end());
    if (std::ranges::any_of(file.findings, [&](const Finding& one) { return stops(one, options.strict); }))
        file.state = State::stopped;
    return file;
}

int status_of(const std::vector<FileReport>& files) {
    const auto any = [&](State state) { return std::ranges::find(files, state, &FileReport::state) != files.end(); };
    return any(State::unusable) ? kUnusable : any(State::stopped) ? kFindings : kDone;
}

void print_summary(const std::vector<FileReport>& files) {
    for (const FileReport& file : files) {
        const std::string said = file.state == State::unusable ? file.message : summary_line(file.findings);
        fmt::print(stderr, "{}: {}: {}\n", file.file, name_of(file.state), said);
    }
    if (files.size() < 2) return;
    const auto count = [&](State state) { return std::ranges::count(files, state, &FileReport::state); };
    fmt::print(stderr, "{} profiles: {} ready, {} stopped, {} unusable\n", files.size(), count(State::ready),
               count(State::stopped), count(State::unusable));
}

}  // namespace

int check_command(const CheckOptions& options) {
    const StationeryShelf shelf = open_shelf(options.stationery);
    const std::optional<StationeryChoice> choice = chosen_stationery(options.stationery, shelf);
    if (!choice) return kUsage;
    std::vector<std::string> names = options.profiles;
    std::ranges::sort(names);
    names.erase(std::unique(names.begin(), names.end()), names.end());

    CheckReport report{options.on, options.strict, options.unmasked, kDone, {}};
    for (const std::string& name : names) {
        const Stationery* used = nullptr;
        report.files.push_back(checked_file(name, options, shelf, *choice, used));
        const FileReport& file = report.files.back();
        if (!options.json && used != nullptr)
            print_findings(file.findings, &file.source, used->sources, options.quiet, options.unmasked);
    }
    report.status = status_of(report.files);
    if (options.json)
        fmt::print("{}\n", check_json(report).dump(2));
    else
        print_summary(report.files);
    return report.status;
}

}  // namespace ventfolio
