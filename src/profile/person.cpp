#include "profile/person.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Languages::describe(Visitor& visitor) {
    visitor.leaf({.key = "spoken", .grade = Grade::expected, .on = folder | crew,
                  .help = "languages spoken in the home", .ask = "family", .example = "[English]"}, spoken);
    visitor.leaf({.key = "read", .grade = Grade::expected, .on = folder,
                  .help = "languages that those who use the paper can read", .ask = "family",
                  .example = "[English]"}, read);
    visitor.leaf({.key = "interpreter", .on = folder | crew, .help = "how to get an interpreter",
                  .example = "by phone, through the hospital"}, interpreter);
    visitor.leaf({.key = "second_on_paper", .on = folder,
                  .help = "a second language printed beside the first; its text must be reviewed",
                  .example = "Spanish"}, second_on_paper);
}

void Person::describe(Visitor& visitor) {
    visitor.leaf({.key = "legal_name", .grade = Grade::essential, .on = folder | crew | wallet | utility | fire,
                  .help = "full name as on official papers", .ask = "family", .longest = 80,
                  .example = "Wilhelmina Featherstone"}, legal_name);
    visitor.leaf({.key = "preferred_name", .grade = Grade::essential, .on = wall | folder | crew | wallet | fire,
                  .help = "name that the person answers to", .ask = "family", .longest = 40,
                  .example = "Minna"}, preferred_name);
    visitor.leaf({.key = "birth_date", .grade = Grade::essential, .on = folder | crew,
                  .help = "date of birth, year-month-day", .ask = "family", .example = "1978-02-11"}, birth_date);
    visitor.leaf({.key = "weight", .grade = Grade::expected, .on = folder | crew | wallet, .help = "body weight",
                  .units = "kg g lb", .least = 0.5, .most = 350, .ask = "family", .example = "61 kg"}, weight);
    visitor.leaf({.key = "weight_date", .grade = Grade::expected, .on = folder | crew,
                  .help = "when the weight was taken", .ask = "family", .example = "2025-12-30"}, weight_date);
    visitor.leaf({.key = "height", .on = folder | crew, .help = "body height", .units = "cm in m", .least = 40,
                  .most = 230, .ask = "clinic", .example = "170 cm"}, height);
    visitor.leaf({.key = "height_method", .on = folder,
                  .help = "how the height was found when the spine is curved or legs are bent", .ask = "clinic",
                  .example = "lying"}, height_method);
    visitor.leaf({.key = "arm_span", .on = folder, .help = "finger tip to finger tip, when height cannot be measured",
                  .units = "cm in m", .least = 40, .most = 240, .ask = "clinic", .example = "171 cm"}, arm_span);
    visitor.leaf({.key = "sex_for_volume", .on = folder, .help = "which formula predicts the body weight of an adult",
                  .ask = "clinic", .example = "male"}, sex_for_volume);
    visitor.leaf({.key = "reference_weight", .on = folder,
                  .help = "weight chosen by a clinician for volumes, when none can be predicted", .units = "kg",
                  .least = 0.5, .most = 350, .ask = "prescriber", .example = "58 kg"}, reference_weight);
    visitor.group({.key = "languages", .grade = Grade::expected, .help = "what is spoken and read in the home",
                   .ask = "family"}, languages);
    visitor.leaf({.key = "hearing", .on = wall | folder | crew, .help = "hearing loss and hearing aids",
                  .example = "hearing aid in the left ear"}, hearing);
    visitor.leaf({.key = "vision", .on = wall | folder | crew, .help = "poor sight and glasses",
                  .example = "glasses for reading"}, vision);
}

}  // namespace ventfolio
