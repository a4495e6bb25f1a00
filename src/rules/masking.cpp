#include "rules/masking.hpp"

#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {

const SourceText* source_named(std::span<const SourceText> sources, std::string_view name) {
    const auto found = std::ranges::find(sources, name, &SourceText::name);
    return found == sources.end() ? nullptr : &*found;
}

std::string without_private_values(std::string text, const Finding& finding, std::span<const SourceText> sources,
                                   const AudiencesOf& audiences) {
    for (const Mark& mark : finding.marks) {
        const SourceText* source = source_named(sources, mark.file);
        if (source == nullptr || mark.field.empty() || (audiences(mark.field) & wall) != 0) continue;
        const bool is_key = mark.place.end < source->text.size() && source->text[mark.place.end] == ':';
        if (is_key) continue;
        std::string_view value =
            std::string_view{source->text}.substr(mark.place.begin, mark.place.end - mark.place.begin);
        if (value.size() > 1 && (value.front() == '"' || value.front() == '\''))
            value = value.substr(1, value.size() - 2);
        constexpr std::size_t kTooShortToTell = 3;
        if (value.size() >= kTooShortToTell)
            text = with_replaced(std::move(text), value, std::string(display_cells(value), '*'));
    }
    return text;
}

}  // namespace ventfolio
