#pragma once

#include <vector>

#include "profile/finding.hpp"
#include "profile/profile.hpp"

namespace ventfolio {

/// A profile as far as it could be read, and what is wrong with it. With a finding of severity refuse the profile has
/// holes; with none of them all that read_described promises holds.
struct ReadResult {
    Profile profile;
    std::vector<Finding> findings;
};

/// Reads one person's profile from YAML. Never throws for what the text holds, whatever that is.
ReadResult read_profile(const SourceText& source);

}  // namespace ventfolio
