#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Whether a machine measures the breath in or the breath out.
enum class MeasuredBreath : std::uint8_t { inspired, expired };
template <>
struct Words<MeasuredBreath> {
    static constexpr std::array<std::string_view, 2> words{"inspired", "expired"};
};

/// Alarm limits of one prescription. `off` is an answer; absent is not.
struct Alarms {
    Field<Pressure> high_pressure;
    Field<Pressure> low_pressure;
    Field<Duration> low_pressure_delay;
    Field<Duration> disconnect;
    Field<Flow> high_leak;

    Field<Volume> low_tidal_volume;
    Field<MeasuredBreath> low_tidal_volume_measured;
    Field<Volume> high_tidal_volume;
    Field<Flow> low_minute_volume;
    Field<MeasuredBreath> low_minute_volume_measured;
    Field<Flow> high_minute_volume;

    Field<BreathRate> high_rate;
    Field<BreathRate> low_rate;
    Field<Duration> no_breath;
    Field<Duration> no_breath_timer;
    Field<std::string> loudness;
    Field<Duration> silence_time;

    void describe(Visitor& visitor);

  private:
    void describe_volume_alarms(Visitor& visitor);
    void describe_rate_alarms(Visitor& visitor);
};

}  // namespace ventfolio
