#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>

#include "profile/audience.hpp"
#include "profile/finding.hpp"

namespace ventfolio {

/// Audiences of a field by its path; nobody for a path that is not known.
using AudiencesOf = std::function<Audiences(std::string_view field)>;

/// A text of a finding (its message, a number, a label) with the values of the fields that it points at replaced by
/// asterisks, unless such a field may hang on the wall. Values of one or two letters stay: they tell nothing.
std::string without_private_values(std::string text, const Finding& finding, std::span<const SourceText> sources,
                                   const AudiencesOf& audiences);

/// The source that a mark cites, or null.
const SourceText* source_named(std::span<const SourceText> sources, std::string_view name);

}  // namespace ventfolio
