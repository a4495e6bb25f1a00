#include <fmt/format.h>
#include <algorithm>

#include "caseload/outage_paper.hpp"
#include "cli/commands.hpp"
#include "cli/judged_homes.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "rules/judge.hpp"

namespace ventfolio {
namespace {

/// What stops the outage plan of a home stops its hours, too.
bool may_be_judged(const CheckedHome& home) {
    return home.readable && !stopped_sheets(home.findings).contains("outage-plan");
}

HomeInOutage in_outage(const JudgedHome& judged, Date on) {
    if (!may_be_judged(judged.home)) return home_not_judged(judged.file, judged.refusal, judged.home.profile);
    return home_in_outage(judged.file, Household{judged.home.profile, on});
}

int write_paper(const std::vector<HomeInOutage>& homes, const OutageOptions& options, const StationeryShelf& shelf,
                const StationeryChoice& choice) {
    const Stationery* stationery = without_faults(at_choice(shelf, choice), false);
    if (stationery == nullptr) return kUnusable;
    std::vector<Finding> faults;
    Measurer measurer;
    const Paper usual = PrintOrder{}.setup(*stationery).paper;
    const std::string bytes =
        outage_paper(homes, options.question, *stationery, options.size.value_or(usual), measurer, faults);
    print_findings(faults, nullptr, stationery->sources, false);
    if (bytes.empty()) return kUnusable;
    write_output(options.output, bytes);
    return kDone;
}

}  // namespace

int outage_command(const OutageOptions& options) {
    if (options.paper && options.output.empty() && standard_output_is_terminal()) {
        fmt::print(stderr, "ventfolio: a PDF is nothing for a terminal; write it to a file with -o FILE\n");
        return kUsage;
    }
    const StationeryShelf shelf = open_shelf(options.stationery);
    const std::optional<StationeryChoice> choice = chosen_stationery(options.stationery, shelf);
    if (!choice) return kUsage;
    std::vector<HomeInOutage> homes;
    const int status = for_each_judged_home(
        options.profiles, options.question.on,
        [&](const JudgedHome& judged) { homes.push_back(in_outage(judged, options.question.on)); },
        [&](const std::string& file, const std::string& reason) { homes.push_back(home_not_judged(file, reason)); });
    sort_for_calls(homes, options.question.needed);
    if (options.paper) return std::max(status, write_paper(homes, options, shelf, *choice));
    write_output(options.output,
                 options.csv ? outage_csv(homes, options.question) : outage_text(homes, options.question));
    return status;
}

}  // namespace ventfolio
