#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// When the oximeter is on.
enum class OximeterUse : std::uint8_t { continuous, continuous_asleep, continuous_on_ventilator, spot_checks };
template <>
struct Words<OximeterUse> {
    static constexpr std::array<std::string_view, 4> words{"continuous", "continuous_asleep",
                                                           "continuous_on_ventilator", "spot_checks"};
};

/// Oxygen level and pulse at the finger or toe.
struct Oximeter {
    Field<OximeterUse> use;
    Field<Fraction> low_alarm;
    Field<Fraction> high_alarm;
    Field<PulseRate> low_pulse_alarm;
    Field<PulseRate> high_pulse_alarm;
    Field<Duration> delay;

    void describe(Visitor& visitor);
};

/// Smoke or carbon monoxide alarms of the home.
struct HouseAlarms {
    Field<Count> number;
    Field<Date> tested_on;
    Field<std::string> location;

    void describe(Visitor& visitor);
};

/// What watches the person and the home.
struct Monitors {
    Group<Oximeter> oximeter;
    Field<std::string> carbon_dioxide;
    Field<std::string> breathing_monitor;
    Field<std::string> camera;
    Group<HouseAlarms> carbon_monoxide_alarms;
    Group<HouseAlarms> smoke_alarms;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
