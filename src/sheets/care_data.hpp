#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What the care schedule says, under the name `care`. Entries keep the names of the profile's own care tasks.
///
///   daily     tasks by words such as "every shift"; `longer` those whose words speak of weeks or months
///   dated     tasks by interval, the next one due first: `every`, `last_done`, `due` (missing if never done), `once`,
///             `fixed`,
///             and one of `is_task`, `is_tube`, `is_service`, `is_retest`, `is_registration`; `what` names unit or
///             battery
///   overdue   those of them whose day has passed, with `since`
///   weeks     the month from the week of the print date, Monday first: `days`, each with `day` and `tasks`
///   methods   tasks with a way of cleaning or drying: `method`
///
/// Due dates are last done plus interval and do not depend on the print date; `overdue` and `weeks` do.
TemplateData care_data(const TemplateData::Object& profile, const Household& home, const Printer& printer);

}  // namespace ventfolio
