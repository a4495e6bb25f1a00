#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "markup/faults.hpp"

namespace ventfolio {

/// One stretch of a template text: words or a tag.
struct TemplateToken {
    enum class Kind { words, value, section, inverted, close, partial, comment };
    Kind kind = Kind::words;
    TemplateSpan span;        ///< with the braces
    TemplateSpan name;        ///< the name alone
    bool own_line = false;    ///< nothing but tags that print nothing stands on its line; that line is left out
    std::string indent = {};  ///< blanks at the start of such a line
};

/// Cuts [begin, end) of a file into words and tags. Refused, with their place: a tag that is not closed, three braces,
/// `{{&`, changed delimiters, a name that is not made of letters, digits, `_`, `-` and dots.
///
/// A line that holds nothing but section tags, comments and partials leaves no line behind. The Mustache specification
/// asks this for one such tag in a line; here it also holds for several, since an empty line left by `{{#a}}{{#b}}`
/// would cut a list or a table in two.
std::vector<TemplateToken> tokens(const std::vector<SourceText>& files, TemplateSpan range, Faults& faults);

}  // namespace ventfolio
