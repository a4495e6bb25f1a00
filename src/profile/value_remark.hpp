#pragma once

#include <string>
#include <variant>

#include "profile/field.hpp"

namespace ventfolio {

/// Why a text is not the value that is due, in words. Texts, dates and numbers of a person are never repeated in it,
/// since a message can end up in a log; settings and units are.
struct ValueRemark {
    std::string rule;
    std::string message;
    std::string label;
    std::string to_do;
};

/// A value, or why there is none.
using ValueOrRemark = std::variant<Value, ValueRemark>;

/// `"high_pressure"`.
std::string quoted(std::string_view text);
/// "a, b and c".
std::string listed(std::span<const std::string> words, std::string_view last = " and ");
/// ", for example 35 cmH2O", or nothing when the field has no example.
std::string with_example(const FieldInfo& info);

}  // namespace ventfolio
