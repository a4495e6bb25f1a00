#include "judged_fragment.hpp"

#include <fmt/format.h>

#include <set>
#include <stdexcept>

#include "markup/template.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {

std::vector<Finding> judged_fragment(const Fragment& fragment) {
    Stationery own = stationery();
    const std::string sheet{fragment.sheet};
    own.sheets.clear();
    own.sheets.emplace(
        sheet, parse_template({"own/" + sheet + ".md", fmt::format("---\ntitle: Sheet\naudience: {}\n---\n\n{}\n",
                                                                   fragment.audience, fragment.words)},
                              {}));
    const SourceText profile = edited_profile(fragment.home, fragment.edits);
    const Date on = *Date::parse(fragment.on);
    const CheckedHome checked = check_home(profile, on);
    for (const Finding& finding : checked.findings)
        if (!checked.readable) throw std::runtime_error{finding.message};
    std::vector<Finding> findings;
    const std::vector<Document> documents =
        make_documents(Household{checked.profile, on}, checked.findings, own, {sheet}, findings);
    if (documents.empty()) throw std::runtime_error{findings.front().message};
    return findings;
}

std::string rules_of(const std::vector<Finding>& findings) {
    std::set<std::string> names;
    for (const Finding& finding : findings) names.insert(finding.rule);
    return joined(std::vector<std::string>{names.begin(), names.end()}, " ");
}

}  // namespace ventfolio::testing
