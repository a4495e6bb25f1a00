#include "profile/consent.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Permission::describe(Visitor& visitor) {
    visitor.leaf({.key = "answer", .grade = Grade::essential, .on = folder, .help = "agreed or refused",
                  .ask = "family", .example = "agreed"}, answer);
    visitor.leaf({.key = "date", .grade = Grade::essential, .on = folder, .help = "when", .ask = "family",
                  .example = "2026-01-09"}, date);
}

void Consent::describe(Visitor& visitor) {
    visitor.group({.key = "utility_letter", .help = "letter to the power company", .ask = "family"}, utility_letter);
    visitor.group({.key = "fire_letter", .help = "letter to fire and ambulance service",
                   .ask = "family"}, fire_letter);
}

}  // namespace ventfolio
