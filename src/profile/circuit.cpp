#include "profile/circuit.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Limb::describe(Visitor& visitor) {
    visitor.leaf({.key = "heating", .grade = Grade::essential, .on = wall | folder, .help = "heated_wire or unheated",
                  .ask = "equipment_provider", .example = "heated_wire"}, heating);
    visitor.leaf({.key = "water_trap", .grade = Grade::essential, .on = wall | folder,
                  .help = "a water trap sits in this hose", .ask = "equipment_provider",
                  .example = "false"}, water_trap);
    visitor.leaf({.key = "water_trap_position", .on = wall | folder, .help = "where the trap is",
                  .ask = "equipment_provider", .longest = 80,
                  .example = "lowest point of the hose"}, water_trap_position);
}

void ExhalationPort::describe(Visitor& visitor) {
    visitor.leaf({.key = "place", .grade = Grade::essential, .on = wall | folder, .help = "in_hose or in_mask",
                  .ask = "equipment_provider", .example = "in_hose"}, place);
    visitor.leaf({.key = "position", .grade = Grade::expected, .on = wall | folder, .help = "where exactly",
                  .ask = "equipment_provider", .longest = 80, .example = "5 cm from the neck tube"}, position);
}

void SmallLine::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = wall | folder,
                  .help = "pressure_sense or valve_drive", .ask = "equipment_provider",
                  .example = "pressure_sense"}, name);
    visitor.leaf({.key = "bore", .grade = Grade::essential, .on = wall | folder, .help = "inner width", .units = "mm",
                  .least = 1, .most = 8, .zeros = Zeros::keep, .ask = "equipment_provider", .example = "4 mm"}, bore);
    visitor.leaf({.key = "marking", .on = wall | folder, .help = "how it is marked", .longest = 40,
                  .example = "blue stripe"}, marking);
    visitor.leaf({.key = "port", .grade = Grade::essential, .on = wall | folder, .help = "its port on the machine",
                  .ask = "equipment_provider", .longest = 40, .example = "port P"}, port);
}

void Filter::describe(Visitor& visitor) {
    visitor.leaf({.key = "position", .grade = Grade::essential, .on = wall | folder, .help = "where it sits",
                  .ask = "equipment_provider", .example = "machine_outlet"}, position);
    visitor.leaf({.key = "made_for_wet_use", .on = folder,
                  .help = "its instructions allow it on the wet side of a humidifier", .ask = "equipment_provider",
                  .example = "false"}, made_for_wet_use);
    visitor.leaf({.key = "change_interval", .grade = Grade::expected, .on = wall | folder,
                  .help = "how often it is changed", .ask = "equipment_provider",
                  .example = "7 days"}, change_interval);
}

void Circuit::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "passive, active_single, dual or open_mouthpiece", .ask = "equipment_provider",
                  .example = "passive"}, kind);
    visitor.leaf({.key = "bore", .grade = Grade::expected, .on = wall | folder, .help = "inner width of the hose",
                  .units = "mm", .least = 8, .most = 25, .zeros = Zeros::keep, .ask = "equipment_provider",
                  .example = "22 mm"}, bore);
    visitor.group({.key = "inspiratory_limb", .grade = Grade::expected, .help = "the hose to the person",
                   .ask = "equipment_provider"}, inspiratory_limb);
    visitor.group({.key = "expiratory_limb", .help = "the hose back to the machine (dual only)",
                   .ask = "equipment_provider"}, expiratory_limb);
    visitor.group({.key = "exhalation_port", .grade = Grade::expected,
                   .help = "where breath leaves the hose; none if there is no port", .ask = "equipment_provider",
                   .none = true}, exhalation_port);
    visitor.leaf({.key = "exhalation_valve", .on = wall | folder,
                  .help = "the valve of an active hose: which way it points", .ask = "equipment_provider",
                  .none = true, .longest = 80, .example = "arrow toward the person"}, exhalation_valve);
    visitor.list({.key = "small_lines", .help = "the two thin lines of an active hose", .ask = "equipment_provider",
                  .none = true}, small_lines);
    visitor.leaf({.key = "flexible_adapter", .grade = Grade::expected, .on = wall | folder,
                  .help = "short bendable piece at the person; none", .ask = "equipment_provider", .none = true,
                  .longest = 80, .example = "15 cm, at the neck tube"}, flexible_adapter);
    visitor.leaf({.key = "in_line_suction", .grade = Grade::expected, .on = wall | folder,
                  .help = "closed suction catheter in the hose; none", .ask = "equipment_provider", .none = true,
                  .longest = 80, .example = "at the neck tube"}, in_line_suction);
    visitor.list({.key = "filters", .grade = Grade::expected, .help = "filters of hose and machine",
                  .ask = "equipment_provider", .none = true}, filters);
}

}  // namespace ventfolio
