#pragma once

#include <array>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// What was answered. Nothing recorded: the letter prints "do not send until signed".
enum class PermissionAnswer : std::uint8_t { agreed, refused };
template <>
struct Words<PermissionAnswer> {
    static constexpr std::array<std::string_view, 2> words{"agreed", "refused"};
};

/// Permission to tell somebody outside.
struct Permission {
    Field<PermissionAnswer> answer;
    Field<Date> date;

    void describe(Visitor& visitor);
};

/// Permissions for the letters.
struct Consent {
    Group<Permission> utility_letter;
    Group<Permission> fire_letter;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
