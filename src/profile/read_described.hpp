#pragma once

#include <functional>
#include <vector>

#include "profile/field.hpp"
#include "profile/finding.hpp"
#include "profile/place.hpp"

namespace ventfolio {

/// Shows something described to a visitor.
using Describe = std::function<void(Visitor&)>;

/// Fills what `described` shows from a YAML text. Everything that is wrong is in the findings, in the order of the
/// file; a field with a finding of severity refuse stays absent. After it, later rooms may take for granted:
/// - a given measure has a unit of its field's dimension, one that the field accepts, and lies within the possible
/// range;
/// - a given range has from at most to; a given choice is one of its words; a date exists; a text is valid UTF-8 in
/// normal
///   form C, not empty, not too long, without control or private-use characters other than \n;
/// - the place of a given field covers exactly its text in the source; that of a field without a value is the key of
/// the
///   group that it belongs in.
/// What is described must be empty before. `blank` shows the same again, empty: it is asked where a misplaced key
/// belongs.
std::vector<Finding> read_described(const SourceText& source, const Describe& described, const Describe& blank);

/// For any struct with describe(Visitor&).
template <class T>
std::vector<Finding> read_into(T& described, const SourceText& source) {
    return read_described(
        source, [&](Visitor& visitor) { described.describe(visitor); },
        [](Visitor& visitor) {
            T empty;
            empty.describe(visitor);
        });
}

}  // namespace ventfolio
