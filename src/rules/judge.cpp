#include "rules/judge.hpp"

#include <algorithm>
#include <tuple>

#include "rules/acceptances.hpp"
#include "rules/report.hpp"
#include "rules/rule_book.hpp"

namespace ventfolio {

std::vector<Finding> judge(const Profile& profile, const SourceText& source, Date on) {
    return judge(Household{profile, on}, source);
}

std::vector<Finding> judge(const Household& home, const SourceText& source) {
    const FieldIndex index{home.profile};
    std::vector<Finding> findings;
    for (const RuleText& rule : rule_book()) {
        if (rule.check == nullptr) continue;
        Report report{rule, index, source.name, findings};
        rule.check(home, report);
        report.finish();
    }
    apply_acceptances(home, index, source.name, findings);
    sort_by_place(findings);
    return findings;
}

void sort_by_place(std::vector<Finding>& findings) {
    std::ranges::stable_sort(findings, [](const Finding& a, const Finding& b) {
        const Place place_a = a.marks.empty() ? Place{} : a.marks.front().place;
        const Place place_b = b.marks.empty() ? Place{} : b.marks.front().place;
        return std::tuple{place_a.line, place_a.column, b.severity} <
               std::tuple{place_b.line, place_b.column, a.severity};
    });
}

std::set<std::string> stopped_sheets(std::span<const Finding> findings) {
    std::set<std::string> stopped;
    for (const Finding& finding : findings) {
        if (finding.severity != Severity::refuse) continue;
        const RuleText* rule = find_rule(finding.rule);
        const auto sheets = rule == nullptr ? sheet_names() : rule->stops;
        stopped.insert(sheets.begin(), sheets.end());
    }
    return stopped;
}

bool not_yet_checked(std::span<const Finding> findings, const Profile& profile) {
    return !double_checked(*profile.orders) || std::ranges::any_of(findings, [](const Finding& finding) {
        return finding.severity == Severity::acknowledge && !finding.accepted;
    });
}

}  // namespace ventfolio
