#pragma once

#include <vector>

#include "profile/finding.hpp"
#include "profile/profile.hpp"

namespace ventfolio {

/// What the rule book says about an update: `now` is printed over the packet that was made of `was`. `source` is the
/// text `now` was read from, and every finding points into it. The rules over `now` alone are in judge().
///
/// Errors   none: a rule that needs a value that a profile does not have is silent.
/// Example  now with the revision of the packet -> revision-not-raised, at orders.revision
std::vector<Finding> judge_update(const Profile& was, const Profile& now, const SourceText& source, Date on);

}  // namespace ventfolio
