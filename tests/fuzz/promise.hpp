#pragma once

#include <fmt/format.h>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"

/// What must hold whatever the bytes are. A broken promise ends the program, so that libFuzzer keeps the input.
namespace ventfolio::fuzz {

inline void promise(bool kept, std::string_view what, std::string_view where = {}) {
    if (kept) return;
    fmt::print(stderr, "broken promise: {}\n{}\n", what, where);
    std::abort();
}

/// Every finding has a rule, words and a place in one of the texts that were read; `longest` is the size of the
/// largest.
inline void check_findings(const std::vector<Finding>& findings, std::size_t longest) {
    for (const Finding& finding : findings) {
        promise(!finding.rule.empty() && !finding.message.empty(), "a finding has a rule and words", finding.rule);
        promise(!finding.marks.empty(), "a finding points somewhere", finding.rule);
        for (const Mark& mark : finding.marks) {
            promise(mark.place.known(), "a finding has a line", finding.rule);
            promise(mark.place.begin <= mark.place.end && mark.place.end <= longest, "a finding points into the text",
                    finding.rule);
        }
    }
}

inline bool any_refuses(const std::vector<Finding>& findings) {
    for (const Finding& finding : findings)
        if (finding.severity == Severity::refuse) return true;
    return false;
}

}  // namespace ventfolio::fuzz
