#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the records and letters need beside the fields.
///
/// For each caregiver: `renew_by`, the day until which a sign-off counts.
void add_record_data(TemplateData::Object& data, const Household& household, const Printer& printer);

}  // namespace ventfolio
