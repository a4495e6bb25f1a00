#include <fmt/format.h>
#include <algorithm>
#include <filesystem>
#include <set>
#include <span>
#include <system_error>

#include "caseload/print_homes.hpp"
#include "caseload/print_summary.hpp"
#include "cli/commands.hpp"
#include "cli/given_homes.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "cli/world.hpp"
#include "rules/report_text.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

bool known_sheets(const PrintOptions& options, const StationeryShelf& shelf) {
    const std::vector<std::string> names = shelf.sheets();
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

/// A single file is printed into the folder itself; anything that can mean several homes into folders below it.
bool can_mean_several(const PrintOptions& options) {
    const auto is_several = [](const std::string& name) {
        std::error_code ignored;  // said when the file is read
        return name == "-" || std::filesystem::is_directory(name, ignored);
    };
    return options.profiles.size() > 1 || options.shard || std::ranges::any_of(options.profiles, is_several);
}

CaseloadOrder caseload_order(const PrintOptions& options, StationeryChoice choice) {
    return {
        given_homes(options.profiles), options.shard,  options.on,   options.order, std::move(choice), options.folder,
        can_mean_several(options),     options.resume, options.jobs, read_file};
}

std::span<const SourceText> templates_of(const HomeResult& home) {
    return home.stationery != nullptr ? std::span<const SourceText>{home.stationery->sources}
                                      : std::span<const SourceText>{};
}

int status_of(Outcome outcome) {
    if (outcome == Outcome::unusable) return kUnusable;
    return outcome == Outcome::refused ? kFindings : kDone;
}

/// Tells of one home all that there is to say.
class OneTold {
  public:
    explicit OneTold(const PrintOptions& options) : options_{options} {}

    void operator()(const HomeResult& home) {
        const HomeOutcome& outcome = home.outcome;
        status_ = status_of(outcome.outcome);
        print_findings(home.findings, &home.profile, templates_of(home), options_.quiet);
        for (const std::string& sheet : home.missing_sheets)
            fmt::print(stderr, "{}: there is no {} for this home; see what the findings say\n", outcome.file, sheet);
        if (outcome.outcome == Outcome::refused)
            fmt::print(stderr, "{}: nothing printed: {}\n", outcome.file, summary_line(home.findings));
        if (outcome.outcome == Outcome::unusable) fmt::print(stderr, "ventfolio: {}\n", home.fault);
        if (options_.quiet) return;
        if (outcome.outcome == Outcome::printed)
            fmt::print("{}: {} sheets, {} pages, in {}\n", outcome.record_number, outcome.sheets, outcome.pages,
                       outcome.folder);
        if (outcome.outcome == Outcome::current)
            fmt::print("{}: current, in {}\n", outcome.record_number, outcome.folder);
    }

    int status() const { return status_; }

  private:
    const PrintOptions& options_;
    int status_ = kDone;
};

/// Tells of many homes a line each, and of those that findings stop the findings. What prints is told by `check`.
class ManyTold {
  public:
    ManyTold(const PrintOptions& options, std::size_t count)
        : options_{options},
          count_{count},
          summary_{options.summary.value_or(SummaryForm::text), options.on, options.shard,
                   options.quiet && !options.summary},
          progress_{!options.quiet && standard_error_is_terminal()} {}

    void read(std::size_t done, std::size_t of) { progress_.read(done, of); }

    void home(const HomeResult& home) {
        progress_.take_away();
        status_ = std::max(status_, status_of(home.outcome.outcome));
        if (home.outcome.outcome == Outcome::refused || is_first_with_these_templates(home))
            print_findings(home.findings, &home.profile, templates_of(home), options_.quiet);
        say(summary_.of(home.outcome));
        progress_.printed(summary_.count(), count_,
                          summary_.count(Outcome::refused) + summary_.count(Outcome::unusable));
    }

    int end() {
        progress_.take_away();
        say(summary_.end(status_));
        return status_;
    }

  private:
    /// What is wrong with templates is told once, not with each of a thousand homes that need them.
    bool is_first_with_these_templates(const HomeResult& home) {
        return home.outcome.outcome == Outcome::unusable && !home.findings.empty() &&
               templates_told_.insert(home.stationery).second;
    }

    static void say(const std::string& text) {
        fmt::print("{}", text);
        if (standard_output_is_terminal()) std::fflush(stdout);  // before the next line on standard error
    }

    const PrintOptions& options_;
    std::size_t count_;
    PrintSummary summary_;
    Progress progress_;
    int status_ = kDone;
    std::set<const Stationery*> templates_told_;
};

int print_one(const CaseloadOrder& order, const PrintOptions& options, const StationeryShelf& shelf) {
    OneTold told{options};
    print_homes(order, shelf, {std::ref(told), {}});
    return told.status();
}

int print_many(const CaseloadOrder& order, const PrintOptions& options, const StationeryShelf& shelf) {
    const FoundHomes homes = homes_of(order);
    ManyTold told{options, homes.files.size() + homes.unusable.size()};
    print_homes(order, shelf,
                {[&](const HomeResult& home) { told.home(home); },
                 [&](std::size_t done, std::size_t of) { told.read(done, of); }});
    return told.end();
}

}  // namespace

int print_command(const PrintOptions& options) {
    const StationeryShelf shelf = open_shelf(options.stationery);
    std::optional<StationeryChoice> choice = chosen_stationery(options.stationery, shelf);
    if (!choice || !known_sheets(options, shelf) || !outage_start_fits(options)) return kUsage;
    const CaseloadOrder order = caseload_order(options, std::move(*choice));
    const bool tell_one = !order.by_record_number && !options.summary;
    return tell_one ? print_one(order, options, shelf) : print_many(order, options, shelf);
}

}  // namespace ventfolio
