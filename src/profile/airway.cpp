#include "profile/airway.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void SpareTube::describe(Visitor& visitor) {
    visitor.leaf({.key = "size", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "inner diameter as on the box", .units = "mm", .least = 2, .most = 11, .zeros = Zeros::keep,
                  .ask = "equipment_provider", .example = "8.0 mm"}, size);
    visitor.leaf({.key = "location", .grade = Grade::expected, .on = wall | folder | crew, .help = "where it is kept",
                  .ask = "family", .longest = 80, .example = "red box at the bed, and go-bag"}, location);
    visitor.leaf({.key = "expires", .on = wall | folder, .help = "use-by date on the box", .ask = "family",
                  .example = "2028-06-30"}, expires);
}

void CuffOrder::describe(Visitor& visitor) {
    visitor.leaf({.key = "pressure", .on = wall | folder | crew, .help = "cuff pressure on the gauge",
                  .units = "cmH2O mmHg hPa", .least = 0, .most = 60, .ask = "prescriber", .setting = true,
                  .example = "25 cmH2O"}, pressure);
    visitor.leaf({.key = "volume", .on = wall | folder | crew, .help = "amount of air or water", .units = "mL",
                  .least = 0, .most = 30, .ask = "prescriber", .example = "6 mL"}, volume);
    visitor.leaf({.key = "up", .on = wall | folder | crew, .help = "when the cuff is filled", .ask = "prescriber",
                  .example = "day_and_night"}, up);
    visitor.leaf({.key = "note", .on = wall | folder, .help = "what else the order says",
                  .example = "flat for 10 minutes at mouth care"}, note);
}

void SpeakingValve::describe(Visitor& visitor) {
    visitor.leaf({.key = "allowed", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "a speaking valve may be used", .ask = "prescriber", .example = "false"}, allowed);
    visitor.leaf({.key = "state", .on = wall | folder, .help = "awake, asleep or both", .ask = "prescriber",
                  .example = "awake"}, state);
    visitor.leaf({.key = "when", .on = wall | folder, .help = "when it may be used", .ask = "prescriber",
                  .longest = 80, .example = "off the ventilator, adult beside her"}, when);
    visitor.leaf({.key = "longest_time", .on = wall | folder, .help = "longest time in one go", .units = "min h",
                  .least = 1, .most = 1440, .ask = "prescriber", .example = "120 min"}, longest_time);
    visitor.leaf({.key = "supervised", .on = wall | folder, .help = "somebody trained stays beside",
                  .ask = "prescriber", .example = "true"}, supervised);
    visitor.leaf({.key = "in_line", .on = wall | folder, .help = "it is used in the hose of the ventilator",
                  .ask = "prescriber", .example = "false"}, in_line);
    visitor.leaf({.key = "cuff_flat_first", .on = wall | folder, .help = "the order says: cuff fully flat first",
                  .ask = "prescriber", .example = "true"}, cuff_flat_first);
    visitor.leaf({.key = "exchanger_off", .on = wall | folder,
                  .help = "the heat and moisture exchanger comes off while the valve is on", .ask = "prescriber",
                  .example = "true"}, exchanger_off);
    visitor.leaf({.key = "own_settings", .on = wall | folder,
                  .help = "orders for baseline and alarms while the valve is in the hose", .ask = "prescriber",
                  .example = "baseline 0 cmH2O, low-volume alarm off"}, own_settings);
}

void Cap::describe(Visitor& visitor) {
    visitor.leaf({.key = "allowed", .grade = Grade::essential, .on = wall | folder | crew, .help = "a cap may be used",
                  .ask = "prescriber", .example = "false"}, allowed);
    visitor.leaf({.key = "state", .on = wall | folder, .help = "awake, asleep or both", .ask = "prescriber",
                  .example = "awake"}, state);
    visitor.leaf({.key = "when", .on = wall | folder, .help = "when it may be used", .ask = "prescriber",
                  .longest = 80, .example = "off the ventilator, 30 minutes at most"}, when);
}

void NeckTube::describe(Visitor& visitor) {
    visitor.leaf({.key = "inner_diameter", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "inner diameter as on the box", .units = "mm", .least = 2, .most = 11, .zeros = Zeros::keep,
                  .ask = "equipment_provider", .example = "8.0 mm"}, inner_diameter);
    visitor.leaf({.key = "measured_with_inner_tube", .on = folder | crew,
                  .help = "that diameter is the one with the inner tube in", .ask = "equipment_provider",
                  .example = "true"}, measured_with_inner_tube);
    visitor.leaf({.key = "inner_tube_diameter", .on = folder, .help = "bore of the inner tube, when it is narrower",
                  .units = "mm", .least = 2, .most = 11, .zeros = Zeros::keep, .ask = "equipment_provider",
                  .example = "7.0 mm"}, inner_tube_diameter);
    visitor.leaf({.key = "outer_diameter", .grade = Grade::expected, .on = folder | crew, .help = "outer diameter",
                  .units = "mm", .least = 3, .most = 16, .zeros = Zeros::keep, .ask = "equipment_provider",
                  .example = "11.3 mm"}, outer_diameter);
    visitor.leaf({.key = "length", .grade = Grade::expected, .on = folder | crew, .help = "length of the tube",
                  .units = "mm", .least = 25, .most = 160, .zeros = Zeros::keep, .ask = "equipment_provider",
                  .example = "88 mm"}, length);
    visitor.leaf({.key = "style", .on = folder | crew,
                  .help = "shape or make to order: straight, curved, extra long, custom", .longest = 80,
                  .example = "standard curve"}, style);
    visitor.leaf({.key = "cuff", .grade = Grade::essential, .on = wall | folder | crew | wallet,
                  .help = "what fills the cuff: air, water or foam; none", .ask = "equipment_provider", .none = true,
                  .example = "air"}, cuff);
    visitor.group({.key = "cuff_order", .help = "how the cuff is filled", .ask = "prescriber"}, cuff_order);
    visitor.leaf({.key = "inner_tube", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "tube inside the neck tube: reusable, disposable or none", .ask = "equipment_provider",
                  .none = true, .example = "disposable"}, inner_tube);
    visitor.leaf({.key = "inner_tube_needed_for_bag", .on = wall | folder | crew,
                  .help = "the breathing bag fits only with the inner tube in", .ask = "equipment_provider",
                  .example = "true"}, inner_tube_needed_for_bag);
    visitor.leaf({.key = "inner_tube_fenestrated", .on = folder, .help = "the inner tube has a window",
                  .ask = "equipment_provider", .example = "false"}, inner_tube_fenestrated);
    visitor.leaf({.key = "fenestrated", .on = folder | crew, .help = "the tube has a window",
                  .ask = "equipment_provider", .example = "false"}, fenestrated);
    describe_opening_and_care(visitor);
}

void NeckTube::describe_opening_and_care(Visitor& visitor) {
    visitor.leaf({.key = "opening_made_on", .grade = Grade::expected, .on = folder | crew,
                  .help = "when the opening in the neck was made", .ask = "clinic",
                  .example = "2021-06-03"}, opening_made_on);
    visitor.leaf({.key = "opening_healed", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "a clinician has called the opening healed", .ask = "clinic",
                  .example = "true"}, opening_healed);
    visitor.leaf({.key = "last_changed", .grade = Grade::expected, .on = wall | folder | crew,
                  .help = "when the tube was last changed", .ask = "family", .example = "2026-01-26"}, last_changed);
    visitor.leaf({.key = "change_interval", .grade = Grade::expected, .on = wall | folder,
                  .help = "how often it is changed", .ask = "prescriber", .example = "30 days"}, change_interval);
    visitor.leaf({.key = "changed_by", .on = wall | folder, .help = "who changes it", .longest = 80,
                  .example = "Priya and the visiting nurse"}, changed_by);
    visitor.group({.key = "spare_same", .grade = Grade::expected, .help = "spare tube of the same size",
                   .ask = "equipment_provider", .none = true}, spare_same);
    visitor.group({.key = "spare_smaller", .grade = Grade::expected, .help = "spare tube one size smaller",
                   .ask = "equipment_provider", .none = true}, spare_smaller);
    visitor.group({.key = "speaking_valve", .grade = Grade::expected, .help = "whether a speaking valve may be used",
                   .ask = "prescriber", .none = true}, speaking_valve);
    visitor.group({.key = "cap", .help = "whether the tube may be closed with a cap", .ask = "prescriber",
                   .none = true}, cap);
}

void Airway::describe(Visitor& visitor) {
    visitor.leaf({.key = "upper", .grade = Grade::expected, .on = wall | folder | crew | wallet,
                  .help = "whether air can pass from the mouth to the lungs", .ask = "surgeon",
                  .example = "open"}, upper);
    visitor.leaf({.key = "upper_note", .on = folder | crew, .help = "what makes the mouth route difficult",
                  .longest = 80, .example = "small mouth opening"}, upper_note);
    visitor.group({.key = "neck_tube", .grade = Grade::essential,
                   .help = "the tube in the neck; none if there is none", .ask = "equipment_provider",
                   .none = true}, neck_tube);
}

}  // namespace ventfolio
