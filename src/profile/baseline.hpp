#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How thick the mucus usually is.
enum class Thickness : std::uint8_t { thin, medium, thick };
template <>
struct Words<Thickness> {
    static constexpr std::array<std::string_view, 3> words{"thin", "medium", "thick"};
};

/// How well the person coughs; `none` is an answer too.
enum class CoughStrength : std::uint8_t { strong, weak };
template <>
struct Words<CoughStrength> {
    static constexpr std::array<std::string_view, 2> words{"strong", "weak"};
};

/// Usual oxygen level, and on what.
struct NormalOxygenLevel {
    Field<Range<Dimension::fraction>> level;
    Field<std::string> breathing;

    void describe(Visitor& visitor);
};

/// Usual blood pressure.
struct NormalBloodPressure {
    Field<Range<Dimension::pressure>> systolic;
    Field<Range<Dimension::pressure>> diastolic;

    void describe(Visitor& visitor);
};

/// Last known carbon dioxide level.
struct NormalCarbonDioxide {
    Field<Pressure> level;
    Field<std::string> method;
    Field<Date> date;

    void describe(Visitor& visitor);
};

/// Usual mucus, so that a change is seen.
struct NormalSecretions {
    Field<std::string> look;
    Field<Thickness> thickness;
    Field<bool> bloody;
    Field<Range<Dimension::daily_rate>> suctions;

    void describe(Visitor& visitor);
};

/// Normal for this person: what a crew must not take for new illness.
struct Baseline {
    Field<std::string> awareness;
    Field<std::string> speech;
    Group<NormalOxygenLevel> oxygen_level_awake;
    Group<NormalOxygenLevel> oxygen_level_asleep;
    Field<Range<Dimension::pulse_rate>> heart_rate;
    Field<Range<Dimension::breath_rate>> breathing_rate;
    Group<NormalBloodPressure> blood_pressure;
    Group<NormalCarbonDioxide> carbon_dioxide;
    Group<NormalSecretions> secretions;
    Field<CoughStrength> cough;
    Field<Flow> peak_cough_flow;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
