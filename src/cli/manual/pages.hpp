#pragma once

#include <string>

namespace CLI {  // NOLINT(readability-identifier-naming): the library's name
class App;
}  // namespace CLI

/// The manual pages, as roff. All that can change stands in one place already, and is taken from there.
namespace ventfolio {

/// ventfolio(1): every command with its options, and the exit statuses.
std::string manual_of_commands(const CLI::App& program);
/// ventfolio-profile(5): every field of a profile, with what it takes and where it may stand.
std::string manual_of_profile();
/// ventfolio-rules(7): every rule and every calculator, with why and source.
std::string manual_of_rules();

}  // namespace ventfolio
