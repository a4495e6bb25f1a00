#include "profile/finding_list.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <tuple>

namespace ventfolio {
namespace {

auto order(const Finding& finding) {
    return std::tie(finding.marks.front().place, finding.rule, finding.message, finding.marks.front().field);
}

}  // namespace

void FindingList::add(Severity severity, Remark remark) {
    if (full()) {
        ++left_out_;
        return;
    }
    Finding finding;
    finding.rule = std::move(remark.rule);
    finding.severity = severity;
    finding.marks.push_back({file_, remark.place, std::move(remark.field), std::move(remark.label)});
    finding.message = std::move(remark.message);
    finding.to_do = std::move(remark.to_do);
    findings_.push_back(std::move(finding));
}

std::vector<Finding> FindingList::sorted() && {
    std::ranges::stable_sort(findings_, {}, order);
    const auto same = [](const Finding& a, const Finding& b) { return order(a) == order(b); };
    findings_.erase(std::unique(findings_.begin(), findings_.end(), same), findings_.end());
    if (left_out_ > 0) {
        Finding rest;
        rest.rule = "more-faults-than-listed";
        rest.marks.push_back({file_, findings_.back().marks.front().place, "", "and so on"});
        rest.message = fmt::format("{} more faults are not listed.", left_out_);
        rest.to_do = "Mend the ones above, then check again.";
        findings_.push_back(std::move(rest));
    }
    return std::move(findings_);
}

}  // namespace ventfolio
