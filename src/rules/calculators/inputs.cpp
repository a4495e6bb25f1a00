#include "rules/calculators/inputs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "units/text.hpp"

namespace ventfolio {
namespace {

/// A value, or the sentence that says why there is none.
using Read = std::variant<Input, std::string>;

std::string option(const ArgumentText& argument) { return fmt::format("--{}", argument.name); }

/// "2000 psi" as number and unit; the unit is empty where there is none.
struct Parts {
    std::string_view number;
    std::string_view unit;
    bool apart = false;
};

Parts parts_of(std::string_view text) {
    text = trimmed(text);
    const std::size_t end = std::min(text.find_first_not_of("-.0123456789"), text.size());
    return {text.substr(0, end), trimmed(text.substr(end)), end < text.size() && text[end] == ' '};
}

std::string unit_list(const ArgumentText& argument) { return joined(accepted_units(argument), ", "); }

std::optional<Scale> scale_of(const QuantityKind& kind, std::string_view symbol) {
    if (kind.dimension) {
        const Unit* unit = find_unit(symbol);
        if (unit == nullptr || unit->dimension != *kind.dimension) return std::nullopt;
        return Scale{unit->factor, unit->offset};
    }
    const auto found = std::ranges::find(kind.units, symbol, &CompoundUnit::symbol);
    if (found == kind.units.end()) return std::nullopt;
    return Scale{found->factor, 0};
}

std::string unit_fault(const ArgumentText& argument, const Parts& parts, std::string_view written) {
    const std::vector<std::string> units = accepted_units(argument);
    if (parts.unit.empty())
        return fmt::format("{} is {}: write it with a unit, as \"{} {}\"; units accepted here: {}", option(argument),
                           written, parts.number, argument.unit, unit_list(argument));
    const auto near = nearest(parts.unit, units);
    return fmt::format("{} is {}, and \"{}\" is no unit of it{}; units accepted here: {}", option(argument),
                       argument.kind->says, parts.unit, near ? fmt::format(", did you mean \"{}\"?", *near) : "",
                       unit_list(argument));
}

Read read_quantity(const ArgumentText& argument, const std::string& text) {
    const Parts parts = parts_of(text);
    const auto number = Decimal::parse(parts.number);
    if (!number)
        return fmt::format(
            "{} is \"{}\": write a number and a unit, as \"{}\"", option(argument), text,
            argument.standard.empty() ? fmt::format("1 {}", argument.unit) : std::string{argument.standard});
    const auto scale = scale_of(*argument.kind, parts.unit);
    if (!scale) return unit_fault(argument, parts, text);
    if (!parts.apart && parts.unit != "%")
        return fmt::format("{} is \"{}\": a blank is due before the unit", option(argument), text);
    Input input{.argument = &argument, .written = std::string{trimmed(text)}};
    input.value = number->value() * scale->factor + scale->offset;
    return input;
}

Read read_number(const ArgumentText& argument, const std::string& text) {
    const auto number = Decimal::parse(trimmed(text));
    const bool whole = argument.takes == Takes::whole;
    if (!number || (whole && text.find('.') != std::string::npos))
        return fmt::format("{} is \"{}\": write {} number, without a unit", option(argument), text,
                           whole ? "a whole" : "a");
    return Input{.argument = &argument, .written = text, .value = number->value()};
}

Read read_word(const ArgumentText& argument, const std::string& text) {
    if (std::ranges::find(argument.words, text) != argument.words.end())
        return Input{.argument = &argument, .written = text};
    const std::vector<std::string> words{argument.words.begin(), argument.words.end()};
    const auto near = nearest(text, words);
    return fmt::format("{} is \"{}\"{}; it is one of: {}", option(argument), text,
                       near ? fmt::format(", did you mean \"{}\"?", *near) : "", joined(words, ", "));
}

Read read_date(const ArgumentText& argument, const std::string& text, Date today) {
    const auto date = text == "today" ? today : Date::parse(text);
    if (!date) return fmt::format("{} is \"{}\", which is no day; write it as 2026-02-03", option(argument), text);
    return Input{.argument = &argument, .written = date->iso(), .date = date};
}

Read read_interval(const ArgumentText& argument, const std::string& text) {
    const auto interval = Interval::parse(text);
    if (!interval)
        return fmt::format("{} is \"{}\"; write it as \"30 days\", \"2 weeks\", \"6 months\" or \"1 year\"",
                           option(argument), text);
    return Input{.argument = &argument, .written = text, .interval = interval};
}

Read read_measure(const ArgumentText& argument, const std::string& text) {
    const auto measure = parse_measure(text, all_units());
    if (const auto* found = std::get_if<Measure>(&measure))
        return Input{.argument = &argument, .written = found->text(), .value = found->canonical(), .unit = found->unit};
    return fmt::format("{} is \"{}\": write a number and a unit, as \"2000 psi\"", option(argument), text);
}

Read read_unit(const ArgumentText& argument, const std::string& text) {
    const Unit* unit = find_unit(text);
    if (unit != nullptr) return Input{.argument = &argument, .written = std::string{unit->symbol}, .unit = *unit};
    std::vector<std::string> symbols;
    for (const Unit& one : all_units()) symbols.emplace_back(one.symbol);
    return fmt::format("{} is \"{}\", which is no unit known here; known are: {}", option(argument), text,
                       joined(symbols, ", "));
}

Read read_value(const ArgumentText& argument, const std::string& text, Date today) {
    switch (argument.takes) {
        case Takes::quantity:
            return read_quantity(argument, text);
        case Takes::word:
            return read_word(argument, text);
        case Takes::whole:
        case Takes::number:
            return read_number(argument, text);
        case Takes::date:
            return read_date(argument, text, today);
        case Takes::interval:
            return read_interval(argument, text);
        case Takes::measure:
            return read_measure(argument, text);
        case Takes::unit_name:
            return read_unit(argument, text);
    }
    throw std::logic_error{"an argument takes what nobody reads"};
}

struct Option {
    std::string name;
    std::string value;
};

/// "--gauge 2000 psi" as name and value: all words up to the next that opens an option belong to the value.
std::vector<Option> options_in(std::span<const std::string> words, std::vector<std::string>& faults) {
    std::vector<Option> options;
    for (const std::string& word : words) {
        if (word.starts_with("--")) {
            const auto equals = word.find('=');
            options.push_back({word.substr(2, equals == std::string::npos ? equals : equals - 2),
                               equals == std::string::npos ? "" : word.substr(equals + 1)});
        } else if (options.empty()) {
            faults.push_back(fmt::format("\"{}\" stands before any argument: write --NAME VALUE", word));
        } else {
            std::string& value = options.back().value;
            value += (value.empty() ? "" : " ") + word;
        }
    }
    return options;
}

std::string unknown_argument(const CalculatorText& calculator, const std::string& name) {
    std::vector<std::string> names;
    for (const ArgumentText& argument : calculator.arguments) names.emplace_back(argument.name);
    const auto near = nearest(name, names);
    return fmt::format("there is no argument --{}{}", name, near ? fmt::format("; did you mean --{}?", *near) : "");
}

class Reader {
  public:
    Reader(const CalculatorText& calculator, Date today) : calculator_{calculator}, today_{today} {}

    void take(const Option& given) {
        const auto argument = std::ranges::find(calculator_.arguments, given.name, &ArgumentText::name);
        if (argument == calculator_.arguments.end()) {
            faults.push_back(unknown_argument(calculator_, given.name));
        } else if (given.value.empty()) {
            faults.push_back(fmt::format("{} has no value", option(*argument)));
            seen_.push_back(&*argument);
        } else if (!argument->many && std::ranges::find(seen_, &*argument) != seen_.end()) {
            faults.push_back(fmt::format("{} stands here twice", option(*argument)));
        } else {
            add(*argument, given.value, false);
        }
    }

    void fill_in() {
        for (const ArgumentText& argument : calculator_.arguments) {
            if (std::ranges::find(seen_, &argument) != seen_.end()) continue;
            if (argument.needed())
                faults.push_back(fmt::format("{} is missing: {}", option(argument), argument.help));
            else if (!argument.standard.empty())
                add(argument, std::string{argument.standard}, true);
        }
    }

    std::vector<Input> in_order() const {
        std::vector<Input> inputs;
        for (const ArgumentText& argument : calculator_.arguments)
            std::ranges::copy_if(inputs_, std::back_inserter(inputs),
                                 [&](const Input& input) { return input.argument == &argument; });
        return inputs;
    }

    std::vector<std::string> faults;

  private:
    void add(const ArgumentText& argument, const std::string& text, bool by_default) {
        seen_.push_back(&argument);
        Read read = read_value(argument, text, today_);
        if (auto* fault = std::get_if<std::string>(&read)) {
            faults.push_back(std::move(*fault));
            return;
        }
        inputs_.push_back(std::get<Input>(std::move(read)));
        inputs_.back().by_default = by_default;
    }

    const CalculatorText& calculator_;
    Date today_;
    std::vector<const ArgumentText*> seen_;
    std::vector<Input> inputs_;
};

}  // namespace

const Input* Inputs::find(std::string_view name) const {
    const auto found = std::ranges::find_if(all_, [&](const Input& input) { return input.argument->name == name; });
    return found == all_.end() ? nullptr : &*found;
}

const Input& Inputs::the(std::string_view name) const {
    const Input* input = find(name);
    if (input == nullptr) throw std::logic_error{fmt::format("a calculator asks for --{}, which is not there", name)};
    return *input;
}

Scale scale_of(const ArgumentText& argument) {
    if (argument.kind == nullptr) return {};
    const auto scale = scale_of(*argument.kind, argument.unit);
    if (!scale) throw std::logic_error{fmt::format("--{} has a unit of another kind", argument.name)};
    return *scale;
}

std::vector<std::string> accepted_units(const ArgumentText& argument) {
    std::vector<std::string> units{std::string{argument.unit}};
    const auto add = [&](std::string_view symbol) {
        if (symbol != argument.unit) units.emplace_back(symbol);
    };
    if (argument.kind->dimension)
        for (const Unit& unit : units_of(*argument.kind->dimension)) add(unit.symbol);
    for (const CompoundUnit& unit : argument.kind->units) add(unit.symbol);
    return units;
}

std::variant<Inputs, ArgumentFaults> read_inputs(const CalculatorText& calculator, std::span<const std::string> words,
                                                 Date today) {
    Reader reader{calculator, today};
    for (const Option& given : options_in(words, reader.faults)) reader.take(given);
    reader.fill_in();
    if (!reader.faults.empty()) return ArgumentFaults{std::move(reader.faults)};
    return Inputs{reader.in_order()};
}

}  // namespace ventfolio
