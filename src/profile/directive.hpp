#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Whether a signed order about treatment exists. `unknown` is an answer too.
enum class DirectiveStatus : std::uint8_t { order_on_file, none_recorded };
template <>
struct Words<DirectiveStatus> {
    static constexpr std::array<std::string_view, 2> words{"order_on_file", "none_recorded"};
};

/// Who decides when the person cannot.
struct DecisionMaker {
    Field<std::string> name;
    Field<std::string> phone;
    Field<std::string> document;

    void describe(Visitor& visitor);
};

/// Only whether a signed order exists and where the original lies: what it says never stands here.
struct Directive {
    Field<DirectiveStatus> status;
    Field<std::string> kind;
    Field<std::string> signed_by;
    Field<Date> signed_on;
    Field<std::string> jurisdiction;
    Field<Date> expires;
    Field<std::string> location_of_original;
    Group<DecisionMaker> decision_maker;
    Field<Date> confirmed_on;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
