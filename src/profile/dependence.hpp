#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Minutes: up to 4 hours. Hours: 4 hours or more.
enum class FreeTimeKind : std::uint8_t { minutes, hours };
template <>
struct Words<FreeTimeKind> {
    static constexpr std::array<std::string_view, 2> words{"minutes", "hours"};
};

/// How far everyone may be away. `in_same_room`: alone in the room, someone within a few steps.
enum class LeftAlone : std::uint8_t { never, in_same_room, in_same_house, alone_in_house };
template <>
struct Words<LeftAlone> {
    static constexpr std::array<std::string_view, 4> words{"never", "in_same_room", "in_same_house", "alone_in_house"};
};

/// How long the person can do without the ventilator. `none` in its place means not at all.
struct FreeBreathing {
    Field<FreeTimeKind> kind;
    Field<Duration> time;
    Field<Date> tested_on;

    void describe(Visitor& visitor);
};

/// What happens without the machine, awake and asleep: a person can be fine awake and unsafe asleep.
struct Dependence {
    Field<Duration> hours_per_day;
    Group<FreeBreathing> unaided_awake;
    Group<FreeBreathing> unaided_asleep;
    Field<bool> can_call_help;
    Field<std::string> calls_help_with;
    Field<bool> can_reconnect_self;
    Field<bool> can_remove_mask_self;
    Field<LeftAlone> left_alone;
    Field<std::string> left_alone_note;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
