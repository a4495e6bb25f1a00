#include "markup/front_matter.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "units/text.hpp"

namespace ventfolio {
namespace {

const std::array<std::string, 17> kKeys = {
    "title",   "audience", "header", "paper",   "orientation", "type_size",     "pages", "order",        "for_each",
    "only_if", "lists",    "sides",  "reading", "language",    "when_replaced", "for",   "two_languages"};

std::size_t end_of_line(std::string_view text, std::size_t at) { return std::min(text.find('\n', at), text.size()); }

void check_key(const FrontMatter& known, std::string_view key, TemplateSpan span, Faults& faults) {
    if (std::ranges::find(kKeys, key) == kKeys.end()) {
        const auto near = nearest(key, kKeys);
        faults.refuse({"template-front-matter-unknown", span,
                       fmt::format("The front matter has no key called \"{}\".", key),
                       near ? fmt::format("the nearest is \"{}\"", *near) : "unknown key",
                       fmt::format("The keys are: {}.", joined(kKeys, ", "))});
    }
    if (std::ranges::any_of(known.lines, [&](const FrontMatterLine& line) { return line.key == key; }))
        faults.refuse({"template-front-matter-unreadable", span, fmt::format("The front matter has \"{}\" twice.", key),
                       "leave one out"});
}

void read_line(const SourceText& file, std::size_t begin, std::size_t end, FrontMatter& out, Faults& faults) {
    const std::string_view line = std::string_view{file.text}.substr(begin, end - begin);
    if (trimmed(line).empty() || line.front() == '#') return;
    const std::size_t colon = line.find(':');
    if (colon == line.npos || trimmed(line.substr(0, colon)).empty()) {
        faults.refuse({"template-front-matter-unreadable",
                       {0, begin, end},
                       "A line of the front matter is not \"key: value\".",
                       "needs a colon"});
        return;
    }
    const std::string_view key = trimmed(line.substr(0, colon));
    std::string_view value = trimmed(line.substr(colon + 1));
    if (value.size() >= 2 && value.front() == '"' && value.back() == '"') value = value.substr(1, value.size() - 2);
    const auto offset = [&](std::string_view part) { return static_cast<std::size_t>(part.data() - file.text.data()); };
    check_key(out, key, {0, offset(key), offset(key) + key.size()}, faults);
    const std::size_t at = value.empty() ? end : offset(value);
    out.lines.push_back({std::string{key}, std::string{value}, file.place(at, at + value.size())});
}

}  // namespace

FrontMatter read_front_matter(const SourceText& file, Faults& faults) {
    FrontMatter out;
    const std::string_view text = file.text;
    if (trimmed(text.substr(0, end_of_line(text, 0))) != "---") return out;
    for (std::size_t at = end_of_line(text, 0) + 1; at < text.size();) {
        const std::size_t end = end_of_line(text, at);
        if (trimmed(text.substr(at, end - at)) == "---") {
            out.body = std::min(end + 1, text.size());
            return out;
        }
        read_line(file, at, end, out, faults);
        at = end + 1;
    }
    faults.refuse({"template-front-matter-unreadable",
                   {0, 0, end_of_line(text, 0)},
                   "The front matter opens here and is not closed.",
                   "not closed",
                   "Close it with a line of ---"});
    out.body = text.size();
    return out;
}

}  // namespace ventfolio
