#include "profile/monitors.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Oximeter::describe(Visitor& visitor) {
    visitor.leaf({.key = "use", .grade = Grade::essential, .on = wall | folder,
                  .help = "continuous, continuous_asleep, continuous_on_ventilator or spot_checks",
                  .ask = "prescriber", .example = "continuous_asleep"}, use);
    visitor.leaf({.key = "low_alarm", .on = wall | folder, .help = "alarm when the oxygen level is below",
                  .units = "%", .least = 50, .most = 100, .ask = "prescriber", .off = true, .setting = true,
                  .example = "90 %"}, low_alarm);
    visitor.leaf({.key = "high_alarm", .on = wall | folder, .help = "alarm when the oxygen level is above",
                  .units = "%", .least = 50, .most = 100, .ask = "prescriber", .off = true, .setting = true,
                  .example = "99 %"}, high_alarm);
    visitor.leaf({.key = "low_pulse_alarm", .on = wall | folder, .help = "alarm when the pulse is below",
                  .units = "beats/min", .least = 20, .most = 200, .ask = "prescriber", .off = true, .setting = true,
                  .example = "70 beats/min"}, low_pulse_alarm);
    visitor.leaf({.key = "high_pulse_alarm", .on = wall | folder, .help = "alarm when the pulse is above",
                  .units = "beats/min", .least = 50, .most = 280, .ask = "prescriber", .off = true, .setting = true,
                  .example = "180 beats/min"}, high_pulse_alarm);
    visitor.leaf({.key = "delay", .on = wall | folder, .help = "how long a level must last first", .units = "s",
                  .least = 0, .most = 60, .ask = "prescriber", .setting = true, .example = "10 s"}, delay);
}

void HouseAlarms::describe(Visitor& visitor) {
    visitor.leaf({.key = "number", .grade = Grade::essential, .on = wall | folder, .help = "how many",
                  .units = "pieces", .least = 1, .most = 50, .ask = "family", .example = "2 pieces"}, number);
    visitor.leaf({.key = "tested_on", .grade = Grade::expected, .on = wall | folder, .help = "last test",
                  .ask = "family", .example = "2026-01-05"}, tested_on);
    visitor.leaf({.key = "location", .on = wall | folder, .help = "where", .longest = 80,
                  .example = "bedroom and hall"}, location);
}

void Monitors::describe(Visitor& visitor) {
    visitor.group({.key = "oximeter", .grade = Grade::expected, .help = "the oximeter", .ask = "prescriber",
                   .none = true}, oximeter);
    visitor.leaf({.key = "carbon_dioxide", .on = wall | folder, .help = "carbon dioxide monitor", .none = true,
                  .longest = 80, .example = "through the skin, at visits"}, carbon_dioxide);
    visitor.leaf({.key = "breathing_monitor", .on = wall | folder, .help = "breathing monitor", .none = true,
                  .longest = 80, .example = "belt, at night"}, breathing_monitor);
    visitor.leaf({.key = "camera", .on = wall | folder, .help = "camera or baby monitor", .none = true, .longest = 80,
                  .example = "baby monitor in the crib room"}, camera);
    visitor.group({.key = "carbon_monoxide_alarms", .grade = Grade::expected, .help = "carbon monoxide alarms",
                   .ask = "family", .none = true}, carbon_monoxide_alarms);
    visitor.group({.key = "smoke_alarms", .grade = Grade::expected, .help = "smoke alarms", .ask = "family",
                   .none = true}, smoke_alarms);
}

}  // namespace ventfolio
