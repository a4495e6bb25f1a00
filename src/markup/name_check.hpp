#pragma once

#include <vector>

#include "markup/faults.hpp"
#include "markup/scope.hpp"

namespace ventfolio {

/// Refuses names that the data does not declare, values that are missing where they would be printed, and lists,
/// objects and flags that would be printed.
///
/// Sections that are skipped for this home are read too. What cannot be known there: the names of the items of an empty
/// list, and of a section whose name has nothing to say for this home, since that may stand for a value, an object or a
/// list. It is known to be a value if the section prints it.
void check_names(const std::vector<TemplateNode>& nodes, Scope& scope, Faults& faults);

}  // namespace ventfolio
