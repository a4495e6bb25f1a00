#include "profile/caregivers.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Caregiver::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder, .help = "full name", .ask = "family",
                  .longest = 80, .example = "Rowan Featherstone"}, name);
    visitor.leaf({.key = "first_name", .grade = Grade::expected, .on = wall | folder, .help = "name on the wall",
                  .ask = "family", .longest = 40, .example = "Priya"}, first_name);
    visitor.leaf({.key = "relation", .grade = Grade::expected, .on = folder, .help = "who this is to the person",
                  .ask = "family", .longest = 60, .example = "wife"}, relation);
    visitor.leaf({.key = "phone", .on = folder, .help = "phone number", .shape = TextShape::phone,
                  .example = "555-0156"}, phone);
    visitor.leaf({.key = "status", .grade = Grade::essential, .on = folder,
                  .help = "trainee, with_supervision or independent; set only after sign-off", .ask = "clinic",
                  .example = "independent"}, status);
    visitor.leaf({.key = "last_signed_off", .grade = Grade::expected, .on = folder, .help = "last sign-off",
                  .ask = "clinic", .example = "2025-11-18"}, last_signed_off);
    visitor.leaf({.key = "resuscitation_card_until", .grade = Grade::expected, .on = folder,
                  .help = "until when the resuscitation card holds", .ask = "family",
                  .example = "2026-11-30"}, resuscitation_card_until);
    visitor.leaf({.key = "hours", .on = folder, .help = "when this person is there", .longest = 80,
                  .example = "10 PM to 6 AM, 5 nights"}, hours);
    visitor.leaf({.key = "language", .on = folder, .help = "language, if not the one on the paper", .longest = 40,
                  .example = "English"}, language);
    visitor.leaf({.key = "may_not_do", .on = folder, .help = "what this person is not allowed to do", .longest = 120,
                  .example = "change the neck tube"}, may_not_do);
}

void NightCover::describe(Visitor& visitor) {
    visitor.leaf({.key = "awake_every_night", .grade = Grade::essential, .on = wall | folder,
                  .help = "somebody trained is awake every night", .ask = "family",
                  .example = "true"}, awake_every_night);
    visitor.leaf({.key = "nights_without", .on = folder, .help = "nights a week without an awake trained person",
                  .units = "pieces", .least = 0, .most = 7, .ask = "family", .example = "2 pieces"}, nights_without);
    visitor.leaf({.key = "by", .grade = Grade::expected, .on = wall | folder, .help = "who covers which nights",
                  .ask = "family", .longest = 120, .example = "night nurse 5 nights, parents 2 nights"}, by);
    visitor.leaf({.key = "place", .grade = Grade::expected, .on = folder,
                  .help = "where the night caregiver is, seen from the bed", .ask = "family",
                  .example = "same_room"}, place);
}

}  // namespace ventfolio
