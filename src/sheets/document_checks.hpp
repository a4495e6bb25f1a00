#pragma once

#include <vector>

#include "profile/audience.hpp"
#include "profile/finding.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// Judges a finished sheet, whoever wrote its template. Findings name the template's file and line.
///
///   private-fact-in-wrong-place  a value stands on a sheet for an audience that its field does not list
///   misreadable-number           a number without leading zero, with a trailing zero, or with < or >
void check_document(const Document& document, Audience audience, std::vector<Finding>& findings);

}  // namespace ventfolio
