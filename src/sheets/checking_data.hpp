#pragma once

#include <span>

#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the record of the checking lists, for a sheet whose front matter says `lists: findings`.
///
/// `two_people_checked`; `found`: a finding each, with `kind`, `rule`, `message`, `to_do`, `is_accepted`; the counts
/// `count_refused`, `count_to_accept`, `count_accepted`, `count_warnings`, `count_rules`; `workings`: a calculation
/// each, with `what`, `about`, `worked`, `source`. To each item of `accepted` come `counts`, `counts_no_more` (a number
/// has changed) and `finds_nothing`.
///
/// Notes are for the terminal and stay out. A value that may not stand in the folder is not repeated, and a date of a
/// message prints as dates do.
void add_checking_data(TemplateData::Object& data, const Household& household, const Printer& printer,
                       std::span<const Finding> findings);

}  // namespace ventfolio
