#include "profile/alarms.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Alarms::describe(Visitor& visitor) {
    visitor.leaf({.key = "high_pressure", .grade = Grade::expected, .on = wall | folder,
                  .help = "alarm when the pressure is above", .units = "cmH2O hPa mbar", .least = 5, .most = 100,
                  .ask = "prescriber", .off = true, .setting = true, .example = "31 cmH2O"}, high_pressure);
    visitor.leaf({.key = "low_pressure", .grade = Grade::expected, .on = wall | folder,
                  .help = "alarm when the pressure stays below", .units = "cmH2O hPa mbar", .least = 0, .most = 60,
                  .ask = "prescriber", .off = true, .setting = true, .example = "12 cmH2O"}, low_pressure);
    visitor.leaf({.key = "low_pressure_delay", .on = wall | folder, .help = "how long the pressure must be low first",
                  .units = "s", .least = 0, .most = 120, .ask = "prescriber", .setting = true,
                  .example = "15 s"}, low_pressure_delay);
    visitor.leaf({.key = "disconnect", .on = wall | folder, .help = "alarm when the hose is off for", .units = "s",
                  .least = 0, .most = 180, .ask = "prescriber", .off = true, .setting = true,
                  .example = "15 s"}, disconnect);
    visitor.leaf({.key = "high_leak", .on = wall | folder, .help = "alarm when the leak is above", .units = "L/min",
                  .least = 1, .most = 200, .ask = "prescriber", .off = true, .setting = true,
                  .example = "60 L/min"}, high_leak);
    describe_volume_alarms(visitor);
    describe_rate_alarms(visitor);
}

void Alarms::describe_volume_alarms(Visitor& visitor) {
    visitor.leaf({.key = "low_tidal_volume", .on = wall | folder, .help = "alarm when a breath is below",
                  .units = "mL L", .least = 5, .most = 2500, .ask = "prescriber", .off = true, .setting = true,
                  .example = "300 mL"}, low_tidal_volume);
    visitor.leaf({.key = "low_tidal_volume_measured", .on = folder,
                  .help = "the alarm reads the inspired or the expired breath", .ask = "equipment_provider",
                  .example = "expired"}, low_tidal_volume_measured);
    visitor.leaf({.key = "high_tidal_volume", .on = wall | folder, .help = "alarm when a breath is above",
                  .units = "mL L", .least = 10, .most = 4000, .ask = "prescriber", .off = true, .setting = true,
                  .example = "900 mL"}, high_tidal_volume);
    visitor.leaf({.key = "low_minute_volume", .on = wall | folder, .help = "alarm when the volume per minute is below",
                  .units = "L/min", .least = 0.1, .most = 60, .ask = "prescriber", .off = true, .setting = true,
                  .example = "4.5 L/min"}, low_minute_volume);
    visitor.leaf({.key = "low_minute_volume_measured", .on = folder,
                  .help = "the alarm reads the inspired or the expired volume", .ask = "equipment_provider",
                  .example = "expired"}, low_minute_volume_measured);
    visitor.leaf({.key = "high_minute_volume", .on = wall | folder,
                  .help = "alarm when the volume per minute is above", .units = "L/min", .least = 0.5, .most = 100,
                  .ask = "prescriber", .off = true, .setting = true, .example = "14 L/min"}, high_minute_volume);
}

void Alarms::describe_rate_alarms(Visitor& visitor) {
    visitor.leaf({.key = "high_rate", .on = wall | folder, .help = "alarm when breathing is faster than",
                  .units = "breaths/min", .least = 5, .most = 120, .ask = "prescriber", .off = true, .setting = true,
                  .example = "30 breaths/min"}, high_rate);
    visitor.leaf({.key = "low_rate", .on = wall | folder, .help = "alarm when breathing is slower than",
                  .units = "breaths/min", .least = 1, .most = 60, .ask = "prescriber", .off = true, .setting = true,
                  .example = "8 breaths/min"}, low_rate);
    visitor.leaf({.key = "no_breath", .grade = Grade::expected, .on = wall | folder,
                  .help = "alarm when no breath comes for", .units = "s", .least = 2, .most = 120, .ask = "prescriber",
                  .off = true, .setting = true, .example = "20 s"}, no_breath);
    visitor.leaf({.key = "no_breath_timer", .on = wall | folder,
                  .help = "mouthpiece only: alarm when no breath is taken for", .units = "s min", .least = 5,
                  .most = 900, .ask = "prescriber", .off = true, .setting = true,
                  .example = "120 s"}, no_breath_timer);
    visitor.leaf({.key = "loudness", .grade = Grade::expected, .on = wall | folder,
                  .help = "loudness on the machine's own scale", .ask = "equipment_provider", .setting = true,
                  .longest = 40, .example = "8 of 10"}, loudness);
    visitor.leaf({.key = "silence_time", .grade = Grade::expected, .on = wall | folder,
                  .help = "how long the silence button lasts", .units = "s min", .least = 10, .most = 300,
                  .ask = "equipment_provider", .example = "120 s"}, silence_time);
}

}  // namespace ventfolio
