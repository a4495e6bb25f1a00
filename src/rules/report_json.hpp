#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>

#include "profile/finding.hpp"

namespace ventfolio {

/// Findings as data: {"findings": [{rule, severity, accepted, message, marks, numbers, why, to_do, source, stops}],
/// "counts": {"refuse": 1, …}}. Lines and columns count from 1; begin and end are byte offsets.
nlohmann::ordered_json report_json(std::span<const Finding> findings);

}  // namespace ventfolio
