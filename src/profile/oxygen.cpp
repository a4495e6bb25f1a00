#include "profile/oxygen.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void OxygenSource::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder | fire,
                  .help = "concentrator, cylinder or liquid", .ask = "equipment_provider",
                  .example = "cylinder"}, kind);
    visitor.leaf({.key = "label", .on = wall | folder, .help = "household name", .longest = 60,
                  .example = "bedside cylinders"}, label);
    visitor.leaf({.key = "flow_most", .on = wall | folder, .help = "highest flow it gives", .units = "L/min",
                  .least = 0.1, .most = 40, .ask = "equipment_provider", .example = "5 L/min"}, flow_most);
    visitor.leaf({.key = "number", .grade = Grade::expected, .on = wall | folder | fire, .help = "how many",
                  .units = "pieces", .least = 1, .most = 100, .ask = "equipment_provider",
                  .example = "2 pieces"}, number);
    visitor.leaf({.key = "size", .on = wall | folder | fire, .help = "size letter on a cylinder",
                  .ask = "equipment_provider", .longest = 20, .example = "E"}, size);
    visitor.leaf({.key = "country", .on = folder, .help = "country whose size letters are meant",
                  .ask = "equipment_provider", .longest = 40, .example = "US"}, country);
    visitor.leaf({.key = "contents", .on = wall | folder, .help = "litres of oxygen in one when full, from its label",
                  .units = "L", .least = 5, .most = 80000, .ask = "equipment_provider", .example = "625 L"}, contents);
    visitor.leaf({.key = "full", .on = wall | folder, .help = "pressure when full", .units = "psi bar", .least = 100,
                  .most = 5000, .ask = "equipment_provider", .example = "2015 psi"}, full);
    visitor.leaf({.key = "gauge", .on = wall | folder, .help = "pressure that the gauge shows now", .units = "psi bar",
                  .least = 0, .most = 5000, .ask = "family", .example = "2000 psi"}, gauge);
    visitor.leaf({.key = "reserve", .on = wall | folder, .help = "pressure left in as reserve; 500 psi when not given",
                  .units = "psi bar", .least = 0, .most = 1000, .ask = "equipment_provider",
                  .example = "500 psi"}, reserve);
    visitor.leaf({.key = "location", .grade = Grade::expected, .on = wall | folder | fire, .help = "where it stands",
                  .ask = "family", .longest = 80, .example = "bedroom, secured to the wall"}, location);
}

void Oxygen::describe(Visitor& visitor) {
    visitor.leaf({.key = "use", .grade = Grade::essential, .on = wall | folder | crew | wallet | fire,
                  .help = "continuous, night, as_needed, illness or none", .ask = "prescriber", .none = true,
                  .example = "night"}, use);
    visitor.leaf({.key = "entry", .on = wall | folder, .help = "where it enters", .ask = "equipment_provider",
                  .example = "device_inlet"}, entry);
    visitor.leaf({.key = "delivery", .on = wall | folder, .help = "continuous flow, or pulse",
                  .ask = "equipment_provider", .example = "continuous"}, delivery);
    visitor.leaf({.key = "blender", .on = folder, .help = "a blender or high-pressure inlet sets the fraction",
                  .ask = "equipment_provider", .example = "false"}, blender);
    visitor.list({.key = "sources", .help = "concentrator, cylinders, liquid", .ask = "equipment_provider",
                  .none = true}, sources);
    visitor.leaf({.key = "goal_low", .on = wall | folder | crew, .help = "lower end of the goal", .units = "%",
                  .least = 50, .most = 100, .ask = "prescriber", .example = "92 %"}, goal_low);
    visitor.leaf({.key = "goal_high", .on = wall | folder | crew, .help = "upper end of the goal", .units = "%",
                  .least = 50, .most = 100, .ask = "prescriber", .example = "97 %"}, goal_high);
    visitor.leaf({.key = "call_below", .on = wall | folder | crew, .help = "call the clinic below this", .units = "%",
                  .least = 50, .most = 100, .ask = "prescriber", .example = "90 %"}, call_below);
    visitor.leaf({.key = "emergency_below", .on = wall | folder | crew, .help = "an emergency below this",
                  .units = "%", .least = 40, .most = 100, .ask = "prescriber", .example = "85 %"}, emergency_below);
    visitor.leaf({.key = "bag_flow", .on = wall | folder | crew, .help = "oxygen to the breathing bag",
                  .units = "L/min", .least = 0.5, .most = 25, .ask = "prescriber", .example = "8 L/min"}, bag_flow);
    visitor.leaf({.key = "backup_hours", .on = wall | folder, .help = "hours of oxygen to be kept without wall power",
                  .units = "h", .least = 1, .most = 240, .ask = "prescriber", .example = "24 h"}, backup_hours);
}

}  // namespace ventfolio
