#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How far an alarm is heard with doors closed.
enum class AlarmReach : std::uint8_t { same_room, same_floor, whole_home };
template <>
struct Words<AlarmReach> {
    static constexpr std::array<std::string_view, 3> words{"same_room", "same_floor", "whole_home"};
};

/// A place in a machine that holds a prescription.
struct Slot {
    Field<std::string> slot;
    Field<std::string> prescription;
    Field<Revision> revision;

    void describe(Visitor& visitor);
};

/// A ventilator in this home, by the label stuck on it. Never a brand.
struct Device {
    Field<std::string> label;
    Field<std::string> description;
    Field<std::string> location;
    Field<bool> at_bed;
    Field<bool> on_chair;
    Field<bool> is_backup;
    Field<std::string> owner;
    Field<std::string> asset_number;
    Field<Date> service_due;
    List<Slot> slots;
    Field<AlarmReach> alarm_heard;
    Field<bool> oxygen_inlet;
    Field<Mass> suited_from;
    Field<bool> needs_pure_sine;

    void describe(Visitor& visitor);
};

/// A repeater that sounds where the caregiver is.
struct RemoteAlarm {
    Field<std::string> where;
    Field<Date> tested_on;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
