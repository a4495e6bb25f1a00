#include "profile/medicines.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Medicine::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder | crew, .help = "name of the medicine",
                  .longest = 80, .example = "prednisone"}, name);
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = folder | crew, .help = "why it matters",
                  .ask = "family", .example = "steroid"}, kind);
    visitor.leaf({.key = "note", .on = folder | crew, .help = "what a crew must know", .longest = 120,
                  .example = "needs a stress dose when ill"}, note);
}

void AvoidedMedicine::describe(Visitor& visitor) {
    visitor.leaf({.key = "words", .grade = Grade::essential, .on = folder | crew | wallet,
                  .help = "in the prescriber's words", .ask = "prescriber", .longest = 120,
                  .example = "Avoid succinylcholine"}, words);
    visitor.leaf({.key = "by", .grade = Grade::expected, .on = folder | crew, .help = "who said so",
                  .ask = "prescriber", .longest = 80, .example = "Dr. Marlowe"}, by);
}

}  // namespace ventfolio
