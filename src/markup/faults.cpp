#include "markup/faults.hpp"

#include <algorithm>

namespace ventfolio {

void Faults::refuse(Fault fault) {
    more_ = more_ || findings_.size() == kMost;
    if (more_) return;
    const SourceText& file = files_[fault.span.file];
    const Place place = file.place(fault.span.begin, fault.span.end);
    const auto same = [&](const Finding& known) {
        return known.rule == fault.rule && known.marks.front().file == file.name && known.marks.front().place == place;
    };
    if (std::ranges::any_of(findings_, same)) return;
    Finding finding;
    finding.rule = fault.rule;
    finding.severity = Severity::refuse;
    finding.marks.push_back({file.name, place, std::move(fault.field), std::move(fault.label)});
    finding.message = std::move(fault.message);
    finding.to_do = std::move(fault.to_do);
    findings_.push_back(std::move(finding));
}

std::vector<Finding> Faults::take() {
    if (more_) {
        Finding rest;
        rest.rule = "more-faults-than-listed";
        rest.marks.push_back(findings_.back().marks.front());
        rest.marks.back().label = "the last that is listed";
        rest.message = "The template has more faults than these.";
        findings_.push_back(std::move(rest));
    }
    return std::move(findings_);
}

}  // namespace ventfolio
