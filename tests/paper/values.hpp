#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace ventfolio::testing {

/// A value as the profile has it, and how its words may stand on paper.
struct WrittenValue {
    std::string path;                ///< in the profile
    std::string field;               ///< under which it stands on paper
    std::vector<std::string> whole;  ///< with its unit, as "14 breaths per minute" or "14 per minute"
    std::string number;              ///< alone: its unit may stand at the head of the column; empty: not a number
};

/// The settings and alarm limits of all prescriptions, and all phone numbers, of a demo home: taken from the text of
/// its profile by a plain reader of YAML, not from what the program made of it. Choices are left out: paper says them
/// in other words.
std::vector<WrittenValue> written_values(std::string_view home);

/// Letters as a reader of letters tells them apart: without blanks, small ones for capitals.
std::string for_reader(std::string_view text);

}  // namespace ventfolio::testing
