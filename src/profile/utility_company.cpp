#include "profile/utility_company.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void UtilityCertifier::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = folder | utility, .help = "full name", .longest = 80,
                  .example = "Dr. Una Marlowe"}, name);
    visitor.leaf({.key = "licence", .grade = Grade::expected, .on = folder | utility, .help = "licence number",
                  .ask = "prescriber", .longest = 40, .example = "RM 40211"}, licence);
    visitor.leaf({.key = "certified_on", .on = folder | utility, .help = "when it was certified",
                  .example = "2026-01-09"}, certified_on);
    visitor.leaf({.key = "expires", .on = folder | utility, .help = "until when the certificate holds",
                  .example = "2027-01-09"}, expires);
}

void UtilityCompany::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::expected, .on = wall | folder | utility,
                  .help = "name of the company", .ask = "utility", .longest = 80,
                  .example = "Pellam Power Cooperative"}, name);
    visitor.leaf({.key = "account", .grade = Grade::expected, .on = folder | utility, .help = "account number",
                  .ask = "utility", .longest = 40, .example = "20-4471-8"}, account);
    visitor.leaf({.key = "account_holder", .grade = Grade::expected, .on = folder | utility,
                  .help = "whose account it is", .ask = "family", .longest = 80,
                  .example = "Rowan Featherstone"}, account_holder);
    visitor.leaf({.key = "outage_phone", .grade = Grade::expected, .on = wall | folder | utility,
                  .help = "phone for outages", .ask = "utility", .shape = TextShape::phone,
                  .example = "555-0144"}, outage_phone);
    visitor.leaf({.key = "registered_until", .grade = Grade::expected, .on = wall | folder | utility,
                  .help = "until when the home is on the priority list", .ask = "utility",
                  .example = "2027-01-09"}, registered_until);
    visitor.leaf({.key = "letter_to", .on = folder | utility, .help = "where the letter goes", .longest = 160,
                  .example = "Medical Priority Desk, Pellam"}, letter_to);
    visitor.leaf({.key = "contact_name", .grade = Grade::expected, .on = folder | utility,
                  .help = "whom the company may call", .ask = "family", .longest = 80,
                  .example = "Rowan Featherstone"}, contact_name);
    visitor.leaf({.key = "contact_phone", .grade = Grade::expected, .on = folder | utility,
                  .help = "that person's phone", .ask = "family", .shape = TextShape::phone,
                  .example = "555-0156"}, contact_phone);
    visitor.group({.key = "certifier", .help = "who certifies the need", .ask = "prescriber"}, certifier);
}

}  // namespace ventfolio
