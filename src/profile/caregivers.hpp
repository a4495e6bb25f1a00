#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// What a caregiver has been signed off for.
enum class CaregiverStatus : std::uint8_t { trainee, with_supervision, independent };
template <>
struct Words<CaregiverStatus> {
    static constexpr std::array<std::string_view, 3> words{"trainee", "with_supervision", "independent"};
};

/// Where the night caregiver is, seen from the bed.
enum class NightPlace : std::uint8_t { same_room, same_floor, another_floor };
template <>
struct Words<NightPlace> {
    static constexpr std::array<std::string_view, 3> words{"same_room", "same_floor", "another_floor"};
};

/// Somebody who looks after the person.
struct Caregiver {
    Field<std::string> name;
    Field<std::string> first_name;
    Field<std::string> relation;
    Field<std::string> phone;
    Field<CaregiverStatus> status;
    Field<Date> last_signed_off;
    Field<Date> resuscitation_card_until;
    Field<std::string> hours;
    Field<std::string> language;
    Field<std::string> may_not_do;

    void describe(Visitor& visitor);
};

/// Who is awake at night.
struct NightCover {
    Field<bool> awake_every_night;
    Field<Count> nights_without;
    Field<std::string> by;
    Field<NightPlace> place;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
