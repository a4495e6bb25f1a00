#pragma once

#include "rules/household.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What decides which steps an alarm chart has, for the home as a whole: its equipment in any prescription, and the
/// worse of breathing alone awake and asleep.
///
/// `alone_none|minutes|hours`, `alone_time` (the safe minutes); `single_hose_with_port`, `hose_port`, `mask_port`,
/// `small_lines`, `two_hoses`, `open_mouthpiece`; `pressure_modes`, `volume_modes`; `heats_water`, `water_traps`,
/// `wet_exchanger` (one is on the ventilator); `covers_mouth` (a mask does); `mask_or_mouthpiece`; `air_cuff` (one that
/// can be filled); `valve_in_line` (a speaking valve is used on the ventilator); `can_suction_mouth`; `has_oximeter`;
/// `has_cough_device`; `has_concentrator`; `has_spare_hose`; `fed_by_tube`.
void add_alarm_data(TemplateData::Object& data, const Household& home, const Printer& printer);

}  // namespace ventfolio
