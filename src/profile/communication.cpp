#include "profile/communication.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Signal::describe(Visitor& visitor) {
    visitor.leaf({.key = "how", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "what others see or hear", .ask = "family", .longest = 80, .example = "looks up"}, how);
    visitor.leaf({.key = "picture", .grade = Grade::expected, .on = wall | folder | crew | wallet,
                  .help = "picture beside it", .ask = "family", .example = "eyes_up"}, picture);
}

void CommunicationDevice::describe(Visitor& visitor) {
    visitor.leaf({.key = "what", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "what it is, in general words", .longest = 60, .example = "eye-gaze tablet"}, what);
    visitor.leaf({.key = "power", .grade = Grade::expected, .on = wall | folder,
                  .help = "how it is powered and how long it lasts", .ask = "family", .longest = 80,
                  .example = "own battery, 8 hours"}, power);
    visitor.leaf({.key = "location", .grade = Grade::expected, .on = wall | folder, .help = "where it is",
                  .ask = "family", .longest = 60, .example = "bedside table"}, location);
    visitor.leaf({.key = "mount", .on = wall | folder, .help = "how it is held", .longest = 60,
                  .example = "arm on the bed rail"}, mount);
    visitor.leaf({.key = "backup", .grade = Grade::expected, .on = wall | folder | crew, .help = "what is used when it fails",
                  .ask = "family", .none = true, .longest = 60, .example = "letter board"}, backup);
}

void Communication::describe(Visitor& visitor) {
    visitor.group({.key = "signal_for_yes", .grade = Grade::expected, .help = "how the person says yes",
                   .ask = "family"}, signal_for_yes);
    visitor.group({.key = "signal_for_no", .grade = Grade::expected, .help = "how the person says no",
                   .ask = "family"}, signal_for_no);
    visitor.group({.key = "signal_for_help", .grade = Grade::expected, .help = "how the person asks for help",
                   .ask = "family"}, signal_for_help);
    visitor.group({.key = "signal_for_pain", .grade = Grade::expected, .help = "how the person shows pain",
                   .ask = "family"}, signal_for_pain);
    visitor.leaf({.key = "methods", .on = wall | folder | crew | wallet, .help = "other ways",
                  .example = "[mouths words, eye-gaze tablet]"}, methods);
    visitor.leaf({.key = "understands", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "what the person understands", .ask = "family", .longest = 120,
                  .example = "everything; talk to him, not over him"}, understands);
    visitor.group({.key = "device", .help = "a device to talk with", .ask = "family", .none = true}, device);
}

}  // namespace ventfolio
