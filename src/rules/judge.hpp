#pragma once

#include <set>
#include <span>
#include <string>
#include <vector>

#include "profile/finding.hpp"
#include "profile/profile.hpp"
#include "rules/household.hpp"

namespace ventfolio {

/// What the rule book says about a profile on a day: every check, then the acceptances of the profile. `source` is the
/// text the profile was read from. Findings stand in the order of the file; those of the reader are not among them.
///
/// Errors   none: a rule that needs a value that the profile does not have is silent.
std::vector<Finding> judge(const Profile& profile, const SourceText& source, Date on);
std::vector<Finding> judge(const Household& home, const SourceText& source);

/// In the order of their first marks; of one place the more severe first.
void sort_by_place(std::vector<Finding>& findings);
/// Sheets that the refusals among the findings stop. A refusal that the book does not have stops all.
std::set<std::string> stopped_sheets(std::span<const Finding> findings);
/// Whether every page must say "not yet checked": an acknowledge is open, or the two names behind the orders are
/// missing, which no acceptance replaces.
bool not_yet_checked(std::span<const Finding> findings, const Profile& profile);
/// Two different people stand behind the orders; titles, capitals and blanks do not make a difference.
bool double_checked(const Orders& orders);

}  // namespace ventfolio
