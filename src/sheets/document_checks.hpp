#pragma once

#include <vector>

#include "profile/audience.hpp"
#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "sheets/checks/phrases.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// Judges a finished sheet by the rules of finished sheets, whoever wrote its template: `ventfolio list rules` names
/// them, src/rules/book/finished_sheets.yaml says why. Findings name the template's file and line; a private value in a
/// quoted sentence shows as the name of its field.
///
/// `home` is the home that the sheet is for, `phrases` those of the sheet's language.
void check_document(const Document& document, Audience audience, const Household& home, const PhraseBook& phrases,
                    std::vector<Finding>& findings);

}  // namespace ventfolio
