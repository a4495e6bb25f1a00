#include "profile/device.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Slot::describe(Visitor& visitor) {
    visitor.leaf({.key = "slot", .grade = Grade::essential, .on = wall | folder,
                  .help = "number or name of the slot on the screen", .ask = "equipment_provider", .longest = 20,
                  .example = "1"}, slot);
    visitor.leaf({.key = "prescription", .grade = Grade::essential, .on = wall | folder,
                  .help = "id of the prescription in it", .ask = "equipment_provider", .longest = 20,
                  .example = "P1"}, prescription);
    visitor.leaf({.key = "revision", .grade = Grade::essential, .on = folder,
                  .help = "revision of the order that was set and read back in it", .ask = "equipment_provider",
                  .example = "R1"}, revision);
}

void Device::describe(Visitor& visitor) {
    visitor.leaf({.key = "label", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "household name, the same as on the sticker", .ask = "equipment_provider", .longest = 40,
                  .example = "Unit A"}, label);
    visitor.leaf({.key = "description", .on = wall | folder, .help = "what kind of machine, in general words",
                  .longest = 80, .example = "bedside ventilator"}, description);
    visitor.leaf({.key = "location", .grade = Grade::expected, .on = wall | folder | crew, .help = "where it stands",
                  .ask = "family", .longest = 80, .example = "stand at the head of the bed"}, location);
    visitor.leaf({.key = "at_bed", .on = folder, .help = "used at the bed", .example = "true"}, at_bed);
    visitor.leaf({.key = "on_chair", .on = folder, .help = "rides on the chair", .example = "false"}, on_chair);
    visitor.leaf({.key = "is_backup", .on = wall | folder, .help = "stands in when another one fails",
                  .example = "false"}, is_backup);
    visitor.leaf({.key = "owner", .on = folder, .help = "who owns it", .longest = 80,
                  .example = "Brackenfell Home Respiratory"}, owner);
    visitor.leaf({.key = "asset_number", .help = "number on the owner's sticker; for the provider only", .longest = 40,
                  .example = "A-2207"}, asset_number);
    visitor.leaf({.key = "service_due", .grade = Grade::expected, .on = wall | folder, .help = "next service",
                  .ask = "equipment_provider", .example = "2026-11-20"}, service_due);
    visitor.list({.key = "slots", .grade = Grade::essential, .help = "which prescription each slot holds",
                  .ask = "equipment_provider"}, slots);
    visitor.leaf({.key = "alarm_heard", .grade = Grade::expected, .on = wall | folder,
                  .help = "how far its alarm is heard with doors closed", .ask = "family",
                  .example = "whole_home"}, alarm_heard);
    visitor.leaf({.key = "oxygen_inlet", .grade = Grade::expected, .on = folder,
                  .help = "it has an inlet for low-pressure oxygen", .ask = "equipment_provider",
                  .example = "true"}, oxygen_inlet);
    visitor.leaf({.key = "suited_from", .on = folder, .help = "lowest body weight it is made for", .units = "kg",
                  .least = 0.5, .most = 100, .ask = "equipment_provider", .example = "5 kg"}, suited_from);
    visitor.leaf({.key = "needs_pure_sine", .on = folder, .help = "it needs pure sine-wave power",
                  .ask = "equipment_provider", .example = "true"}, needs_pure_sine);
}

void RemoteAlarm::describe(Visitor& visitor) {
    visitor.leaf({.key = "where", .grade = Grade::essential, .on = wall | folder, .help = "where it sounds",
                  .ask = "family", .longest = 80, .example = "hall outside the bedroom"}, where);
    visitor.leaf({.key = "tested_on", .grade = Grade::expected, .on = wall | folder,
                  .help = "last test with the family listening", .ask = "family", .example = "2025-12-15"}, tested_on);
}

}  // namespace ventfolio
