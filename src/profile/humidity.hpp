#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"
#include "profile/orders.hpp"

namespace ventfolio {

/// What gives humidity; `none` is an answer too.
enum class HumidityKind : std::uint8_t { heated, moisture_exchanger, built_in };
template <>
struct Words<HumidityKind> {
    static constexpr std::array<std::string_view, 3> words{"heated", "moisture_exchanger", "built_in"};
};

/// Water for the humidifier. Tap water is listed so that it can be refused.
enum class Water : std::uint8_t { sterile, distilled, tap };
template <>
struct Words<Water> {
    static constexpr std::array<std::string_view, 3> words{"sterile", "distilled", "tap"};
};

/// Where a heat and moisture exchanger sits. `at_neck_tube`: in a hose without a port, or off the ventilator.
enum class ExchangerPosition : std::uint8_t { person_side_of_port, machine_side_of_port, at_neck_tube };
template <>
struct Words<ExchangerPosition> {
    static constexpr std::array<std::string_view, 3> words{"person_side_of_port", "machine_side_of_port",
                                                           "at_neck_tube"};
};

/// What gives humidity while the ventilator or its heater is off; `none` is an answer too.
enum class AwayHumidityKind : std::uint8_t { moisture_exchanger, mist_collar };
template <>
struct Words<AwayHumidityKind> {
    static constexpr std::array<std::string_view, 2> words{"moisture_exchanger", "mist_collar"};
};

/// A heat and moisture exchanger: gives the breath its own warmth and water back.
struct MoistureExchanger {
    Field<Volume> dead_space;
    Field<Range<Dimension::volume>> breath_range;
    Field<Interval> change_interval;
    Field<ExchangerPosition> position;

    void describe(Visitor& visitor);
};

/// Humidity of one prescription.
struct Humidity {
    Field<HumidityKind> kind;
    Field<Temperature> temperature;
    Field<std::string> level;
    Field<Water> water;
    Group<MoistureExchanger> moisture_exchanger;
    Group<OrderedException> on_battery_order;

    void describe(Visitor& visitor);
};

/// Humidity while the heater or the ventilator is off.
struct AwayHumidity {
    Field<AwayHumidityKind> kind;
    Group<MoistureExchanger> moisture_exchanger;
    Field<std::string> note;

    void describe(Visitor& visitor);
};

/// Humidity beyond the prescriptions: power outage, time off the ventilator.
struct HumidityPlan {
    Field<bool> exchanger_ruled_out;
    Field<std::string> exchanger_ruled_out_reason;
    Group<AwayHumidity> outage_swap;
    Group<AwayHumidity> off_ventilator;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
