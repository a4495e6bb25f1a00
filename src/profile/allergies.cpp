#include "profile/allergies.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Allergy::describe(Visitor& visitor) {
    visitor.leaf({.key = "substance", .grade = Grade::essential, .on = folder | crew | wallet, .help = "to what",
                  .longest = 60, .example = "penicillin"}, substance);
    visitor.leaf({.key = "reaction", .grade = Grade::expected, .on = folder | crew | wallet, .help = "what happens",
                  .ask = "family", .longest = 80, .example = "rash"}, reaction);
    visitor.leaf({.key = "severity", .grade = Grade::expected, .on = folder | crew | wallet,
                  .help = "mild, serious or life_threatening", .ask = "family", .example = "mild"}, severity);
}

void Allergies::describe(Visitor& visitor) {
    visitor.list({.key = "substances", .grade = Grade::expected, .help = "allergies, one by one; none",
                  .ask = "family", .none = true}, substances);
    visitor.leaf({.key = "latex", .grade = Grade::expected, .on = wall | folder | crew | wallet,
                  .help = "allergic to latex", .ask = "family", .example = "false"}, latex);
}

}  // namespace ventfolio
