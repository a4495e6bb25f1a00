#include "profile/copies.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void PaperCopy::describe(Visitor& visitor) {
    visitor.leaf({.key = "sheet", .grade = Grade::essential, .on = folder,
                  .help = "name of the sheet, with its place if it has one", .longest = 60,
                  .example = "bedside-card/bed"}, sheet);
    visitor.leaf({.key = "place", .grade = Grade::essential, .on = folder, .help = "where the copy is", .longest = 80,
                  .example = "wall at the head of the bed"}, place);
    visitor.leaf({.key = "number", .grade = Grade::essential, .on = folder, .help = "how many copies",
                  .units = "pieces", .least = 1, .most = 50, .example = "1 piece"}, number);
}

void Translation::describe(Visitor& visitor) {
    visitor.leaf({.key = "language", .grade = Grade::essential, .on = folder, .help = "which language", .longest = 40,
                  .example = "Spanish"}, language);
    visitor.leaf({.key = "reviewed_by", .on = folder, .help = "who reviewed it", .ask = "clinic", .longest = 80,
                  .example = "Ines Calloway, medical translator"}, reviewed_by);
    visitor.leaf({.key = "reviewed_on", .on = folder, .help = "when", .ask = "clinic",
                  .example = "2026-01-05"}, reviewed_on);
}

}  // namespace ventfolio
