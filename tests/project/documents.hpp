#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace ventfolio::project {

/// The fenced blocks of a Markdown text in one language ("sh"), without the blanks before a block inside a list.
std::vector<std::string> fenced_blocks(std::string_view markdown, std::string_view language);

}  // namespace ventfolio::project
