#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the records and letters need beside the fields.
///
/// For each caregiver `renew_by`, the day until which a sign-off counts. For the letters `utility_letter_agreed` and
/// `fire_letter_agreed` (signed permission with its date), `needs_every_breath`, `has_batteries`, and how long the
/// batteries of the unit at the bed last, as a band and never in minutes: `battery_under_two_hours`,
/// `battery_two_to_eight_hours`, `battery_over_eight_hours`, `battery_time_unknown`.
void add_record_data(TemplateData::Object& data, const Household& household, const Printer& printer);

}  // namespace ventfolio
