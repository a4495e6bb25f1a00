#include "profile/dependence.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void FreeBreathing::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "minutes (up to 4 hours) or hours (4 hours or more)", .ask = "prescriber",
                  .example = "minutes"}, kind);
    visitor.leaf({.key = "time", .grade = Grade::essential, .on = wall | folder | crew | wallet, .help = "how long",
                  .units = "min h", .least = 0, .most = 1440, .ask = "prescriber", .example = "25 min"}, time);
    visitor.leaf({.key = "tested_on", .on = folder, .help = "when this was tried with a clinician present",
                  .ask = "prescriber", .example = "2026-01-20"}, tested_on);
}

void Dependence::describe(Visitor& visitor) {
    visitor.leaf({.key = "hours_per_day", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "hours on the ventilator in 24 hours", .units = "h", .least = 0, .most = 24,
                  .ask = "prescriber", .example = "24 h"}, hours_per_day);
    visitor.group({.key = "unaided_awake", .grade = Grade::essential,
                   .help = "time without the ventilator awake; none means not at all", .ask = "prescriber",
                   .none = true}, unaided_awake);
    visitor.group({.key = "unaided_asleep", .grade = Grade::essential,
                   .help = "time without the ventilator asleep; none means not at all", .ask = "prescriber",
                   .none = true}, unaided_asleep);
    visitor.leaf({.key = "can_call_help", .grade = Grade::expected, .on = wall | folder | crew | fire,
                  .help = "the person can call for help", .ask = "family", .example = "true"}, can_call_help);
    visitor.leaf({.key = "calls_help_with", .on = wall | folder | crew, .help = "how the person calls for help",
                  .ask = "family", .longest = 80, .example = "cheek switch"}, calls_help_with);
    visitor.leaf({.key = "can_reconnect_self", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "the person can put the hose back on", .ask = "family",
                  .example = "false"}, can_reconnect_self);
    visitor.leaf({.key = "can_remove_mask_self", .on = wall | folder | crew,
                  .help = "the person can take the mask off, for instance to vomit", .ask = "family",
                  .example = "false"}, can_remove_mask_self);
    visitor.leaf({.key = "left_alone", .grade = Grade::expected, .on = wall | folder,
                  .help = "how far everyone may be away", .ask = "family", .example = "never"}, left_alone);
    visitor.leaf({.key = "left_alone_note", .on = folder, .help = "what is agreed about being alone",
                  .example = "never asleep without a caregiver in hearing"}, left_alone_note);
}

}  // namespace ventfolio
