#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// When oxygen is used; `none` is an answer too.
enum class OxygenUse : std::uint8_t { continuous, night, as_needed, illness };
template <>
struct Words<OxygenUse> {
    static constexpr std::array<std::string_view, 4> words{"continuous", "night", "as_needed", "illness"};
};

/// Where oxygen enters.
enum class OxygenEntry : std::uint8_t { device_inlet, outlet_adapter, mask_port, neck_collar };
template <>
struct Words<OxygenEntry> {
    static constexpr std::array<std::string_view, 4> words{"device_inlet", "outlet_adapter", "mask_port",
                                                           "neck_collar"};
};

/// How it flows. A pulse never feeds a ventilator; it is listed so that it can be refused.
enum class OxygenDelivery : std::uint8_t { continuous, pulse, conserving };
template <>
struct Words<OxygenDelivery> {
    static constexpr std::array<std::string_view, 3> words{"continuous", "pulse", "conserving"};
};

/// What gives the oxygen.
enum class OxygenSourceKind : std::uint8_t { concentrator, cylinder, liquid };
template <>
struct Words<OxygenSourceKind> {
    static constexpr std::array<std::string_view, 3> words{"concentrator", "cylinder", "liquid"};
};

/// One kind of oxygen source in the home. Cylinder hours are counted from contents, full pressure and gauge.
struct OxygenSource {
    Field<OxygenSourceKind> kind;
    Field<std::string> label;
    Field<Flow> flow_most;
    Field<Count> number;
    Field<std::string> size;
    Field<std::string> country;
    Field<Volume> contents;
    Field<Pressure> full;
    Field<Pressure> gauge;
    Field<Pressure> reserve;
    Field<std::string> location;

    void describe(Visitor& visitor);
};

/// Oxygen in this home and the levels that guide it.
struct Oxygen {
    Field<OxygenUse> use;
    Field<OxygenEntry> entry;
    Field<OxygenDelivery> delivery;
    Field<bool> blender;
    List<OxygenSource> sources;
    Field<Fraction> goal_low;
    Field<Fraction> goal_high;
    Field<Fraction> call_below;
    Field<Fraction> emergency_below;
    Field<Flow> bag_flow;
    Field<Duration> backup_hours;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
