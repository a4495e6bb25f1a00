#include "profile/interface.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Mask::describe(Visitor& visitor) {
    visitor.leaf({.key = "type", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "nasal, pillows, oronasal or total_face", .ask = "equipment_provider",
                  .example = "nasal"}, type);
    visitor.leaf({.key = "size", .grade = Grade::expected, .on = wall | folder, .help = "size as on the box",
                  .ask = "equipment_provider", .longest = 40, .example = "medium"}, size);
    visitor.leaf({.key = "vented", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "the mask has the exhalation port in it", .ask = "equipment_provider",
                  .example = "true"}, vented);
    visitor.leaf({.key = "anti_asphyxia_valve", .on = wall | folder | crew,
                  .help = "a safety valve lets air in when the machine stops", .ask = "equipment_provider",
                  .example = "true"}, anti_asphyxia_valve);
    visitor.leaf({.key = "spare", .grade = Grade::expected, .on = wall | folder, .help = "the spare mask",
                  .ask = "equipment_provider", .none = true, .longest = 80,
                  .example = "same mask, fitted, in the bedside drawer"}, spare);
    visitor.leaf({.key = "skin", .on = wall | folder, .help = "skin under the mask", .longest = 120,
                  .example = "red at the bridge of the nose in the morning"}, skin);
}

void Mouthpiece::describe(Visitor& visitor) {
    visitor.leaf({.key = "type", .grade = Grade::essential, .on = wall | folder, .help = "straw, angled or flanged",
                  .ask = "equipment_provider", .example = "angled"}, type);
    visitor.leaf({.key = "arm", .grade = Grade::expected, .on = wall | folder,
                  .help = "what holds it within reach of the lips", .ask = "equipment_provider", .longest = 80,
                  .example = "flexible arm on the left"}, arm);
    visitor.group({.key = "sleep_order", .help = "order that allows a flanged mouthpiece in sleep"}, sleep_order);
}

void Interface::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "neck_tube, mask or mouthpiece", .ask = "prescriber", .example = "neck_tube"}, kind);
    visitor.group({.key = "mask", .help = "the mask", .ask = "equipment_provider"}, mask);
    visitor.group({.key = "mouthpiece", .help = "the mouthpiece", .ask = "equipment_provider"}, mouthpiece);
}

}  // namespace ventfolio
