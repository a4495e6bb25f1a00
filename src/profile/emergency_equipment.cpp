#include "profile/emergency_equipment.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void BreathingBag::describe(Visitor& visitor) {
    visitor.leaf({.key = "at", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "bed, chair, go_bag or elsewhere", .ask = "family", .example = "bed"}, at);
    visitor.leaf({.key = "place", .on = wall | folder | crew, .help = "where exactly", .longest = 80,
                  .example = "hook at the head of the bed"}, place);
    visitor.leaf({.key = "size", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "adult, child or infant", .ask = "equipment_provider", .example = "adult"}, size);
    visitor.leaf({.key = "tube_connector", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "it has the connector for the neck tube", .ask = "equipment_provider",
                  .example = "true"}, tube_connector);
    visitor.leaf({.key = "face_mask", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "it has a face mask", .ask = "equipment_provider", .example = "true"}, face_mask);
    visitor.leaf({.key = "oxygen_tube", .grade = Grade::expected, .on = wall | folder,
                  .help = "its oxygen tube is with it", .ask = "equipment_provider", .example = "true"}, oxygen_tube);
    visitor.leaf({.key = "pressure_valve", .grade = Grade::expected, .on = wall | folder,
                  .help = "it has a PEEP valve", .ask = "equipment_provider", .example = "false"}, pressure_valve);
    visitor.leaf({.key = "checked_on", .grade = Grade::expected, .on = wall | folder, .help = "last check",
                  .ask = "family", .example = "2026-01-20"}, checked_on);
}

void EmergencyEquipment::describe(Visitor& visitor) {
    visitor.list({.key = "breathing_bags", .grade = Grade::expected, .help = "breathing bags",
                  .ask = "equipment_provider", .none = true}, breathing_bags);
    visitor.leaf({.key = "pressure_valve_ordered", .on = folder, .help = "the order asks for a PEEP valve on the bag",
                  .ask = "prescriber", .example = "false"}, pressure_valve_ordered);
    visitor.leaf({.key = "oxygen_for_bag", .grade = Grade::expected, .on = wall | folder,
                  .help = "oxygen goes to the breathing bag", .ask = "prescriber", .example = "true"}, oxygen_for_bag);
    visitor.leaf({.key = "spare_hose_assembled", .grade = Grade::expected, .on = wall | folder,
                  .help = "a spare hose set stands ready to connect", .ask = "family",
                  .example = "true"}, spare_hose_assembled);
    visitor.leaf({.key = "kept_at", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "where the emergency kit is", .ask = "family", .longest = 80,
                  .example = "red box on the bedside shelf"}, kept_at);
    visitor.leaf({.key = "items", .grade = Grade::expected, .on = wall | folder,
                  .help = "what is in the emergency kit", .ask = "equipment_provider",
                  .example = "[tube ties, blunt scissors, flashlight]"}, items);
}

}  // namespace ventfolio
