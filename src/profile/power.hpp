#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Where a generator runs. Only one of these is safe; the others are listed so that they can be refused.
enum class GeneratorPlace : std::uint8_t { outdoors, indoors, garage, porch, balcony, basement };
template <>
struct Words<GeneratorPlace> {
    static constexpr std::array<std::string_view, 6> words{"outdoors", "indoors", "garage",
                                                           "porch",    "balcony", "basement"};
};

/// Shape of an inverter's current.
enum class Waveform : std::uint8_t { pure_sine, modified };
template <>
struct Words<Waveform> {
    static constexpr std::array<std::string_view, 2> words{"pure_sine", "modified"};
};

/// What a load is.
enum class LoadKind : std::uint8_t {
    ventilator,
    humidifier,
    oxygen,
    suction,
    communication,
    monitor,
    feeding,
    bed,
    chair,
    light,
    other
};
template <>
struct Words<LoadKind> {
    static constexpr std::array<std::string_view, 11> words{"ventilator",    "humidifier", "oxygen",  "suction",
                                                            "communication", "monitor",    "feeding", "bed",
                                                            "chair",         "light",      "other"};
};

/// What happens to a load in an outage.
enum class LoadKeep : std::uint8_t { always, if_possible, switched_off };
template <>
struct Words<LoadKeep> {
    static constexpr std::array<std::string_view, 3> words{"always", "if_possible", "switched_off"};
};

/// Where a battery sits.
enum class BatteryKind : std::uint8_t { internal, detachable, external };
template <>
struct Words<BatteryKind> {
    static constexpr std::array<std::string_view, 3> words{"internal", "detachable", "external"};
};

/// What a battery is made of.
enum class BatteryChemistry : std::uint8_t { lithium, lead_acid, nickel };
template <>
struct Words<BatteryChemistry> {
    static constexpr std::array<std::string_view, 3> words{"lithium", "lead_acid", "nickel"};
};

/// Power from a vehicle.
struct Vehicle {
    Field<std::string> adapter;
    Field<Voltage> voltage;
    Field<Current> rated_current;
    Field<Power> power;
    Field<Date> tested_on;

    void describe(Visitor& visitor);
};

/// A generator for outages.
struct Generator {
    Field<GeneratorPlace> place;
    Field<std::string> location;
    Field<Length> distance;
    Field<Power> power;
    Field<Duration> fuel_time;
    Field<bool> transfer_switch;
    Field<std::string> started_by;

    void describe(Visitor& visitor);
};

/// Turns battery current into wall current.
struct Inverter {
    Field<Waveform> waveform;
    Field<Power> power;

    void describe(Visitor& visitor);
};

/// The home's power and what may stand in for it.
struct PowerSupply {
    Field<std::string> surge_protection;
    Field<std::string> breaker_location;
    Field<std::string> dedicated_circuit;
    Field<Fraction> battery_derating;
    Group<Vehicle> vehicle;
    Group<Generator> generator;
    Group<Inverter> inverter;

    void describe(Visitor& visitor);
};

/// Something that needs power, in the order in which it is kept running.
struct Load {
    Field<std::string> name;
    Field<LoadKind> kind;
    Field<LoadKeep> keep;
    Field<Power> power;
    Field<Power> start_power;
    Field<Duration> own_battery;
    Field<bool> on_battery;
    Field<bool> on_generator;

    void describe(Visitor& visitor);
};

/// A prescription with which a battery was timed.
struct BatteryTest {
    Field<std::string> prescription;
    Field<Revision> revision;

    void describe(Visitor& visitor);
};

/// A battery that runs a ventilator. Only tested time is ever printed.
struct Battery {
    Field<std::string> label;
    Field<BatteryKind> kind;
    Field<std::string> unit;
    Field<Duration> rated_time;
    Field<Duration> tested_time;
    Field<Date> tested_on;
    List<BatteryTest> tested_at;
    Field<Duration> charge_time;
    Field<Date> made_on;
    Field<BatteryChemistry> chemistry;
    Field<Interval> stated_life;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
