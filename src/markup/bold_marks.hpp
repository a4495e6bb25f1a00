#pragma once

#include <string>

namespace ventfolio {

/// Moves blanks from inside a pair of `**` to its outside, and takes away pairs with nothing in between. The length of
/// the text stays as it is.
///
/// Markdown makes nothing bold where a blank stands inside the marks (CommonMark 0.30, 6.2, "flanking"). A template has
/// none there, but `**{{#mask}}Mask off. {{/mask}}{{#bag}}Bag on.{{/bag}}**` has one in a home without a bag, and
/// nothing between the marks in a home that has neither. Such a home would get no paper.
void settle_bold_marks(std::string& markdown);

}  // namespace ventfolio
