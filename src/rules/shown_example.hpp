#pragma once

#include <string>

#include "rules/rule_book.hpp"

namespace ventfolio {

/// A fragment as a terminal can show it. What does not print stands in angle brackets, `<tab>`, `<U+202E>`,
/// `<byte EB>`, and so does what is written many times over, `<33 times "[">`. Line ends are kept.
std::string shown_fragment(ExampleFragment fragment);

}  // namespace ventfolio
