#include "profile/profile.hpp"

namespace ventfolio {

Profile::Profile() = default;
Profile::Profile(const Profile& other) = default;
Profile::Profile(Profile&& other) noexcept = default;
Profile& Profile::operator=(const Profile& other) = default;
Profile& Profile::operator=(Profile&& other) noexcept = default;
Profile::~Profile() = default;

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Profile::describe(Visitor& visitor) {
    visitor.leaf({.key = "record_number", .grade = Grade::essential,
                  .on = wall | folder | crew | wallet | utility | fire,
                  .help = "number that names this record: capital letters, digits and hyphens", .ask = "clinic",
                  .shape = TextShape::record_number, .longest = 32, .example = "DEMO-1"}, record_number);
    visitor.group({.key = "orders", .grade = Grade::essential, .help = "the order behind this revision",
                   .ask = "prescriber"}, orders);
    visitor.group({.key = "person", .grade = Grade::essential, .help = "who the papers are for",
                   .ask = "family"}, person);
    visitor.group({.key = "diagnosis", .grade = Grade::essential, .help = "why this person is on a ventilator",
                   .ask = "prescriber"}, diagnosis);
    visitor.group({.key = "dependence", .grade = Grade::essential, .help = "what happens without the machine",
                   .ask = "prescriber"}, dependence);
    visitor.group({.key = "airway", .grade = Grade::essential, .help = "the way the breath takes",
                   .ask = "clinic"}, airway);
    visitor.list({.key = "devices", .grade = Grade::essential, .help = "the ventilators in this home",
                  .ask = "equipment_provider"}, devices);
    visitor.group({.key = "remote_alarm", .grade = Grade::expected,
                   .help = "a repeater that sounds where the caregiver is", .ask = "equipment_provider",
                   .none = true}, remote_alarm);
    visitor.list({.key = "prescriptions", .grade = Grade::essential,
                  .help = "one set of orders for each place: bed, chair, night, sick day",
                  .ask = "prescriber"}, prescriptions);
    visitor.group({.key = "humidity_plan", .grade = Grade::expected,
                   .help = "humidity in an outage and off the ventilator", .ask = "prescriber"}, humidity_plan);
    visitor.group({.key = "oxygen", .grade = Grade::essential, .help = "oxygen and the levels that guide it",
                   .ask = "prescriber"}, oxygen);
    visitor.group({.key = "suction", .grade = Grade::expected, .help = "clearing the airway with a suction catheter",
                   .ask = "clinic", .none = true}, suction);
    visitor.group({.key = "cough_device", .help = "cough machine", .ask = "prescriber", .none = true}, cough_device);
    visitor.group({.key = "airway_clearance", .help = "other ways to clear the airway", .ask = "clinic",
                   .none = true}, airway_clearance);
    describe_person_in_care(visitor);
    describe_power_and_home(visitor);
}

void Profile::describe_person_in_care(Visitor& visitor) {
    visitor.group({.key = "monitors", .grade = Grade::expected, .help = "what watches the person and the home",
                   .ask = "prescriber"}, monitors);
    visitor.group({.key = "baseline", .grade = Grade::expected, .help = "normal for this person",
                   .ask = "clinic"}, baseline);
    visitor.group({.key = "communication", .grade = Grade::expected, .help = "how to talk with this person",
                   .ask = "family"}, communication);
    visitor.group({.key = "feeding", .grade = Grade::expected, .help = "swallowing and food",
                   .ask = "family"}, feeding);
    visitor.group({.key = "mobility", .grade = Grade::expected, .help = "moving and lifting",
                   .ask = "family"}, mobility);
    visitor.list({.key = "implants", .grade = Grade::expected, .help = "things built into the body; none",
                  .ask = "family", .none = true}, implants);
    visitor.group({.key = "special_risks", .help = "risks that change what a crew does", .ask = "prescriber",
                   .none = true}, special_risks);
    visitor.group({.key = "allergies", .grade = Grade::expected, .help = "allergies", .ask = "family"}, allergies);
    visitor.list({.key = "medicines", .grade = Grade::expected, .help = "medicines that change what a crew does; none",
                  .ask = "family", .none = true}, medicines);
    visitor.list({.key = "avoid_medicines", .help = "medicines to avoid", .ask = "prescriber",
                  .none = true}, avoid_medicines);
}

void Profile::describe_power_and_home(Visitor& visitor) {
    visitor.group({.key = "emergency_equipment", .grade = Grade::expected,
                   .help = "what is at hand when machine or tube fails",
                   .ask = "equipment_provider"}, emergency_equipment);
    visitor.group({.key = "power", .grade = Grade::expected, .help = "the home's power and what may stand in for it",
                   .ask = "family"}, power);
    visitor.list({.key = "batteries", .grade = Grade::expected, .help = "batteries that run a ventilator",
                  .ask = "equipment_provider", .none = true}, batteries);
    visitor.list({.key = "loads", .grade = Grade::expected,
                  .help = "what needs power, in the order in which it is kept running",
                  .ask = "equipment_provider"}, loads);
    visitor.group({.key = "utility_company", .grade = Grade::expected, .help = "the power company",
                   .ask = "family"}, utility_company);
    visitor.group({.key = "contacts", .grade = Grade::essential, .help = "whom to call", .ask = "family"}, contacts);
    visitor.list({.key = "escalation", .grade = Grade::expected, .help = "whom to call first, second and third",
                  .ask = "clinic"}, escalation);
    visitor.group({.key = "home", .grade = Grade::essential, .help = "the home and the way in",
                   .ask = "family"}, home);
    visitor.group({.key = "evacuation", .grade = Grade::expected, .help = "how the person leaves",
                   .ask = "family"}, evacuation);
    visitor.list({.key = "caregivers", .grade = Grade::expected, .help = "who looks after the person",
                  .ask = "family"}, caregivers);
    visitor.group({.key = "night_cover", .grade = Grade::expected, .help = "who is awake at night",
                   .ask = "family"}, night_cover);
    visitor.list({.key = "care_tasks", .grade = Grade::expected, .help = "what is done again and again",
                  .ask = "equipment_provider"}, care_tasks);
    visitor.list({.key = "supplies", .grade = Grade::expected, .help = "what is used up",
                  .ask = "equipment_provider"}, supplies);
    visitor.list({.key = "go_bag", .grade = Grade::expected, .help = "what is packed to leave",
                  .ask = "family"}, go_bag);
    visitor.group({.key = "directive", .grade = Grade::expected, .help = "whether a signed order exists, and where",
                   .ask = "decision_maker"}, directive);
    visitor.group({.key = "consent", .help = "permissions for the letters", .ask = "family"}, consent);
    visitor.list({.key = "translations", .help = "reviews of a second language"}, translations);
    visitor.list({.key = "copies", .grade = Grade::expected, .help = "where each sheet hangs", .ask = "family",
                  .none = true}, copies);
    visitor.list({.key = "accepted", .help = "findings that a clinician means"}, accepted);
}

}  // namespace ventfolio
