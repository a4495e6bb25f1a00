#include "profile/field_list.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "profile/read_measure.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string units_in_words(const DeclaredField& field) {
    std::vector<std::string> symbols;
    for (const Unit& unit : accepted_units(field.info, *field.dimension)) symbols.emplace_back(unit.symbol);
    return listed(symbols, " or ");
}

std::string padded(std::string text, std::size_t width) {
    const std::size_t cells = display_cells(text);
    text.append(cells < width ? width - cells : 0, ' ');
    return text;
}

}  // namespace

std::string_view name_of(Grade grade) {
    constexpr std::array<std::string_view, 3> kNames{"optional", "expected", "essential"};
    return kNames[static_cast<std::size_t>(grade)];
}

std::string names_of(Audiences audiences) {
    constexpr std::array<std::pair<Audience, std::string_view>, 6> kNames{
        {{wall, "wall"}, {folder, "folder"}, {crew, "crew"}, {wallet, "wallet"}, {utility, "utility"}, {fire, "fire"}}};
    std::vector<std::string> names;
    for (const auto& [audience, name] : kNames)
        if ((audiences & audience) != 0) names.emplace_back(name);
    return names.empty() ? "nobody" : joined(names, ", ");
}

std::string what_it_takes(const DeclaredField& field) {
    switch (field.kind) {
        case ValueKind::text:
            return "text";
        case ValueKind::text_list:
            return "list of texts";
        case ValueKind::flag:
            return "true or false";
        case ValueKind::date:
            return "year-month-day";
        case ValueKind::moment:
            return "day and time";
        case ValueKind::clock_span:
            return "from one time to another";
        case ValueKind::interval:
            return "days, weeks, months or years";
        case ValueKind::revision:
            return "R and a number";
        case ValueKind::measure:
            return units_in_words(field);
        case ValueKind::range:
            return "from and to, " + units_in_words(field);
        case ValueKind::choice: {
            const std::vector<std::string> words{field.choices.begin(), field.choices.end()};
            return listed(words, " or ");
        }
    }
    return "text";
}

std::string field_list(std::span<const DeclaredField> fields) {
    std::size_t path_width = 0;
    for (const DeclaredField& field : fields) path_width = std::max(path_width, field.path.size());
    std::string text;
    for (const DeclaredField& field : fields)
        text += fmt::format("{}  {}  {}  {}  {}\n", padded(field.path, path_width),
                            padded(std::string{name_of(field.info.grade)}, 9), padded(what_it_takes(field), 24),
                            padded(names_of(field.info.on), 16), field.info.help);
    return text;
}

}  // namespace ventfolio
