#pragma once

#include <string>

#include "profile/finding.hpp"

namespace YAML {  // NOLINT(readability-identifier-naming): the name of the library
struct Mark;
}

namespace ventfolio {

/// A fault of a file of words, phrases or plain words, at its line and column. `message` is a sentence.
Finding word_fault(const SourceText& source, const YAML::Mark& mark, std::string message);

}  // namespace ventfolio
