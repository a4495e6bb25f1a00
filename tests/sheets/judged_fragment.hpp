#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "rules/rule_book.hpp"

namespace ventfolio::testing {

/// A few words of a template on one sheet of one home, as `print` would judge them.
struct Fragment {
    std::string_view home = "adult-tracheostomy";  ///< in profiles/
    std::string_view edits = {};                   ///< of the home, see rules/edited_home.hpp
    std::string_view sheet = "bedside-card";
    std::string_view audience = "wall";
    std::string_view words = {};
    std::string_view on = "2026-02-03";
};

/// The line of the template on which the words begin.
inline constexpr std::size_t kFirstLine = 6;

/// What the checks over finished sheets find in it. Throws std::runtime_error where the words cannot be rendered.
std::vector<Finding> judged_fragment(const Fragment& fragment);

/// What `print` finds in an example of words or of a template's file: read, rendered, judged and set on pages.
std::vector<Finding> judged_example(const RuleExample& example, ExampleFragment fragment);

/// Names of the rules, each once, in order, with blanks between.
std::string rules_of(const std::vector<Finding>& findings);

}  // namespace ventfolio::testing
