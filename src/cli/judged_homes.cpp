#include "cli/judged_homes.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "cli/given_homes.hpp"
#include "cli/world.hpp"
#include "profile/refusal.hpp"
#include "rules/report_text.hpp"

namespace ventfolio {

int for_each_judged_home(const std::vector<std::string>& names, Date on,
                         const std::function<void(const JudgedHome&)>& judged,
                         const std::function<void(const std::string& file, const std::string& reason)>& unusable) {
    int status = kDone;
    const auto cannot_use = [&](const std::string& file, const std::string& reason) {
        fmt::print(stderr, "{}: {}\n", file, reason);
        unusable(file, reason);
        status = kUnusable;
    };
    const FoundHomes found = given_homes(names);
    for (const UnusableName& name : found.unusable) cannot_use(name.name, name.reason);
    for (const std::string& file : found.files) {
        SourceText source;
        try {
            source = read_file(file);
        } catch (const UnusableFile& fault) {
            cannot_use(file, without_name(fault.what(), file));
            continue;
        }
        const CheckedHome home = check_home(source, on);
        std::string refusal;
        if (any_refuses(home.findings)) {
            refusal = "refused: " + summary_line(home.findings);
            fmt::print(stderr, "{}: {}\n", file, refusal);
            status = std::max(status, kFindings);
        }
        judged({file, home, std::move(refusal)});
    }
    return status;
}

}  // namespace ventfolio
