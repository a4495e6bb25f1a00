#include "profile/power.hpp"

namespace ventfolio {

// A table: one field to a row, in the order in which a profile is written.
// clang-format off

void Vehicle::describe(Visitor& visitor) {
    visitor.leaf({.key = "adapter", .grade = Grade::essential, .on = wall | folder, .help = "adapter or cable",
                  .longest = 80, .example = "12 V cable for unit B"}, adapter);
    visitor.leaf({.key = "voltage", .on = folder, .help = "voltage of the socket", .units = "V", .least = 3,
                  .most = 60, .ask = "equipment_provider", .example = "12 V"}, voltage);
    visitor.leaf({.key = "rated_current", .on = folder, .help = "rating of the socket", .units = "A", .least = 1,
                  .most = 100, .ask = "family", .example = "10 A"}, rated_current);
    visitor.leaf({.key = "power", .on = folder, .help = "power that the machine draws from it", .units = "W",
                  .least = 0.5, .most = 5000, .ask = "equipment_provider", .example = "60 W"}, power);
    visitor.leaf({.key = "tested_on", .on = wall | folder, .help = "last try", .ask = "family",
                  .example = "2025-12-15"}, tested_on);
}

void Generator::describe(Visitor& visitor) {
    visitor.leaf({.key = "place", .grade = Grade::essential, .on = wall | folder | fire, .help = "where it runs",
                  .ask = "family", .example = "outdoors"}, place);
    visitor.leaf({.key = "location", .grade = Grade::expected, .on = wall | folder | fire, .help = "where exactly",
                  .ask = "family", .longest = 80, .example = "back yard, by the shed"}, location);
    visitor.leaf({.key = "distance", .grade = Grade::expected, .on = wall | folder,
                  .help = "distance from windows, doors and vents", .units = "m ft", .least = 0, .most = 200,
                  .ask = "family", .example = "7 m"}, distance);
    visitor.leaf({.key = "power", .grade = Grade::expected, .on = wall | folder,
                  .help = "power it gives without a break", .units = "W kW", .least = 50, .most = 50000,
                  .ask = "family", .example = "2200 W"}, power);
    visitor.leaf({.key = "fuel_time", .on = wall | folder, .help = "how long one tank lasts", .units = "h",
                  .least = 0.5, .most = 240, .ask = "family", .example = "8 h"}, fuel_time);
    visitor.leaf({.key = "transfer_switch", .on = wall | folder, .help = "an electrician has fitted a transfer switch",
                  .ask = "family", .example = "false"}, transfer_switch);
    visitor.leaf({.key = "started_by", .on = wall | folder, .help = "who starts it", .longest = 60,
                  .example = "Bryn Ashdown"}, started_by);
}

void Inverter::describe(Visitor& visitor) {
    visitor.leaf({.key = "waveform", .grade = Grade::essential, .on = wall | folder, .help = "pure_sine or modified",
                  .ask = "equipment_provider", .example = "pure_sine"}, waveform);
    visitor.leaf({.key = "power", .grade = Grade::expected, .on = wall | folder,
                  .help = "power it gives without a break", .units = "W kW", .least = 10, .most = 10000,
                  .ask = "equipment_provider", .example = "600 W"}, power);
}

void PowerSupply::describe(Visitor& visitor) {
    visitor.leaf({.key = "surge_protection", .grade = Grade::expected, .on = wall | folder,
                  .help = "what protects the machines from surges", .ask = "equipment_provider", .none = true,
                  .longest = 80, .example = "surge strip behind the bed"}, surge_protection);
    visitor.leaf({.key = "breaker_location", .grade = Grade::expected, .on = wall | folder,
                  .help = "where the circuit breakers are", .ask = "family", .longest = 80,
                  .example = "hall cupboard, left door"}, breaker_location);
    visitor.leaf({.key = "dedicated_circuit", .grade = Grade::expected, .on = wall | folder,
                  .help = "circuit that only the machines use", .ask = "family", .none = true, .longest = 80,
                  .example = "breaker 7, bedroom outlets"}, dedicated_circuit);
    visitor.leaf({.key = "battery_derating", .on = folder,
                  .help = "share of the tested battery time that the plan counts; 80 % when not given", .units = "%",
                  .least = 30, .most = 100, .ask = "equipment_provider", .example = "80 %"}, battery_derating);
    visitor.group({.key = "vehicle", .help = "power from a vehicle", .ask = "family", .none = true}, vehicle);
    visitor.group({.key = "generator", .help = "a generator", .ask = "family", .none = true}, generator);
    visitor.group({.key = "inverter", .help = "an inverter", .ask = "family", .none = true}, inverter);
}

void Load::describe(Visitor& visitor) {
    visitor.leaf({.key = "name", .grade = Grade::essential, .on = wall | folder,
                  .help = "what it is, in household words", .ask = "family", .longest = 60,
                  .example = "ventilator unit A"}, name);
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = folder, .help = "what it is",
                  .ask = "equipment_provider", .example = "ventilator"}, kind);
    visitor.leaf({.key = "keep", .grade = Grade::essential, .on = wall | folder,
                  .help = "in an outage: always, if_possible or switched_off", .ask = "equipment_provider",
                  .example = "always"}, keep);
    visitor.leaf({.key = "power", .grade = Grade::expected, .on = wall | folder,
                  .help = "power while running, measured or from its label", .units = "W kW", .least = 0.5,
                  .most = 5000, .ask = "equipment_provider", .example = "55 W"}, power);
    visitor.leaf({.key = "start_power", .on = folder, .help = "power in the moment of starting", .units = "W kW",
                  .least = 0.5, .most = 20000, .ask = "equipment_provider", .example = "700 W"}, start_power);
    visitor.leaf({.key = "own_battery", .on = wall | folder, .help = "time on its own battery; none if it has none",
                  .units = "min h", .least = 1, .most = 2880, .ask = "equipment_provider", .none = true,
                  .example = "60 min"}, own_battery);
    visitor.leaf({.key = "on_battery", .on = folder, .help = "in an outage it draws from the ventilator's batteries",
                  .ask = "equipment_provider", .example = "true"}, on_battery);
    visitor.leaf({.key = "on_generator", .on = folder, .help = "in an outage it runs from the generator",
                  .ask = "family", .example = "false"}, on_generator);
}

void BatteryTest::describe(Visitor& visitor) {
    visitor.leaf({.key = "prescription", .grade = Grade::essential, .on = folder, .help = "id of the prescription",
                  .ask = "equipment_provider", .longest = 20, .example = "P1"}, prescription);
    visitor.leaf({.key = "revision", .grade = Grade::essential, .on = folder, .help = "its revision then",
                  .ask = "equipment_provider", .example = "R1"}, revision);
}

void Battery::describe(Visitor& visitor) {
    visitor.leaf({.key = "label", .grade = Grade::essential, .on = wall | folder, .help = "household name",
                  .ask = "equipment_provider", .longest = 60, .example = "unit A, built in"}, label);
    visitor.leaf({.key = "kind", .grade = Grade::essential, .on = wall | folder,
                  .help = "internal, detachable or external", .ask = "equipment_provider",
                  .example = "internal"}, kind);
    visitor.leaf({.key = "unit", .grade = Grade::essential, .on = wall | folder,
                  .help = "label of the ventilator that it runs", .ask = "equipment_provider", .longest = 40,
                  .example = "Unit A"}, unit);
    visitor.leaf({.key = "rated_time", .help = "the maker's claim; never printed", .units = "min h", .least = 1,
                  .most = 2880, .example = "300 min"}, rated_time);
    visitor.leaf({.key = "tested_time", .grade = Grade::expected, .on = wall | folder,
                  .help = "how long it ran this ventilator", .units = "min h", .least = 1, .most = 2880,
                  .ask = "equipment_provider", .example = "220 min"}, tested_time);
    visitor.leaf({.key = "tested_on", .grade = Grade::expected, .on = wall | folder, .help = "when it was timed",
                  .ask = "equipment_provider", .example = "2025-12-15"}, tested_on);
    visitor.list({.key = "tested_at", .grade = Grade::expected, .help = "prescriptions that ran while it was timed",
                  .ask = "equipment_provider"}, tested_at);
    visitor.leaf({.key = "charge_time", .grade = Grade::expected, .on = wall | folder,
                  .help = "time to charge it fully", .units = "h min", .least = 0.2, .most = 48,
                  .ask = "equipment_provider", .example = "4 h"}, charge_time);
    visitor.leaf({.key = "made_on", .on = folder, .help = "when it was made", .ask = "equipment_provider",
                  .example = "2025-02-01"}, made_on);
    visitor.leaf({.key = "chemistry", .on = folder, .help = "what it is made of", .ask = "equipment_provider",
                  .example = "lithium"}, chemistry);
    visitor.leaf({.key = "stated_life", .on = folder, .help = "how long the maker says it lasts",
                  .ask = "equipment_provider", .example = "3 years"}, stated_life);
}

}  // namespace ventfolio
