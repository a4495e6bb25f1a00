#include "sheets/word_fault.hpp"

#include <yaml-cpp/yaml.h>

#include <utility>

namespace ventfolio {

Finding word_fault(const SourceText& source, const YAML::Mark& mark, std::string message) {
    Finding finding;
    finding.rule = "words-file-unreadable";
    finding.message = std::move(message);
    Mark at;
    at.file = source.name;
    at.place.line = static_cast<std::size_t>(mark.line) + 1;
    at.place.column = static_cast<std::size_t>(mark.column) + 1;
    finding.marks.push_back(std::move(at));
    return finding;
}

}  // namespace ventfolio
