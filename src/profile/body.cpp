#include "profile/body.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Feeding::describe(Visitor& visitor) {
    visitor.leaf({.key = "swallow", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "how safe swallowing is", .ask = "clinic", .example = "unsafe, nothing by mouth"}, swallow);
    visitor.leaf({.key = "route", .grade = Grade::expected, .on = wall | folder | crew, .help = "how food gets in",
                  .ask = "family", .example = "stomach_tube"}, route);
    visitor.leaf({.key = "pump", .on = wall | folder | crew, .help = "feeding pump: when it runs; none if there is no pump",
                  .ask = "family", .none = true, .example = "9 PM to 5 AM"}, pump);
    visitor.leaf({.key = "precautions", .on = wall | folder | crew,
                  .help = "what lowers the risk of choking or vomiting",
                  .example = "head up 30 degrees during feeds and 1 hour after"}, precautions);
}

void Mobility::describe(Visitor& visitor) {
    visitor.leaf({.key = "moves_by", .grade = Grade::expected, .on = folder | crew | fire,
                  .help = "walks, chair or bed", .ask = "family", .example = "chair"}, moves_by);
    visitor.leaf({.key = "lift_method", .grade = Grade::expected, .on = folder | crew | fire,
                  .help = "how the person is lifted", .ask = "family",
                  .example = "sling and ceiling hoist"}, lift_method);
    visitor.leaf({.key = "spine_curve", .on = folder | crew, .help = "the spine is curved", .ask = "clinic",
                  .example = "true"}, spine_curve);
    visitor.leaf({.key = "contractures", .on = folder | crew, .help = "joints do not straighten", .ask = "clinic",
                  .example = "false"}, contractures);
    visitor.leaf({.key = "amputation", .on = folder | crew, .help = "part of a limb is missing", .ask = "clinic",
                  .example = "false"}, amputation);
    visitor.leaf({.key = "cannot_lie_flat", .on = wall | folder | crew, .help = "why the person must not lie flat",
                  .example = "breathing muscles are too weak lying flat"}, cannot_lie_flat);
    visitor.leaf({.key = "positioning", .on = wall | folder | crew, .help = "how to place head, arms and legs",
                  .example = "pillow under the left arm"}, positioning);
}

void Implant::describe(Visitor& visitor) {
    visitor.leaf({.key = "what", .grade = Grade::essential, .on = folder | crew | wallet, .help = "what it is",
                  .longest = 80, .example = "spine rods"}, what);
    visitor.leaf({.key = "note", .on = folder | crew, .help = "what a crew must know about it",
                  .example = "chest to hip, since 1994"}, note);
}

void SpecialRisks::describe(Visitor& visitor) {
    visitor.leaf({.key = "autonomic_dysreflexia", .on = wall | folder | crew,
                  .help = "sudden high blood pressure after an injury of the spinal cord", .ask = "prescriber",
                  .example = "false"}, autonomic_dysreflexia);
    visitor.leaf({.key = "seizures", .on = folder | crew, .help = "seizures: how they look and what is done",
                  .example = "short staring, passes in a minute"}, seizures);
    visitor.leaf({.key = "bleeding", .on = folder | crew, .help = "risk of bleeding",
                  .example = "takes a blood thinner"}, bleeding);
    visitor.leaf({.key = "infection_precautions", .on = folder | crew, .help = "gloves, gown or mask needed by a crew",
                  .example = "gloves and gown"}, infection_precautions);
    visitor.leaf({.key = "muscle_relaxant_caution", .on = folder | crew | wallet,
                  .help = "only in the words of the prescriber", .ask = "prescriber",
                  .example = "Avoid succinylcholine (Dr. Marlowe)"}, muscle_relaxant_caution);
    visitor.leaf({.key = "lung_leak", .on = folder | crew, .help = "lungs have collapsed before or have air blisters",
                  .ask = "prescriber", .example = "false"}, lung_leak);
    visitor.leaf({.key = "other", .on = folder | crew, .help = "another risk",
                  .example = "bones break easily"}, other);
}

}  // namespace ventfolio
