#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace ventfolio {

/// A rule in full: what it says, why, formula, source, what to do, the example that the tests run, and the thresholds
/// behind it. Nothing for a name that the book does not have.
std::optional<std::string> explain_rule(std::string_view name, std::size_t width = 100);
/// The rule whose name is nearest to a misspelt one.
std::optional<std::string> nearest_rule(std::string_view name);
/// All rules, one a line: name, severity, what it judges.
std::string list_rules();

}  // namespace ventfolio
