#include "profile/supplies.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Supply::describe(Visitor& visitor) {
    visitor.leaf({.key = "item", .grade = Grade::essential, .on = wall | folder, .help = "what it is", .longest = 80,
                  .example = "suction catheter"}, item);
    visitor.leaf({.key = "size", .on = wall | folder, .help = "size as on the box", .longest = 40,
                  .example = "12 Fr"}, size);
    visitor.leaf({.key = "per_month", .grade = Grade::expected, .on = folder, .help = "how many a month",
                  .units = "pieces", .least = 0, .most = 5000, .ask = "equipment_provider",
                  .example = "250 pieces"}, per_month);
    visitor.leaf({.key = "on_hand", .grade = Grade::expected, .on = folder, .help = "how long the stock lasts",
                  .units = "days", .least = 0, .most = 730, .ask = "family", .example = "30 days"}, on_hand);
    visitor.leaf({.key = "reorder_at", .grade = Grade::expected, .on = folder,
                  .help = "order again when the stock lasts", .units = "days", .least = 1, .most = 365,
                  .ask = "equipment_provider", .example = "14 days"}, reorder_at);
    visitor.leaf({.key = "supplier", .grade = Grade::expected, .on = folder, .help = "who sends it", .ask = "family",
                  .longest = 80, .example = "Brackenfell Home Respiratory"}, supplier);
    visitor.leaf({.key = "expires", .on = folder, .help = "earliest use-by date in the stock", .ask = "family",
                  .example = "2027-05-31"}, expires);
    visitor.leaf({.key = "single_use", .on = folder, .help = "marked for single use", .ask = "equipment_provider",
                  .example = "true"}, single_use);
    visitor.leaf({.key = "reuse_interval", .on = folder, .help = "how often it is cleaned and used again",
                  .ask = "equipment_provider", .example = "1 day"}, reuse_interval);
}

void GoBagItem::describe(Visitor& visitor) {
    visitor.leaf({.key = "item", .grade = Grade::essential, .on = wall | folder, .help = "what it is", .longest = 80,
                  .example = "spare neck tube 8.0 mm"}, item);
    visitor.leaf({.key = "number", .grade = Grade::expected, .on = wall | folder, .help = "how many",
                  .units = "pieces", .least = 1, .most = 200, .ask = "family", .example = "1 piece"}, number);
    visitor.leaf({.key = "checked_on", .grade = Grade::expected, .on = folder, .help = "last look", .ask = "family",
                  .example = "2026-01-10"}, checked_on);
    visitor.leaf({.key = "expires", .on = folder, .help = "use-by date", .ask = "family",
                  .example = "2028-06-30"}, expires);
}

}  // namespace ventfolio
