#include "sheets/listed_change.hpp"

#include <algorithm>
#include <array>

#include "units/text.hpp"

namespace ventfolio {

Audiences ListedChange::audiences() const {
    Audiences all = label.audiences;
    if (!item.parts.empty()) all &= item.audiences;
    for (const auto* value : {&was, &now})
        if (*value) all &= (*value)->audiences;
    return all;
}

std::string in_one_line(const ListedChange& change, const Printer& printer) {
    const WordBook& words = printer.words();
    const auto said = [&](const std::optional<PrintedValue>& value) {
        return value ? value->text() : std::string{words.at("changes.not_recorded")};
    };
    std::string label = change.label.text();
    if (!change.item.parts.empty()) label += ", " + change.item.text();
    // In one pass, so that nothing in the text of a profile is taken for a name in braces.
    const std::array<std::pair<std::string_view, std::string>, 3> names{
        {{"{label}", label}, {"{was}", said(change.was)}, {"{now}", said(change.now)}}};
    std::string_view rest = words.at("changes.line");
    std::string line;
    while (!rest.empty()) {
        const auto name =
            std::ranges::find_if(names, [&](const auto& candidate) { return rest.starts_with(candidate.first); });
        line += name == names.end() ? std::string{rest.front()} : name->second;
        rest.remove_prefix(name == names.end() ? 1 : name->first.size());
    }
    return with_replaced(std::move(line), kNoBreakSpace, " ");
}

}  // namespace ventfolio
