#pragma once

#include <functional>
#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// The JSON Schema (draft 2020-12) of a profile, with which editors complete and check while someone types. It accepts
/// all that the reader accepts, and refuses what a schema can: unknown keys, missing essential ones, words that are not
/// in a list, quantities without a unit. Ranges and days that do not exist are left to the reader.
/// `blank` shows an empty profile to a visitor.
std::string json_schema(const std::function<void(Visitor&)>& blank);

}  // namespace ventfolio
