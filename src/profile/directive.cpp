#include "profile/directive.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void DecisionMaker::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder | crew, .help = "full name", .ask = "family",
                  .longest = 80, .example = "Rowan Featherstone"}, name);
    visitor.leaf({.key = "phone", .grade = Grade::expected, .on = folder | crew, .help = "phone number",
                  .ask = "family", .shape = TextShape::phone, .example = "555-0156"}, phone);
    visitor.leaf({.key = "document", .on = folder | crew, .help = "the paper that says so", .longest = 80,
                  .example = "health care proxy of 2024"}, document);
}

void Directive::describe(Visitor& visitor) {
    visitor.leaf({.key = "status", .grade = Grade::expected, .on = crew,
                  .help = "order_on_file, none_recorded or unknown", .ask = "decision_maker",
                  .example = "none_recorded"}, status);
    visitor.leaf({.key = "kind", .on = crew, .help = "name of the form, never what it says", .ask = "decision_maker",
                  .longest = 80, .example = "signed portable medical order"}, kind);
    visitor.leaf({.key = "signed_by", .on = crew, .help = "who signed it", .ask = "decision_maker", .longest = 80,
                  .example = "Dr. Noor Castell"}, signed_by);
    visitor.leaf({.key = "signed_on", .on = crew, .help = "when", .ask = "decision_maker",
                  .example = "2025-06-02"}, signed_on);
    visitor.leaf({.key = "jurisdiction", .on = crew, .help = "state whose form it is", .longest = 40,
                  .example = "Minnesota"}, jurisdiction);
    visitor.leaf({.key = "expires", .on = crew, .help = "until when it holds", .ask = "decision_maker",
                  .example = "2027-06-02"}, expires);
    visitor.leaf({.key = "location_of_original", .on = crew, .help = "where the original lies",
                  .ask = "decision_maker", .longest = 80, .example = "folder pocket, front"}, location_of_original);
    visitor.group({.key = "decision_maker", .grade = Grade::expected, .help = "who decides when the person cannot",
                   .ask = "family"}, decision_maker);
    visitor.leaf({.key = "confirmed_on", .on = folder, .help = "when this was last confirmed", .ask = "decision_maker",
                  .example = "2026-01-15"}, confirmed_on);
}

}  // namespace ventfolio
