#include "profile/cough.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void CoughDevice::describe(Visitor& visitor) {
    visitor.leaf({.key = "pressure_in", .grade = Grade::essential, .on = wall | folder | crew, .help = "pressure in",
                  .units = "cmH2O hPa mbar", .least = -100, .most = 100, .ask = "prescriber", .setting = true,
                  .example = "40 cmH2O"}, pressure_in);
    visitor.leaf({.key = "pressure_out", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "pressure out, with its minus sign", .units = "cmH2O hPa mbar", .least = -100, .most = 100,
                  .ask = "prescriber", .setting = true, .example = "-40 cmH2O"}, pressure_out);
    visitor.leaf({.key = "time_in", .grade = Grade::expected, .on = wall | folder, .help = "time in", .units = "s",
                  .least = 0.2, .most = 10, .ask = "prescriber", .setting = true, .example = "2.5 s"}, time_in);
    visitor.leaf({.key = "time_out", .grade = Grade::expected, .on = wall | folder, .help = "time out", .units = "s",
                  .least = 0.2, .most = 10, .ask = "prescriber", .setting = true, .example = "2 s"}, time_out);
    visitor.leaf({.key = "pause", .on = wall | folder, .help = "pause between breaths", .units = "s", .least = 0,
                  .most = 20, .ask = "prescriber", .setting = true, .example = "1 s"}, pause);
    visitor.leaf({.key = "sets", .grade = Grade::expected, .on = wall | folder,
                  .help = "breaths in a set, and how many sets", .ask = "prescriber", .longest = 60,
                  .example = "5 breaths, 4 sets"}, sets);
    visitor.leaf({.key = "times", .grade = Grade::expected, .on = wall | folder, .help = "how often a day",
                  .ask = "prescriber", .longest = 60, .example = "2 daily and as needed"}, times);
    visitor.leaf({.key = "through", .grade = Grade::expected, .on = wall | folder,
                  .help = "through tube or mask, and how the cuff is", .ask = "prescriber", .longest = 60,
                  .example = "neck tube, cuff filled"}, through);
}

void AirwayClearance::describe(Visitor& visitor) {
    visitor.leaf({.key = "air_stacking", .on = wall | folder, .help = "stacking breaths before a cough",
                  .longest = 120, .example = "3 breaths from the mouthpiece, then hold"}, air_stacking);
    visitor.leaf({.key = "assisted_cough", .on = wall | folder, .help = "a push on the belly or chest with the cough",
                  .longest = 120, .example = "belly push with each cough"}, assisted_cough);
    visitor.leaf({.key = "vest", .on = wall | folder, .help = "a vest that shakes the chest", .longest = 120,
                  .example = "20 minutes each morning"}, vest);
    visitor.leaf({.key = "nebulizer", .on = wall | folder, .help = "nebulizer in the home, and what for", .none = true,
                  .longest = 120, .example = "salt-water mist as needed"}, nebulizer);
}

}  // namespace ventfolio
