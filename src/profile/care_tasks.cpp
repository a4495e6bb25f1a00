#include "profile/care_tasks.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void CareTask::describe(Visitor& visitor) {
    visitor.leaf({.key = "task", .grade = Grade::essential, .on = wall | folder, .help = "what is done", .longest = 80,
                  .example = "Change the bacterial filter"}, task);
    visitor.leaf({.key = "interval", .on = wall | folder, .help = "how often", .ask = "equipment_provider",
                  .example = "7 days"}, interval);
    visitor.leaf({.key = "how_often", .on = wall | folder, .help = "how often, when it is not counted in days",
                  .longest = 60, .example = "every shift"}, how_often);
    visitor.leaf({.key = "last_done", .on = wall | folder, .help = "when it was last done", .ask = "family",
                  .example = "2026-01-30"}, last_done);
    visitor.leaf({.key = "who", .grade = Grade::expected, .on = wall | folder, .help = "who does it", .ask = "family",
                  .longest = 60, .example = "Priya"}, who);
    visitor.leaf({.key = "source", .grade = Grade::expected, .on = wall | folder, .help = "instructions or clinic",
                  .ask = "equipment_provider", .example = "instructions"}, source);
    visitor.leaf({.key = "method", .on = wall | folder,
                  .help = "cleaning agent, drying and reuse as the instructions say", .ask = "equipment_provider",
                  .example = "warm soapy water, rinse, dry in air"}, method);
}

}  // namespace ventfolio
