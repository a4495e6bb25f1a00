#include "profile/humidity.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void MoistureExchanger::describe(Visitor& visitor) {
    visitor.leaf({.key = "dead_space", .grade = Grade::essential, .on = wall | folder, .help = "its inner volume",
                  .units = "mL", .least = 1, .most = 150, .ask = "equipment_provider",
                  .example = "50 mL"}, dead_space);
    visitor.leaf({.key = "breath_range", .grade = Grade::expected, .on = folder, .help = "breath sizes it is made for",
                  .units = "mL", .least = 5, .most = 3000, .ask = "equipment_provider",
                  .example = "{from: 250 mL, to: 1500 mL}"}, breath_range);
    visitor.leaf({.key = "change_interval", .grade = Grade::expected, .on = wall | folder,
                  .help = "how often it is changed", .ask = "equipment_provider",
                  .example = "1 day"}, change_interval);
    visitor.leaf({.key = "position", .grade = Grade::expected, .on = wall | folder, .help = "where it sits",
                  .ask = "equipment_provider", .example = "person_side_of_port"}, position);
}

void Humidity::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder | crew,
                  .help = "heated, moisture_exchanger, built_in or none", .ask = "prescriber", .none = true,
                  .example = "heated"}, kind);
    visitor.leaf({.key = "temperature", .on = wall | folder, .help = "temperature at the person's end",
                  .units = "°C °F", .least = 25, .most = 43, .ask = "prescriber", .setting = true,
                  .example = "37 °C"}, temperature);
    visitor.leaf({.key = "level", .on = wall | folder, .help = "level on the machine's own scale", .ask = "prescriber",
                  .setting = true, .longest = 40, .example = "3 of 5"}, level);
    visitor.leaf({.key = "water", .on = wall | folder, .help = "which water goes in", .ask = "equipment_provider",
                  .example = "sterile"}, water);
    visitor.group({.key = "moisture_exchanger", .help = "the heat and moisture exchanger in this hose",
                   .ask = "equipment_provider", .none = true}, moisture_exchanger);
    visitor.group({.key = "on_battery_order",
                   .help = "order that lets the heater run from a battery"}, on_battery_order);
}

void AwayHumidity::describe(Visitor& visitor) {
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder,
                  .help = "moisture_exchanger, mist_collar or none", .ask = "prescriber", .none = true,
                  .example = "moisture_exchanger"}, kind);
    visitor.group({.key = "moisture_exchanger", .help = "the heat and moisture exchanger used then",
                   .ask = "equipment_provider"}, moisture_exchanger);
    visitor.leaf({.key = "note", .on = wall | folder, .help = "what else is agreed", .longest = 120,
                  .example = "off while the speaking valve is on"}, note);
}

void HumidityPlan::describe(Visitor& visitor) {
    visitor.leaf({.key = "exchanger_ruled_out", .grade = Grade::expected, .on = wall | folder,
                  .help = "a heat and moisture exchanger must not be used for this person", .ask = "prescriber",
                  .example = "false"}, exchanger_ruled_out);
    visitor.leaf({.key = "exchanger_ruled_out_reason", .on = wall | folder, .help = "why not", .ask = "prescriber",
                  .longest = 120, .example = "thick mucus"}, exchanger_ruled_out_reason);
    visitor.group({.key = "outage_swap", .help = "what stands in for the heated humidifier in a power outage",
                   .ask = "prescriber", .none = true}, outage_swap);
    visitor.group({.key = "off_ventilator", .help = "what gives humidity off the ventilator", .ask = "prescriber",
                   .none = true}, off_ventilator);
}

}  // namespace ventfolio
