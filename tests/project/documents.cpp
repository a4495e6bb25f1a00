#include "project/documents.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "project/files.hpp"

namespace ventfolio::project {

std::vector<std::string> fenced_blocks(std::string_view markdown, std::string_view language) {
    const std::string opening = "```" + std::string{language};
    std::vector<std::string> blocks;
    std::optional<std::string> open;
    std::size_t indent = 0;
    for (const std::string& line : lines_of(markdown)) {
        const std::size_t first = std::min(line.find_first_not_of(' '), line.size());
        if (open && line.substr(first) == "```") {
            blocks.push_back(*std::exchange(open, std::nullopt));
        } else if (open) {
            *open += (line.size() > indent ? line.substr(indent) : "") + "\n";
        } else if (line.substr(first) == opening) {
            open.emplace();
            indent = first;
        }
    }
    return blocks;
}

}  // namespace ventfolio::project
