#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "pdf/programs.hpp"

namespace ventfolio::testing {

using trial::Ran;
using trial::Scratch;

/// Runs `ventfolio` with these words of a shell in a folder of the test.
Ran ventfolio_in(const Scratch& folder, std::string_view words, std::string_view environment = {});

/// Compares JSON with a schema that `schema --of` prints: status 0 if it keeps to it, else its faults on `out`.
/// Debian's python3-jsonschema does it, which knows nothing of this program.
Ran validated_by(const Scratch& folder, std::string_view schema, std::string_view json);

/// The path of profiles/NAME.yaml.
std::string profile_path(std::string_view home);
std::string contents(const std::filesystem::path& file);
/// Name, mode, time of change and bytes of everything in a folder, a line each.
std::string state_of(const std::filesystem::path& folder);
/// Names of the files in a folder, sorted, with blanks between.
std::string names_in(const std::filesystem::path& folder);

bool holds(std::string_view text, std::string_view part);

}  // namespace ventfolio::testing
