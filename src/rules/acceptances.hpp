#pragma once

#include <string>
#include <vector>

#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "rules/report.hpp"

namespace ventfolio {

/// Marks the findings that the profile accepts, and reports acceptances that do not fit.
///
/// An acceptance counts for a finding when rule and prescription (if it names one) are the finding's and every number
/// that it covers still reads the same. A finding with figures in it is accepted only by an acceptance that covers at
/// least one of them: otherwise nobody could tell what was accepted.
void apply_acceptances(const Household& home, const FieldIndex& index, const std::string& file,
                       std::vector<Finding>& findings);

}  // namespace ventfolio
