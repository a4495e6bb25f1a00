#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "markup/template.hpp"

namespace ventfolio {

/// A line of a template as its author wrote it, partials put in.
struct TemplateLine {
    std::string text;        ///< tags included, one blank where there are more, none at either end
    std::string conditions;  ///< the sections that it stands in: "#is_child ^uses_mask"
    std::size_t file = 0;    ///< index into Template::files
    Place place;             ///< of its first letter, in that file
};

/// The lines of the body that say something, in their order.
///
/// Example: of `{{#is_child}}` and `- Call   {{name}}` and `{{/is_child}}` it is "- Call {{name}}" under "#is_child".
std::vector<TemplateLine> lines_of(const Template& sheet);

/// The names that a template uses, in title and body, each where it stands first. A section is "#name" or "^name".
struct UsedName {
    std::string name;
    TemplateSpan span;
};
std::vector<UsedName> names_in(const Template& sheet);

}  // namespace ventfolio
