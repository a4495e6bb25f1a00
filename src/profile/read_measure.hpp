#pragma once

#include <vector>

#include "profile/value_remark.hpp"

namespace ventfolio {

/// The units that a field accepts, the one it is declared with first.
std::vector<Unit> accepted_units(const FieldInfo& info, Dimension dimension);

/// Reads "35 cmH2O" for a field, within the range that its declaration calls possible.
ValueOrRemark read_measure(std::string_view text, const FieldInfo& info, Dimension dimension);

/// The measure that was probably meant: "35 cmH2O" for "35cmH2O", "3.5 L" for "3,5 l"; nothing when there is doubt.
/// Only what would be accepted is ever suggested.
std::optional<std::string> meant_measure(std::string_view text, std::span<const Unit> accepted);

}  // namespace ventfolio
