#pragma once

#include <optional>
#include <vector>

#include "profile/finding.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// One sheet that says everything twice, for a home in which some read one language and some another: each passage in
/// the first language, and under it in the second. What is the same in both, such as a number or a name, stands once;
/// so does what is written or ticked by hand, whose words in both languages then share a line ("Yes / Sí").
///
/// The two must be made from twin templates. Where they are built differently nothing is returned, and a finding
/// names the line in both.
///
/// Example: the steps "Hose off." and "Quite la manguera." become one step of two lines.
std::optional<Document> in_two_languages(const Document& first, const Document& second, std::vector<Finding>& findings);

}  // namespace ventfolio
