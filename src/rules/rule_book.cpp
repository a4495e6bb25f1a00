#include "rules/rule_book.hpp"

#include <algorithm>

namespace ventfolio {

const RuleText* find_rule(std::string_view name) {
    const auto book = rule_book();
    const auto found = std::ranges::find(book, name, &RuleText::name);
    return found == book.end() ? nullptr : &*found;
}

}  // namespace ventfolio
