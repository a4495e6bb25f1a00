#pragma once

#include <string>
#include <string_view>

/// Text in the macros of manual pages (groff_man(7)).
namespace ventfolio::roff {

/// A text that prints as it is: backslashes and hyphens are escaped, and no line begins with a control character.
std::string text(std::string_view plain);

/// The head of a page: "VENTFOLIO" "1". No date, so that one version gives the same bytes.
std::string head(std::string_view name, std::string_view section, std::string_view title);
std::string section(std::string_view title);
std::string subsection(std::string_view title);
std::string paragraph(std::string_view plain);
/// A term in bold, and what it means, indented below it.
std::string item(std::string_view term, std::string_view meaning);
/// Lines as they stand, such as a command to type.
std::string example(std::string_view lines);

}  // namespace ventfolio::roff
