#include "profile/suction.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Suction::describe(Visitor& visitor) {
    visitor.leaf({.key = "use", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "neck_tube or mouth_only", .ask = "clinic", .example = "neck_tube"}, use);
    visitor.leaf({.key = "device", .on = wall | folder, .help = "what kind of pump, in general words", .longest = 60,
                  .example = "portable pump at the bed"}, device);
    visitor.leaf({.key = "catheter_size", .on = wall | folder | crew, .help = "catheter size as on the packet",
                  .units = "Fr mm", .least = 4, .most = 20, .zeros = Zeros::keep, .ask = "equipment_provider",
                  .example = "12 Fr"}, catheter_size);
    visitor.leaf({.key = "closed_system", .on = wall | folder, .help = "the catheter stays in a sleeve in the hose",
                  .ask = "equipment_provider", .example = "false"}, closed_system);
    visitor.leaf({.key = "depth", .on = wall | folder | crew, .help = "how deep the catheter goes", .units = "cm mm",
                  .least = 3, .most = 30, .ask = "clinic", .example = "11 cm"}, depth);
    visitor.leaf({.key = "depth_mark", .on = wall | folder, .help = "to which mark, and with which adapter on",
                  .ask = "clinic", .longest = 80,
                  .example = "to the 11 cm mark, measured with the hose off"}, depth_mark);
    visitor.leaf({.key = "connector_length", .on = folder,
                  .help = "length of the tube connector and adapter that the catheter passes first", .units = "cm mm",
                  .least = 0, .most = 12, .ask = "equipment_provider", .example = "1.5 cm"}, connector_length);
    visitor.leaf({.key = "pressure", .on = wall | folder | crew, .help = "suction pressure on the gauge", .units = "mmHg kPa",
                  .least = 20, .most = 500, .ask = "prescriber", .setting = true, .example = "120 mmHg"}, pressure);
    visitor.leaf({.key = "longest_pass", .grade = Grade::expected, .on = wall | folder,
                  .help = "longest time for one pass", .units = "s", .least = 1, .most = 60, .ask = "clinic",
                  .example = "10 s"}, longest_pass);
    visitor.leaf({.key = "saline", .grade = Grade::expected, .on = wall | folder, .help = "never or only_if_thick",
                  .ask = "prescriber", .example = "never"}, saline);
    visitor.leaf({.key = "saline_volume", .on = wall | folder, .help = "how much salt water, where allowed",
                  .units = "mL", .least = 0.1, .most = 10, .ask = "prescriber", .example = "0.5 mL"}, saline_volume);
    visitor.leaf({.key = "portable_time", .on = wall | folder, .help = "how long the pump runs on its own battery",
                  .units = "min h", .least = 1, .most = 720, .ask = "equipment_provider",
                  .example = "60 min"}, portable_time);
    visitor.leaf({.key = "hand_device", .on = wall | folder, .help = "a hand suction device is in the home",
                  .ask = "equipment_provider", .example = "true"}, hand_device);
}

}  // namespace ventfolio
