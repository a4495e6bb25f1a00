#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/airway.hpp"
#include "profile/alarms.hpp"
#include "profile/circuit.hpp"
#include "profile/field.hpp"
#include "profile/humidity.hpp"
#include "profile/interface.hpp"
#include "profile/orders.hpp"

namespace ventfolio {

/// How the machine gives breaths. See struct Prescription for the settings each uses.
enum class Mode : std::uint8_t { vc_ac, pc_ac, simv_vc, simv_pc, psv, st_bilevel, cpap, va_ps, va_ac, mpv_vc, mpv_pc };
template <>
struct Words<Mode> {
    static constexpr std::array<std::string_view, 11> words{
        "vc_ac", "pc_ac", "simv_vc", "simv_pc", "psv", "st_bilevel", "cpap", "va_ps", "va_ac", "mpv_vc", "mpv_pc"};
};

/// Whether a pressure is the whole pressure or the part above baseline.
enum class PressureReference : std::uint8_t { total, above_baseline };
template <>
struct Words<PressureReference> {
    static constexpr std::array<std::string_view, 2> words{"total", "above_baseline"};
};

/// An alarm by the key of its limit in Alarms.
enum class AlarmName : std::uint8_t {
    high_pressure,
    low_pressure,
    disconnect,
    high_leak,
    low_tidal_volume,
    high_tidal_volume,
    low_minute_volume,
    high_minute_volume,
    high_rate,
    low_rate,
    no_breath,
    no_breath_timer
};
template <>
struct Words<AlarmName> {
    static constexpr std::array<std::string_view, 12> words{
        "high_pressure",     "low_pressure",       "disconnect", "high_leak", "low_tidal_volume", "high_tidal_volume",
        "low_minute_volume", "high_minute_volume", "high_rate",  "low_rate",  "no_breath",        "no_breath_timer"};
};

/// A span of the day.
struct TimeOfUse {
    Field<ClockSpan> hours;

    void describe(Visitor& visitor);
};

/// Settings of the volume-assured modes: the machine moves its pressure between two limits to reach a volume. The
/// limits follow pressure_reference.
struct VolumeAssured {
    Field<Volume> target_volume;
    Field<Flow> target_minute_volume;
    Field<Pressure> pressure_least;
    Field<Pressure> pressure_most;
    Field<std::string> speed;

    void describe(Visitor& visitor);
};

/// Breaths that a spontaneous mode gives when none is started.
struct BackupBreaths {
    Field<BreathRate> rate;
    Field<Duration> after;
    Field<Pressure> inspiratory_pressure;
    Field<Volume> tidal_volume;
    Field<Duration> inspiratory_time;

    void describe(Visitor& visitor);
};

/// What the machine showed when it was set up: the log compares with this.
struct ExpectedValues {
    Field<Range<Dimension::volume>> tidal_volume;
    Field<Range<Dimension::flow>> minute_volume;
    Field<Range<Dimension::pressure>> peak_pressure;
    Field<Range<Dimension::flow>> leak;
    Field<Range<Dimension::breath_rate>> total_rate;
    Field<std::string> measured_by;
    Field<Date> measured_on;

    void describe(Visitor& visitor);
};

/// Oxygen ordered with one prescription.
struct PrescriptionOxygen {
    Field<Flow> flow;
    Field<Fraction> fraction;

    void describe(Visitor& visitor);
};

/// An interface and a circuit that the order was written for.
struct WrittenFor {
    Field<InterfaceKind> interface;
    Field<CircuitKind> circuit;

    void describe(Visitor& visitor);
};

/// An alarm that the prescriber wants off.
struct AlarmOffByOrder {
    Field<AlarmName> alarm;
    Field<std::string> by;
    Field<Date> date;

    void describe(Visitor& visitor);
};

/// One set of orders: bed, chair or sick day.
///
/// Settings by mode (required; anything foreign to the mode is a finding):
///   vc_ac       tidal_volume, rate, inspiratory_time (or inspiratory_flow), baseline_pressure (0 is possible), trigger
///   pc_ac       inspiratory_pressure with pressure_reference, baseline_pressure, rate, inspiratory_time, trigger
///   simv_vc     as vc_ac, and support_pressure with pressure_reference, cycle
///   simv_pc     as pc_ac, and support_pressure, cycle
///   psv         inspiratory_pressure or support_pressure with pressure_reference, baseline_pressure, trigger, cycle
///   st_bilevel  inspiratory_pressure (or support_pressure) with pressure_reference, baseline_pressure, rate,
///               inspiratory_time for timed breaths, trigger
///   cpap        baseline_pressure alone
///   va_ps       volume_assured with pressure_reference, baseline_pressure, rate, inspiratory_time, trigger
///   va_ac       as va_ps
///   mpv_vc      tidal_volume, baseline_pressure 0, rate (0: only when sipped), inspiratory_time, trigger
///   mpv_pc      inspiratory_pressure with pressure_reference, baseline_pressure 0, rate, inspiratory_time, trigger
///
/// support_pressure is always the part above baseline. inspiratory_pressure, the limits of volume_assured and the
/// backup
/// breaths follow pressure_reference. peak_pressure repeats the total as the order states it, to be compared.
struct Prescription {
    Field<std::string> id;
    Field<std::string> place;
    Field<std::string> label;
    Field<Revision> changed_in;
    Field<WakingState> state;
    List<TimeOfUse> when_used;
    Field<Duration> hours_per_day;
    Field<std::string> when_note;
    Field<std::string> position;
    Group<Interface> interface;
    Group<Circuit> circuit;
    Group<Humidity> humidity;
    Group<PrescriptionOxygen> oxygen;
    List<WrittenFor> written_for;

    Field<Mode> mode;
    Field<std::string> mode_on_screen;
    Field<std::string> mode_standard_label;
    Field<PressureReference> pressure_reference;
    Field<Pressure> inspiratory_pressure;
    Field<Pressure> support_pressure;
    Field<Pressure> baseline_pressure;
    Field<Pressure> peak_pressure;
    Field<Range<Dimension::pressure>> peak_pressure_range;
    Field<Volume> tidal_volume;
    Field<BreathRate> rate;
    Group<VolumeAssured> volume_assured;
    Group<BackupBreaths> backup_breaths;

    Field<Duration> inspiratory_time;
    Field<Flow> inspiratory_flow;
    Field<std::string> breathing_ratio;
    Field<std::string> rise;
    Field<std::string> trigger;
    Field<std::string> cycle;
    Field<Duration> inspiratory_time_least;
    Field<Duration> inspiratory_time_most;
    Group<ExpectedValues> expected;
    Group<Alarms> alarms;
    List<AlarmOffByOrder> alarms_off_by_order;
    Field<bool> nebulized_treatments;
    Field<std::string> sick_plan;
    Field<std::string> note;

    void describe(Visitor& visitor);

  private:
    void describe_mode(Visitor& visitor);
    void describe_timing(Visitor& visitor);
};

}  // namespace ventfolio
