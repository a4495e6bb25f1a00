#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "letter_reader.hpp"
#include "values.hpp"

namespace ventfolio::testing {

/// The sheets of a laid-out home; all of them if no name is given.
std::vector<const PlacedSheet*> sheets_named(const SetHome& home, const std::vector<std::string>& names);

/// Boxes that belong to one value and follow each other on a page: a number and its unit, the lines of a text.
using Place = std::vector<std::size_t>;

/// Where a value stands, and what came back from there.
struct ReadPlace {
    Place boxes;
    std::string looks;     ///< all that was read, for a message
    bool whole = false;    ///< came back with its unit
    bool number = false;   ///< came back, perhaps without a unit
    bool at_once = false;  ///< at the first look
};

struct ReadValue {
    WrittenValue value;
    std::vector<ReadPlace> places;
};

/// Reads every place of each value. What is not right at the first look is looked at twice and three times as large. A
/// decimal point that is not read counts as read where its ink is seen.
std::vector<ReadValue> read_values(LetterReader& reader, const std::vector<WrittenValue>& values);

}  // namespace ventfolio::testing
