#include "profile/baseline.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void NormalOxygenLevel::describe(Visitor& visitor) {
    visitor.leaf({.key = "level", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "usual range on the oximeter", .units = "%", .least = 50, .most = 100, .ask = "clinic",
                  .example = "{from: 94 %, to: 97 %}"}, level);
    visitor.leaf({.key = "breathing", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "room air, or how much oxygen", .ask = "clinic", .longest = 60,
                  .example = "room air"}, breathing);
}

void NormalBloodPressure::describe(Visitor& visitor) {
    visitor.leaf({.key = "systolic", .grade = Grade::essential, .on = folder | crew, .help = "upper number",
                  .units = "mmHg", .least = 40, .most = 260, .ask = "clinic",
                  .example = "{from: 105 mmHg, to: 130 mmHg}"}, systolic);
    visitor.leaf({.key = "diastolic", .grade = Grade::essential, .on = folder | crew, .help = "lower number",
                  .units = "mmHg", .least = 20, .most = 160, .ask = "clinic",
                  .example = "{from: 65 mmHg, to: 80 mmHg}"}, diastolic);
}

void NormalCarbonDioxide::describe(Visitor& visitor) {
    visitor.leaf({.key = "level", .grade = Grade::essential, .on = folder | crew, .help = "carbon dioxide",
                  .units = "mmHg kPa", .least = 10, .most = 150, .ask = "clinic", .example = "42 mmHg"}, level);
    visitor.leaf({.key = "method", .grade = Grade::expected, .on = folder | crew, .help = "how it was measured",
                  .ask = "clinic", .longest = 60, .example = "through the skin"}, method);
    visitor.leaf({.key = "date", .grade = Grade::expected, .on = folder | crew, .help = "when", .ask = "clinic",
                  .example = "2025-12-18"}, date);
}

void NormalSecretions::describe(Visitor& visitor) {
    visitor.leaf({.key = "look", .grade = Grade::expected, .on = wall | folder | crew, .help = "usual look",
                  .ask = "family", .longest = 60, .example = "clear to white"}, look);
    visitor.leaf({.key = "thickness", .grade = Grade::expected, .on = wall | folder | crew, .help = "usual thickness",
                  .ask = "family", .example = "thin"}, thickness);
    visitor.leaf({.key = "bloody", .on = folder | crew, .help = "blood is usual in it", .ask = "family",
                  .example = "false"}, bloody);
    visitor.leaf({.key = "suctions", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "how often it is suctioned in 24 hours", .units = "times/day", .least = 0, .most = 100,
                  .ask = "family", .example = "{from: 6 times/day, to: 10 times/day}"}, suctions);
}

void Baseline::describe(Visitor& visitor) {
    visitor.leaf({.key = "awareness", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "how awake and aware the person usually is", .ask = "family",
                  .example = "alert, knows people and place"}, awareness);
    visitor.leaf({.key = "speech", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "usual speech; none when the person does not speak", .ask = "family", .none = true,
                  .example = "clear, short phrases"}, speech);
    visitor.group({.key = "oxygen_level_awake", .grade = Grade::expected, .help = "usual oxygen level awake",
                   .ask = "clinic"}, oxygen_level_awake);
    visitor.group({.key = "oxygen_level_asleep", .grade = Grade::expected, .help = "usual oxygen level asleep",
                   .ask = "clinic"}, oxygen_level_asleep);
    visitor.leaf({.key = "heart_rate", .grade = Grade::expected, .on = wall | folder | crew, .help = "usual pulse",
                  .units = "beats/min", .least = 20, .most = 250, .ask = "clinic",
                  .example = "{from: 65 beats/min, to: 90 beats/min}"}, heart_rate);
    visitor.leaf({.key = "breathing_rate", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "usual breathing rate", .units = "breaths/min", .least = 4, .most = 90, .ask = "clinic",
                  .example = "{from: 14 breaths/min, to: 18 breaths/min}"}, breathing_rate);
    visitor.group({.key = "blood_pressure", .help = "usual blood pressure (adults)", .ask = "clinic"}, blood_pressure);
    visitor.group({.key = "carbon_dioxide", .help = "last known carbon dioxide level",
                   .ask = "clinic"}, carbon_dioxide);
    visitor.group({.key = "secretions", .grade = Grade::expected, .help = "usual mucus", .ask = "family",
                   .none = true}, secretions);
    visitor.leaf({.key = "cough", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "how well the person coughs: strong, weak or none", .ask = "clinic", .none = true,
                  .example = "weak"}, cough);
    visitor.leaf({.key = "peak_cough_flow", .on = folder | crew, .help = "strongest cough measured", .units = "L/min",
                  .least = 10, .most = 900, .ask = "clinic", .example = "150 L/min"}, peak_cough_flow);
}

}  // namespace ventfolio
