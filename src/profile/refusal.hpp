#pragma once

#include <algorithm>
#include <span>

#include "profile/finding.hpp"

namespace ventfolio {

/// Whether a finding stops the sheets that its rule names.
inline bool refuses(const Finding& finding) { return finding.severity == Severity::refuse; }

/// Whether one of the findings does.
inline bool any_refuses(std::span<const Finding> findings) { return std::ranges::any_of(findings, refuses); }

}  // namespace ventfolio
