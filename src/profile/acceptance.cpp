#include "profile/acceptance.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void AcceptedNumber::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder, .help = "its name as `check` shows it",
                  .longest = 60, .example = "free_time"}, name);
    visitor.leaf({.key = "value", .grade = Grade::essential, .on = folder, .help = "its value as `check` shows it",
                  .longest = 60, .example = "20 min"}, value);
}

void Acceptance::describe(Visitor& visitor) {
    visitor.leaf({.key = "rule", .grade = Grade::essential, .on = folder, .help = "name of the rule", .longest = 80,
                  .example = "backup-ventilator-missing"}, rule);
    visitor.leaf({.key = "prescription", .on = folder,
                  .help = "id of the prescription it is about, if it is about one", .longest = 20,
                  .example = "P1"}, prescription);
    visitor.leaf({.key = "by", .grade = Grade::essential, .on = folder, .help = "clinician who accepts it",
                  .longest = 80, .example = "Dr. Piet Larsson"}, by);
    visitor.leaf({.key = "date", .grade = Grade::essential, .on = folder, .help = "when",
                  .example = "2026-01-02"}, date);
    visitor.leaf({.key = "reason", .grade = Grade::essential, .on = folder, .help = "why it is right for this person",
                  .example = "the equipment provider reaches the home in 2 hours"}, reason);
    visitor.list({.key = "covers", .help = "numbers that it covers"}, covers);
}

}  // namespace ventfolio
