#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "rules/report_json.hpp"
#include "rules/report_text.hpp"

namespace ventfolio {
namespace {

bool stops(const Finding& finding, bool strict) {
    if (finding.severity == Severity::refuse) return true;
    return strict && finding.severity == Severity::acknowledge && !finding.accepted;
}

}  // namespace

int check_command(const CheckOptions& options) {
    std::vector<SourceText> sources;
    std::vector<Finding> all;
    bool stopped = false;
    bool unusable = false;
    for (const std::string& name : options.profiles) {
        try {
            sources.push_back(read_file(name));
        } catch (const UnusableFile& fault) {
            fmt::print(stderr, "ventfolio: {}\n", fault.what());
            unusable = true;
            continue;
        }
        const std::vector<Finding> findings = check_home(sources.back(), options.on).findings;
        stopped =
            stopped || std::ranges::any_of(findings, [&](const Finding& one) { return stops(one, options.strict); });
        if (!options.json) {
            print_findings(findings, &sources.back(), {}, options.quiet);
            fmt::print(stderr, "{}: {}\n", name, summary_line(findings));
        }
        all.insert(all.end(), findings.begin(), findings.end());
    }
    if (options.json) fmt::print("{}", report_json(all).dump(2) + "\n");
    return unusable ? kUnusable : stopped ? kFindings : kDone;
}

}  // namespace ventfolio
