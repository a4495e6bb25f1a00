#pragma once

#include <vector>

#include "packet/stationery.hpp"

namespace ventfolio {

/// What a translation lacks, or has and the first language has not: sheets and leaves, words, names of values and
/// sections, and of each section of a sheet the number of its list items, table rows and call-outs. Each fault is a
/// finding at the line of the one that has more.
void compare_translation(const Stationery& first, const Stationery& translation, std::vector<Finding>& findings);

}  // namespace ventfolio
