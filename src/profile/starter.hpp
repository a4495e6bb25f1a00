#pragma once

#include <functional>
#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// A profile to begin with: every key with its help and an example in a comment. Essential keys come first in each
/// group and are left empty, so that one that was forgotten is refused instead of printed with an example's value; all
/// others stand behind a `#` that is taken away to use them. `blank` shows an empty profile to a visitor.
std::string starter_profile(const std::function<void(Visitor&)>& blank);

/// The same with all keys in use and each example as the value: the longest profile that can be read.
std::string example_profile(const std::function<void(Visitor&)>& blank);

}  // namespace ventfolio
