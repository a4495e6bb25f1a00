#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace ventfolio::project {

/// A fenced block of a Markdown text.
struct Fence {
    std::string language;  ///< "sh", "text"
    std::string text;      ///< without the blanks before a block inside a list
};

/// In the order of the text.
std::vector<Fence> fences(std::string_view markdown);
/// The fenced blocks in one language.
std::vector<std::string> fenced_blocks(std::string_view markdown, std::string_view language);

/// A section with its heading ("## A ten-minute walk") up to the next heading of its level or above; empty if there is
/// none.
std::string section(std::string_view markdown, std::string_view heading);

/// The lines of code that are set off by four blanks, outside of fences and lists.
std::vector<std::string> indented_code(std::string_view markdown);
/// What stands between backticks in running text.
std::vector<std::string> inline_code(std::string_view markdown);

/// The commands of a block of the shell: lines that go on behind a backslash are one, what && joins are several, and
/// remarks behind # are left out.
std::vector<std::string> shell_commands(std::string_view block);

}  // namespace ventfolio::project
