#pragma once

#include <optional>
#include <span>

#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// All that a template can name for one home: every field of the profile (see profile_data.hpp) and, beside them, what
/// follows from the fields. Calculated values stand under names of their own and never replace what was ordered.
///
/// For the whole home: `age`, `is_child`, `awake_none|minutes|hours`, `asleep_…`, `alone_awake`, `alone_asleep` (the
/// safe minutes), `squeeze` (seconds between squeezes of the bag), `has_oxygen`, `bag_oxygen`, `has_exchanger`,
/// `valve_or_cap`, `opening_fresh`, `mouth_open|blocked|unknown`, `uses_neck_tube|mask|mouthpiece`, `has_backup`,
/// `backup_label`, `no_batteries` (there are none, and that is recorded), `many_places`, `cuffed`, `cuff_not_recorded`,
/// `oxygen_least_awake|asleep`, `oxygen_to_inlet|outlet|mask`, `from_concentrator|cylinder|liquid`, `oxygen_way_known`,
/// `sleep_tag`, `main` (the prescription for sleep, else the first). For each prescription: `peak`, `peak_range`,
/// `support`, `pressure_range`, `in_chair`, `on_wall_power`, `oxygen_here`, `vented`, `port_in_hose`, `used`, `unit`,
/// `slot`, `spare_units`, `others`, `squeeze`, `accepted_…`, `sleeping`.
///
/// For some sheets: `outage` (outage_data.hpp), `care` (care_data.hpp), `stock` (supply_data.hpp); `differs` and
/// `in_use` for each name of a prescription (switch_data.hpp).
///
/// What alarm charts ask of a home: see alarm_data.hpp. `leaf.NAME`, the numbers of this home's leaves of a sheet, is
/// added where documents are made.
///
/// For each rule whose gap stands in bold on a sheet: `gap_RULE` (with underscores), and for each such sheet
/// `gaps_on_SHEET` if it has any: accepted or not, the family must see what is not there.
TemplateData home_data(const Household& household, const Printer& printer, std::span<const Finding> findings);

/// "47 years", below two years "14 months", on the day of print; nothing where the birth date is not given.
std::optional<PrintedValue> printed_age(const Household& household, const Printer& printer);

}  // namespace ventfolio
