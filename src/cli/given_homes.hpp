#pragma once

#include <string>
#include <vector>

#include "caseload/homes.hpp"

namespace ventfolio {

/// The profiles that the names of a command line mean; for "-" the names on standard input.
FoundHomes given_homes(const std::vector<std::string>& names);

}  // namespace ventfolio
