#pragma once

#include "rules/household.hpp"
#include "rules/report.hpp"

namespace ventfolio::check {

/// The part of setting-given-twice-differently that compares an inspiratory time with a stated ratio.
void report_breath_ratio_differences(const Household& home, Report& report);

}  // namespace ventfolio::check
