#include "profile/diagnosis.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Diagnosis::describe(Visitor& visitor) {
    visitor.leaf({.key = "plain", .grade = Grade::expected, .on = folder | crew,
                  .help = "the illness in words anyone understands", .ask = "prescriber",
                  .example = "muscle disease with weak breathing muscles"}, plain);
    visitor.leaf({.key = "clinical", .grade = Grade::expected, .on = folder | crew,
                  .help = "the illness in the words of a medical record", .ask = "prescriber",
                  .example = "limb-girdle muscular dystrophy"}, clinical);
    visitor.leaf({.key = "why_ventilated", .grade = Grade::essential, .on = folder | crew,
                  .help = "main reason for the ventilator", .ask = "prescriber",
                  .example = "weak_muscles"}, why_ventilated);
}

}  // namespace ventfolio
