#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the outage plan says, under the name `outage`. `profile` is what profile_data made: entries of batteries,
/// cylinders and loads keep all their own names beside the new ones.
///
///   batteries     in the order of use: `number`, `from`, `to`, `lowered`, `retest_by`, and the battery's own fields
///   not_counted   batteries at the bed that were never timed
///   spares        units elsewhere: `label`, `time`, and for the chart `from`, `to`
///   cylinders     `number`, `several`, `each`, `from`, `to`, `even`, and the source's own fields
///   by_clock      in the order of time: `after`, `clock`, and one of `is_swap`, `is_takeover`, `is_cylinder`,
///                 `is_half`, `is_call`, `is_leave`, `is_last`; `number`, `next`, `used`
///   switch_off, keep_on, keep_if_possible   loads
///   no_battery    the unit at the bed stops at once; `has_sources`: there is something to count
///   leave_by, leave_now, half, time_left, power, reserve, share, lowered_share, any_lowered, flow, one_flow, heater,
///   concentrator, oxygen_ends_first; `started` and `leave_at` when the hour is known at which the power failed
TemplateData outage_data(const TemplateData::Object& profile, const Household& home, const Printer& printer);

}  // namespace ventfolio
