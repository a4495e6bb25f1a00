#pragma once

#include "sheets/template_data.hpp"

namespace ventfolio {

/// Which names print something else in one prescription than in another, under the name `differs`: `differs.rate`,
/// `differs.alarms.high_pressure` … A value that only some of them have differs too. `differs.any_alarm`: at least one
/// limit does.
TemplateData differing_names(const TemplateData& prescriptions);
/// Which names print something in at least one prescription, under the name `in_use`.
TemplateData names_in_use(const TemplateData& prescriptions);

}  // namespace ventfolio
