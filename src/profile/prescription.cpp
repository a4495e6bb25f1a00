#include "profile/prescription.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void TimeOfUse::describe(Visitor& visitor) {
    visitor.leaf({.key = "hours", .grade = Grade::essential, .on = wall | folder | crew, .help = "from when to when",
                  .ask = "family", .example = "8 PM to 9 AM"}, hours);
}

void VolumeAssured::describe(Visitor& visitor) {
    visitor.leaf({.key = "target_volume", .on = wall | folder | crew | wallet, .help = "volume of a breath to reach",
                  .units = "mL L", .least = 10, .most = 2500, .ask = "prescriber", .setting = true,
                  .example = "500 mL"}, target_volume);
    visitor.leaf({.key = "target_minute_volume", .on = wall | folder | crew | wallet,
                  .help = "volume per minute to reach, on machines that aim at it", .units = "L/min", .least = 0.5,
                  .most = 60, .ask = "prescriber", .setting = true, .example = "6 L/min"}, target_minute_volume);
    visitor.leaf({.key = "pressure_least", .on = wall | folder | crew | wallet,
                  .help = "lowest pressure the machine may use", .units = "cmH2O hPa mbar", .least = 0, .most = 60,
                  .ask = "prescriber", .setting = true, .example = "14 cmH2O"}, pressure_least);
    visitor.leaf({.key = "pressure_most", .on = wall | folder | crew | wallet,
                  .help = "highest pressure the machine may use", .units = "cmH2O hPa mbar", .least = 0, .most = 60,
                  .ask = "prescriber", .setting = true, .example = "22 cmH2O"}, pressure_most);
    visitor.leaf({.key = "speed", .on = wall | folder, .help = "how fast it moves, on the machine's own scale",
                  .ask = "prescriber", .setting = true, .longest = 40, .example = "2 of 5"}, speed);
}

void BackupBreaths::describe(Visitor& visitor) {
    visitor.leaf({.key = "rate", .grade = Grade::essential, .on = wall | folder | crew, .help = "their rate",
                  .units = "breaths/min", .least = 2, .most = 80, .ask = "prescriber", .setting = true,
                  .example = "12 breaths/min"}, rate);
    visitor.leaf({.key = "after", .on = wall | folder, .help = "after how long without a breath", .units = "s",
                  .least = 2, .most = 120, .ask = "prescriber", .setting = true, .example = "20 s"}, after);
    visitor.leaf({.key = "inspiratory_pressure", .on = wall | folder, .help = "their pressure, by the same reference",
                  .units = "cmH2O hPa mbar", .least = 0, .most = 60, .ask = "prescriber", .setting = true,
                  .example = "14 cmH2O"}, inspiratory_pressure);
    visitor.leaf({.key = "tidal_volume", .on = wall | folder, .help = "their volume", .units = "mL L", .least = 10,
                  .most = 2500, .ask = "prescriber", .setting = true, .example = "450 mL"}, tidal_volume);
    visitor.leaf({.key = "inspiratory_time", .on = wall | folder, .help = "their time in", .units = "s ms",
                  .least = 0.2, .most = 4, .ask = "prescriber", .setting = true,
                  .example = "1.1 s"}, inspiratory_time);
}

void ExpectedValues::describe(Visitor& visitor) {
    visitor.leaf({.key = "tidal_volume", .on = wall | folder | crew, .help = "volume of a breath", .units = "mL L",
                  .least = 5, .most = 3000, .ask = "clinic", .example = "{from: 440 mL, to: 520 mL}"}, tidal_volume);
    visitor.leaf({.key = "minute_volume", .on = wall | folder, .help = "volume per minute", .units = "L/min",
                  .least = 0.1, .most = 60, .ask = "clinic",
                  .example = "{from: 6.2 L/min, to: 8 L/min}"}, minute_volume);
    visitor.leaf({.key = "peak_pressure", .on = wall | folder, .help = "highest pressure of a breath, total",
                  .units = "cmH2O hPa mbar", .least = 2, .most = 80, .ask = "clinic",
                  .example = "{from: 21 cmH2O, to: 21 cmH2O}"}, peak_pressure);
    visitor.leaf({.key = "leak", .on = wall | folder, .help = "leak, with the exhalation port counted in",
                  .units = "L/min", .least = 0, .most = 150, .ask = "clinic",
                  .example = "{from: 28 L/min, to: 36 L/min}"}, leak);
    visitor.leaf({.key = "total_rate", .on = wall | folder, .help = "breaths per minute, the person's own counted in",
                  .units = "breaths/min", .least = 2, .most = 90, .ask = "clinic",
                  .example = "{from: 14 breaths/min, to: 16 breaths/min}"}, total_rate);
    visitor.leaf({.key = "measured_by", .grade = Grade::expected, .on = folder, .help = "who measured",
                  .ask = "clinic", .longest = 80, .example = "Odile Mbanefo, respiratory therapist"}, measured_by);
    visitor.leaf({.key = "measured_on", .grade = Grade::expected, .on = folder, .help = "when", .ask = "clinic",
                  .example = "2026-01-12"}, measured_on);
}

void PrescriptionOxygen::describe(Visitor& visitor) {
    visitor.leaf({.key = "flow", .on = wall | folder | crew | wallet, .help = "oxygen flow; 0 when none is used here",
                  .units = "L/min mL/min", .least = 0, .most = 25, .ask = "prescriber", .setting = true,
                  .example = "1 L/min"}, flow);
    visitor.leaf({.key = "fraction", .on = wall | folder | crew | wallet, .help = "oxygen fraction set on the machine",
                  .units = "%", .least = 21, .most = 100, .ask = "prescriber", .setting = true,
                  .example = "30 %"}, fraction);
}

void WrittenFor::describe(Visitor& visitor) {
    visitor.leaf({.key = "interface", .grade = Grade::essential, .on = wall | folder,
                  .help = "neck_tube, mask or mouthpiece", .ask = "prescriber", .example = "neck_tube"}, interface);
    visitor.leaf({.key = "circuit", .grade = Grade::essential, .on = wall | folder,
                  .help = "passive, active_single, dual or open_mouthpiece", .ask = "prescriber",
                  .example = "passive"}, circuit);
}

void AlarmOffByOrder::describe(Visitor& visitor) {
    visitor.leaf({.key = "alarm", .grade = Grade::essential, .on = wall | folder, .help = "which alarm",
                  .ask = "prescriber", .example = "high_rate"}, alarm);
    visitor.leaf({.key = "by", .grade = Grade::essential, .on = folder, .help = "prescriber who ordered it",
                  .longest = 80, .example = "Dr. Noor Castell"}, by);
    visitor.leaf({.key = "date", .grade = Grade::essential, .on = folder, .help = "date of that order",
                  .example = "2026-01-30"}, date);
}

void Prescription::describe(Visitor& visitor) {
    visitor.leaf({.key = "id", .grade = Grade::essential, .on = wall | folder,
                  .help = "short name used in slots and battery tests", .ask = "clinic", .longest = 20,
                  .example = "P1"}, id);
    visitor.leaf({.key = "place", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "one word for its bedside card: bed, chair, crib and the like", .ask = "clinic",
                  .shape = TextShape::identifier, .longest = 16, .example = "bed"}, place);
    visitor.leaf({.key = "label", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "name that the family uses", .ask = "clinic", .longest = 40,
                  .example = "Bed, lying"}, label);
    visitor.leaf({.key = "changed_in", .grade = Grade::essential, .on = folder,
                  .help = "revision of the order that last changed this prescription", .ask = "clinic",
                  .example = "R1"}, changed_in);
    visitor.leaf({.key = "state", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "awake, asleep or both", .ask = "prescriber", .example = "both"}, state);
    visitor.list({.key = "when_used", .help = "times of day", .ask = "prescriber"}, when_used);
    visitor.leaf({.key = "hours_per_day", .on = wall | folder, .help = "hours a day, when the times are free",
                  .units = "h", .least = 0, .most = 24, .ask = "prescriber", .example = "11 h"}, hours_per_day);
    visitor.leaf({.key = "when_note", .on = wall | folder | crew, .help = "what else is said about the times",
                  .longest = 80, .example = "as wanted between 8 AM and 11 PM"}, when_note);
    visitor.leaf({.key = "position", .grade = Grade::expected, .on = wall | folder,
                  .help = "how the person lies or sits", .ask = "clinic", .longest = 60,
                  .example = "lying, head up 30 degrees"}, position);
    visitor.group({.key = "interface", .grade = Grade::essential, .help = "how the hose meets the person",
                   .ask = "prescriber"}, interface);
    visitor.group({.key = "circuit", .grade = Grade::essential, .help = "the hose set",
                   .ask = "equipment_provider"}, circuit);
    visitor.group({.key = "humidity", .grade = Grade::essential, .help = "what gives humidity",
                   .ask = "prescriber"}, humidity);
    visitor.group({.key = "oxygen", .help = "oxygen with this prescription", .ask = "prescriber",
                   .none = true}, oxygen);
    visitor.list({.key = "written_for", .grade = Grade::expected,
                  .help = "interface and circuit that the order was written for", .ask = "prescriber"}, written_for);
    describe_mode(visitor);
    describe_timing(visitor);
}

void Prescription::describe_mode(Visitor& visitor) {
    visitor.leaf({.key = "mode", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "breaths: vc volume, pc pressure, ac assist/control, ps support, st timed, va volume-assured, "
                          "mpv by mouthpiece",
                  .ask = "prescriber", .example = "pc_ac"}, mode);
    visitor.leaf({.key = "mode_on_screen", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "the words that the screen shows for it", .ask = "equipment_provider", .longest = 60,
                  .example = "Pressure A/C"}, mode_on_screen);
    visitor.leaf({.key = "mode_standard_label", .on = folder | crew,
                  .help = "label of the standard vocabulary, if a clinician enters it", .longest = 40,
                  .example = "A/C-PC"}, mode_standard_label);
    visitor.leaf({.key = "pressure_reference", .on = wall | folder | crew | wallet,
                  .help = "pressures are total or above_baseline", .ask = "prescriber",
                  .example = "above_baseline"}, pressure_reference);
    visitor.leaf({.key = "inspiratory_pressure", .on = wall | folder | crew | wallet,
                  .help = "pressure of a breath in, by the reference", .units = "cmH2O hPa mbar", .least = 0,
                  .most = 60, .ask = "prescriber", .setting = true, .example = "16 cmH2O"}, inspiratory_pressure);
    visitor.leaf({.key = "support_pressure", .on = wall | folder | crew | wallet,
                  .help = "help for breaths that the person starts, above baseline", .units = "cmH2O hPa mbar",
                  .least = 0, .most = 40, .ask = "prescriber", .setting = true,
                  .example = "13 cmH2O"}, support_pressure);
    visitor.leaf({.key = "baseline_pressure", .on = wall | folder | crew | wallet, .help = "pressure between breaths",
                  .units = "cmH2O hPa mbar", .least = 0, .most = 25, .ask = "prescriber", .setting = true,
                  .example = "5 cmH2O"}, baseline_pressure);
    visitor.leaf({.key = "peak_pressure", .on = wall | folder | crew,
                  .help = "highest pressure, total, as the order states it", .units = "cmH2O hPa mbar", .least = 4,
                  .most = 60, .ask = "prescriber", .example = "21 cmH2O"}, peak_pressure);
    visitor.leaf({.key = "peak_pressure_range", .on = wall | folder | crew,
                  .help = "lowest and highest peak, total, as the order of a volume-assured mode states them",
                  .units = "cmH2O hPa mbar", .least = 4, .most = 60, .ask = "prescriber",
                  .example = "{from: 19 cmH2O, to: 27 cmH2O}"}, peak_pressure_range);
    visitor.leaf({.key = "tidal_volume", .on = wall | folder | crew | wallet, .help = "volume of a breath",
                  .units = "mL L", .least = 10, .most = 2500, .ask = "prescriber", .setting = true,
                  .example = "480 mL"}, tidal_volume);
    visitor.leaf({.key = "rate", .on = wall | folder | crew | wallet,
                  .help = "set or backup rate; 0 when there is none", .units = "breaths/min", .least = 0, .most = 80,
                  .ask = "prescriber", .setting = true, .example = "14 breaths/min"}, rate);
    visitor.group({.key = "volume_assured", .help = "settings of a volume-assured mode",
                   .ask = "prescriber"}, volume_assured);
    visitor.group({.key = "backup_breaths", .help = "breaths given when the person starts none, in a spontaneous mode",
                   .ask = "prescriber", .none = true}, backup_breaths);
}

void Prescription::describe_timing(Visitor& visitor) {
    visitor.leaf({.key = "inspiratory_time", .on = wall | folder | crew | wallet, .help = "time of a breath in",
                  .units = "s ms", .least = 0.2, .most = 4, .ask = "prescriber", .setting = true,
                  .example = "1.2 s"}, inspiratory_time);
    visitor.leaf({.key = "inspiratory_flow", .on = wall | folder,
                  .help = "flow of a volume breath, where the machine asks for it", .units = "L/min", .least = 2,
                  .most = 180, .ask = "prescriber", .setting = true, .example = "40 L/min"}, inspiratory_flow);
    visitor.leaf({.key = "breathing_ratio", .on = wall | folder, .help = "time in to time out as the order states it",
                  .ask = "prescriber", .setting = true, .longest = 20, .example = "\"1:2.6\""}, breathing_ratio);
    visitor.leaf({.key = "rise", .on = wall | folder, .help = "how fast pressure rises, on the machine's own scale",
                  .ask = "prescriber", .setting = true, .longest = 40, .example = "2 of 5"}, rise);
    visitor.leaf({.key = "trigger", .on = wall | folder, .help = "what starts a breath, on the machine's own scale",
                  .ask = "prescriber", .off = true, .setting = true, .longest = 40,
                  .example = "flow 3 L/min"}, trigger);
    visitor.leaf({.key = "cycle", .on = wall | folder,
                  .help = "what ends a supported breath, on the machine's own scale", .ask = "prescriber",
                  .setting = true, .longest = 40, .example = "25 % of peak flow"}, cycle);
    visitor.leaf({.key = "inspiratory_time_least", .on = wall | folder, .help = "shortest supported breath in",
                  .units = "s ms", .least = 0.1, .most = 4, .ask = "prescriber", .setting = true,
                  .example = "0.8 s"}, inspiratory_time_least);
    visitor.leaf({.key = "inspiratory_time_most", .on = wall | folder, .help = "longest supported breath in",
                  .units = "s ms", .least = 0.2, .most = 6, .ask = "prescriber", .setting = true,
                  .example = "1.5 s"}, inspiratory_time_most);
    visitor.group({.key = "expected", .grade = Grade::expected, .help = "what the machine showed when it was set up",
                   .ask = "clinic"}, expected);
    visitor.group({.key = "alarms", .grade = Grade::essential, .help = "alarm limits", .ask = "prescriber"}, alarms);
    visitor.list({.key = "alarms_off_by_order", .help = "alarms that the prescriber wants off",
                  .none = true}, alarms_off_by_order);
    visitor.leaf({.key = "nebulized_treatments", .on = wall | folder,
                  .help = "nebulized medicine is given into this hose", .ask = "family",
                  .example = "false"}, nebulized_treatments);
    visitor.leaf({.key = "sick_plan", .on = wall | folder, .help = "what the prescriber allows on sick days",
                  .ask = "prescriber", .example = "may be worn all day with a fever"}, sick_plan);
    visitor.leaf({.key = "note", .on = wall | folder, .help = "what else the family must know about it",
                  .longest = 120, .example = "she breathes out to the room"}, note);
}

}  // namespace ventfolio
