#include "profile/orders.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void ReadBack::describe(Visitor& visitor) {
    visitor.leaf({.key = "by", .grade = Grade::essential, .on = folder, .help = "who read the numbers back",
                  .longest = 80, .example = "Odile Mbanefo, respiratory therapist"}, by);
    visitor.leaf({.key = "at", .grade = Grade::essential, .on = folder, .help = "when",
                  .example = "2026-01-09 4:30 PM"}, at);
}

void NamedCheck::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = wall | folder | crew | wallet | utility | fire,
                  .help = "full name", .longest = 80, .example = "Odile Mbanefo"}, name);
    visitor.leaf({.key = "credential", .grade = Grade::expected, .on = folder, .help = "profession or licence",
                  .ask = "clinic", .longest = 80, .example = "respiratory therapist"}, credential);
    visitor.leaf({.key = "date", .on = folder, .help = "day of the check", .example = "2026-01-10"}, date);
}

void OrderedException::describe(Visitor& visitor) {
    visitor.leaf({.key = "by", .grade = Grade::essential, .on = folder, .help = "prescriber who ordered it",
                  .longest = 80, .example = "Dr. Una Marlowe"}, by);
    visitor.leaf({.key = "date", .grade = Grade::essential, .on = folder, .help = "date of that order",
                  .example = "2026-01-09"}, date);
}

void Orders::describe(Visitor& visitor) {
    visitor.leaf({.key = "revision", .grade = Grade::essential, .on = wall | folder | crew | wallet | utility | fire,
                  .help = "number of this revision; a letter marks a correction without a new order", .ask = "clinic",
                  .example = "R1"}, revision);
    visitor.leaf({.key = "supersedes", .on = folder, .help = "the revision that this one replaces", .ask = "clinic",
                  .example = "R1"}, supersedes);
    visitor.leaf({.key = "prescriber", .grade = Grade::essential, .on = folder | crew | wallet | fire,
                  .help = "who ordered the ventilator settings", .ask = "clinic", .longest = 80,
                  .example = "Dr. Una Marlowe"}, prescriber);
    visitor.leaf({.key = "prescriber_licence", .on = folder | utility,
                  .help = "licence number, where the utility or an agency asks for it", .longest = 40,
                  .example = "RM 40211"}, prescriber_licence);
    visitor.leaf({.key = "prescriber_phone", .grade = Grade::expected, .on = wall | folder | crew | wallet,
                  .help = "office phone of the prescriber", .ask = "prescriber", .shape = TextShape::phone,
                  .example = "555-0111"}, prescriber_phone);
    visitor.leaf({.key = "order_date", .grade = Grade::essential, .on = folder, .help = "day of the order",
                  .ask = "prescriber", .example = "2026-01-09"}, order_date);
    visitor.leaf({.key = "method", .grade = Grade::essential, .on = folder, .help = "how the order was given",
                  .ask = "clinic", .example = "written"}, method);
    visitor.group({.key = "read_back", .help = "for a spoken order: who read it back, and when",
                   .ask = "clinic"}, read_back);
    visitor.leaf({.key = "effective_at", .grade = Grade::essential, .on = wall | folder | crew | wallet | fire,
                  .help = "from when the order holds: date and time", .ask = "prescriber",
                  .example = "2026-01-12 10:00 AM"}, effective_at);
    visitor.group({.key = "verified_by", .help = "who entered these numbers", .ask = "clinic"}, verified_by);
    visitor.group({.key = "second_check",
                   .help = "a different qualified person who compared them with the written order",
                   .ask = "clinic"}, second_check);
    visitor.leaf({.key = "review_due", .grade = Grade::expected, .on = wall | folder | crew | wallet,
                  .help = "when the prescriber looks at the order again", .ask = "prescriber",
                  .example = "2026-07-12"}, review_due);
    visitor.leaf({.key = "reason", .on = folder, .help = "why the order changed; stands on the change notice",
                  .example = "night carbon dioxide 56 mmHg and morning headaches"}, reason);
    visitor.leaf({.key = "follow_up", .on = folder, .help = "what is checked after the change",
                  .example = "carbon dioxide at night"}, follow_up);
    visitor.leaf({.key = "follow_up_due", .on = folder, .help = "by when it is checked",
                  .example = "2026-03-30"}, follow_up_due);
    visitor.leaf({.key = "tell", .on = folder,
                  .help = "people and places to tell about a change, beyond the usual ones",
                  .example = "[day program]"}, tell);
}

}  // namespace ventfolio
