#include "units/measure.hpp"

#include <algorithm>
#include <map>
#include <vector>

#include "units/text.hpp"

namespace ventfolio {
namespace {

std::size_t length_of_number(std::string_view text) {
    return std::min(text.find_first_not_of("-.0123456789"), text.size());
}

}  // namespace

std::variant<Measure, MeasureFault> parse_measure(std::string_view text, std::span<const Unit> accepted) {
    text = trimmed(text);
    if (text.empty()) return MeasureFault::empty;
    const std::size_t length = length_of_number(text);
    const auto number = Decimal::parse(text.substr(0, length));
    if (!number) return MeasureFault::not_a_number;
    const std::string_view rest = text.substr(length);
    const std::string_view symbol = trimmed(rest);
    if (symbol.empty()) return MeasureFault::without_unit;
    const Unit* unit = find_unit(symbol);
    if (!unit) {
        const bool number_goes_on = symbol.front() == ',' || (symbol.front() == 'e' && symbol.size() > 1);
        return number_goes_on && rest.front() != ' ' ? MeasureFault::not_a_number : MeasureFault::unknown_unit;
    }
    if (std::ranges::find(accepted, unit->symbol, &Unit::symbol) == accepted.end())
        return MeasureFault::wrong_dimension;
    if (rest.front() != ' ' && unit->symbol != "%") return MeasureFault::glued;
    return Measure{*number, *unit};
}

std::span<const Unit> units_of(Dimension dimension) {
    static const auto by_dimension = [] {
        std::map<Dimension, std::vector<Unit>> groups;
        for (const Unit& unit : all_units()) groups[unit.dimension].push_back(unit);
        return groups;
    }();
    return by_dimension.at(dimension);
}

}  // namespace ventfolio
