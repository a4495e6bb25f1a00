#include "profile/contacts.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Contact::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::expected, .on = wall | folder | crew | wallet | utility | fire,
                  .help = "person, firm or desk", .ask = "family", .longest = 80,
                  .example = "Brackenfell Home Respiratory"}, name);
    visitor.leaf({.key = "phone", .grade = Grade::essential, .on = wall | folder | crew | wallet | utility | fire,
                  .help = "phone number", .ask = "family", .shape = TextShape::phone, .example = "555-0120"}, phone);
    visitor.leaf({.key = "other_phone", .on = wall | folder | crew, .help = "second number", .shape = TextShape::phone,
                  .example = "555-0121"}, other_phone);
    visitor.leaf({.key = "all_hours", .on = wall | folder, .help = "answers day and night", .ask = "family",
                  .example = "true"}, all_hours);
    visitor.leaf({.key = "response_time", .on = wall | folder, .help = "how soon help arrives", .units = "h min",
                  .least = 0, .most = 168, .ask = "equipment_provider", .example = "2 h"}, response_time);
    visitor.leaf({.key = "when_to_call", .on = wall | folder, .help = "what to call for", .longest = 120,
                  .example = "machine, hose or oxygen trouble"}, when_to_call);
    visitor.leaf({.key = "reason", .on = folder | crew, .help = "why this one (hospital)", .longest = 120,
                  .example = "knows Toby, has the old records"}, reason);
}

void OtherContact::describe(Visitor& visitor) {
    visitor.leaf({.key = "role", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "who this is to the family", .longest = 60, .example = "wheelchair firm"}, role);
    visitor.leaf({.key = "name", .on = wall | folder | crew, .help = "person or firm", .longest = 80,
                  .example = "Hollow Oak Seating"}, name);
    visitor.leaf({.key = "phone", .grade = Grade::essential, .on = wall | folder | crew, .help = "phone number",
                  .shape = TextShape::phone, .example = "555-0188"}, phone);
}

void Contacts::describe(Visitor& visitor) {
    visitor.group({.key = "emergency", .help = "the emergency number; left out, it is that of the region",
                   .ask = "family"}, emergency);
    visitor.group({.key = "equipment_provider", .grade = Grade::essential,
                   .help = "who owns and repairs the machines, day and night",
                   .ask = "equipment_provider"}, equipment_provider);
    visitor.group({.key = "prescriber_on_call", .grade = Grade::essential,
                   .help = "the prescriber or whoever stands in at night", .ask = "prescriber"}, prescriber_on_call);
    visitor.group({.key = "clinic", .help = "the ventilation clinic", .ask = "clinic"}, clinic);
    visitor.group({.key = "primary_care", .help = "family doctor", .ask = "family"}, primary_care);
    visitor.group({.key = "home_nursing", .help = "home nursing", .ask = "family"}, home_nursing);
    visitor.group({.key = "hospital", .grade = Grade::expected, .help = "hospital that the family prefers",
                   .ask = "family"}, hospital);
    visitor.group({.key = "pharmacy", .help = "pharmacy", .ask = "family"}, pharmacy);
    visitor.group({.key = "family", .grade = Grade::expected, .help = "family member to call first",
                   .ask = "family"}, family);
    visitor.group({.key = "nearby_helper", .help = "somebody near who can come", .ask = "family"}, nearby_helper);
    visitor.group({.key = "interpreter", .help = "interpreter", .ask = "family"}, interpreter);
    visitor.group({.key = "poison_line", .help = "poison line", .ask = "family"}, poison_line);
    visitor.list({.key = "others", .help = "further contacts"}, others);
}

void EscalationStep::describe(Visitor& visitor) {
    visitor.leaf({.key = "call", .grade = Grade::essential, .on = wall | folder, .help = "a contact by its key",
                  .ask = "clinic", .example = "equipment_provider"}, call);
    visitor.leaf({.key = "when", .grade = Grade::expected, .on = wall | folder, .help = "when this one is called",
                  .ask = "clinic", .longest = 120, .example = "machine trouble, and the person is well"}, when);
}

}  // namespace ventfolio
