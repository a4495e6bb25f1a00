#include "rules/rule_book.hpp"

#include <algorithm>

namespace ventfolio {

const RuleText* find_rule(std::string_view name) {
    const auto book = rule_book();
    const auto found = std::ranges::find(book, name, &RuleText::name);
    return found == book.end() ? nullptr : &*found;
}

std::string written_out(ExampleFragment fragment) {
    std::string text;
    for (const ExamplePart& part : fragment)
        for (std::size_t time = 0; time < part.times; ++time) text += part.text;
    return text;
}

}  // namespace ventfolio
