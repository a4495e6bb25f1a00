#include "rules/calculators/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "rules/report_text.hpp"
#include "units/print.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kIndent = 12;

void paragraph(std::string& out, std::string_view head, std::string_view text, std::size_t width) {
    if (!text.empty()) out += fmt::format("  {:<10}{}\n", head, wrapped(text, kIndent, kIndent, width));
}

std::vector<std::string> cautions_of(const CalculatorText& calculator) {
    std::vector<std::string> cautions;
    if (!calculator.caution.empty()) cautions.emplace_back(calculator.caution);
    cautions.emplace_back(limits_line());
    if (calculator.fire) cautions.emplace_back(fire_line());
    return cautions;
}

/// "gauge 137.895 bar, which is 2,000 psi".
std::string shown_input(const Input& input) {
    const std::string book = in_book_unit(input);
    if (input.argument->takes != Takes::quantity || input.written == book)
        return fmt::format("{} {}", input.argument->name, input.written);
    const bool same_unit = input.written.ends_with(input.argument->unit);
    return same_unit ? fmt::format("{} {}", input.argument->name, book)
                     : fmt::format("{} {}, which is {}", input.argument->name, input.written, book);
}

std::string shown_inputs(const Calculation& calculation, bool by_default) {
    std::vector<std::string> parts;
    for (const Input& input : calculation.inputs.all())
        if (input.by_default == by_default) parts.push_back(shown_input(input));
    return joined(parts, "; ");
}

std::string shown_number(double value) { return printed(Decimal::rounded(value, 4), {}); }

std::string what_it_takes(const ArgumentText& argument) {
    switch (argument.takes) {
        case Takes::quantity:
            return fmt::format("{}, {} to {} {}, in {}", argument.kind->says, shown_number(*argument.from),
                               shown_number(*argument.to), argument.unit, joined(accepted_units(argument), ", "));
        case Takes::word:
            return "one of " + joined(std::vector<std::string>{argument.words.begin(), argument.words.end()}, ", ");
        case Takes::whole:
            return fmt::format("a whole number, {} to {}", shown_number(*argument.from), shown_number(*argument.to));
        case Takes::number:
            return fmt::format("a number, {} to {}", shown_number(*argument.from), shown_number(*argument.to));
        case Takes::date:
            return "a day, as 2026-02-03";
        case Takes::interval:
            return "\"30 days\", \"2 weeks\", \"6 months\" or \"1 year\"";
        case Takes::measure:
            return "a number and a unit of any kind";
        case Takes::unit_name:
            return "a unit";
    }
    return {};
}

std::string argument_lines(const CalculatorText& calculator, std::size_t width) {
    constexpr std::size_t kArgumentIndent = 24;
    std::string out;
    for (const ArgumentText& argument : calculator.arguments) {
        std::string text = fmt::format("{}; {}", argument.help, what_it_takes(argument));
        if (!argument.standard.empty()) text += fmt::format(" (taken if not given: {})", argument.standard);
        if (argument.optional) text += " (may be left out)";
        if (argument.many) text += " (may be given several times)";
        out += fmt::format("    {:<20}{}\n", fmt::format("--{}", argument.name),
                           wrapped(text, kArgumentIndent, kArgumentIndent, width));
    }
    return out;
}

std::string example_line(const CalculatorText& calculator) {
    return fmt::format("ventfolio calc {} {}", calculator.name, calculator.example);
}

nlohmann::json input_json(const Input& input) {
    nlohmann::json json{{"written", input.written}, {"by_default", input.by_default}};
    if (input.argument->takes == Takes::quantity) {
        const Scale scale = scale_of(*input.argument);
        json["value"] = (input.value - scale.offset) / scale.factor;
        json["unit"] = input.argument->unit;
    } else if (input.argument->takes == Takes::whole || input.argument->takes == Takes::number) {
        json["value"] = input.value;
    }
    return json;
}

nlohmann::json result_json(const ShownResult& shown) {
    const ResultText& result = *shown.result;
    nlohmann::json json{{"text", shown.text}};
    if (shown.numbers.size() == 1) json["value"] = shown.numbers.front();
    if (shown.numbers.size() == 2 && result.form != Form::ratio) {
        json["low"] = shown.numbers.front();
        json["high"] = shown.numbers.back();
        if (result.plan == PlanOn::low) json["plan_on"] = "low";
        if (result.plan == PlanOn::high) json["plan_on"] = "high";
    }
    if (!shown.unit.empty()) json["unit"] = shown.unit;
    return json;
}

std::vector<std::string> names_of_all() {
    std::vector<std::string> names;
    for (const CalculatorText& one : calculator_book()) names.emplace_back(one.name);
    return names;
}

}  // namespace

const CalculatorText* find_calculator(std::string_view name) {
    const auto found = std::ranges::find(calculator_book(), name, &CalculatorText::name);
    return found == calculator_book().end() ? nullptr : &*found;
}

std::optional<std::string> nearest_calculator(std::string_view name) { return nearest(name, names_of_all()); }

std::string result_lines(const Calculation& calculation, std::string_view indent) {
    std::string out;
    for (const ShownResult& shown : calculation.results)
        out += fmt::format("{}{}: {}\n", indent, shown.result->label, shown.text);
    return out;
}

std::string calculation_text(const Calculation& calculation, std::size_t width) {
    const CalculatorText& calculator = *calculation.calculator;
    std::string out = fmt::format("{}: {}\n", calculator.name, calculator.purpose);
    out += result_lines(calculation, "  ") + "\n";
    paragraph(out, "given:", shown_inputs(calculation, false), width);
    paragraph(out, "assumed:", shown_inputs(calculation, true), width);
    paragraph(out, "formula:", calculator.formula, width);
    paragraph(out, "here:", calculation.worked, width);
    paragraph(out, "range:", range_of(calculator), width);
    paragraph(out, "source:", calculator.source, width);
    paragraph(out, "caution:", joined(cautions_of(calculator), " "), width);
    return out;
}

nlohmann::json calculation_json(const Calculation& calculation) {
    const CalculatorText& calculator = *calculation.calculator;
    nlohmann::json inputs = nlohmann::json::object();
    for (const Input& input : calculation.inputs.all()) {
        nlohmann::json& place = inputs[std::string{input.argument->name}];
        if (input.argument->many)
            place.push_back(input_json(input));
        else
            place = input_json(input);
    }
    nlohmann::json results = nlohmann::json::object();
    for (const ShownResult& shown : calculation.results) results[std::string{shown.result->name}] = result_json(shown);
    return {{"calculator", calculator.name},
            {"inputs", inputs},
            {"results", results},
            {"formula", calculator.formula},
            {"worked", calculation.worked},
            {"range", range_of(calculator)},
            {"source", calculator.source},
            {"cautions", cautions_of(calculator)}};
}

nlohmann::json outside_json(const CalculatorText& calculator, const OutsideRange& outside) {
    return {{"calculator", calculator.name}, {"outside", outside.sentences}, {"range", range_of(calculator)}};
}

std::string calculator_usage(const CalculatorText& calculator, std::size_t width) {
    return fmt::format("{}: {}\n  arguments:\n{}    --format            text or json\n\nExample: {}\n", calculator.name,
                       calculator.purpose, argument_lines(calculator, width), example_line(calculator));
}

std::optional<std::string> explain_calculator(std::string_view name, std::size_t width) {
    const CalculatorText* calculator = find_calculator(name);
    if (calculator == nullptr) return std::nullopt;
    std::string out = fmt::format("{}: {}\n", calculator->name, calculator->purpose);
    paragraph(out, "formula:", calculator->formula, width);
    paragraph(out, "range:", range_of(*calculator), width);
    paragraph(out, "nothing:", calculator->nothing, width);
    paragraph(out, "source:", calculator->source, width);
    out += "  arguments:\n" + argument_lines(*calculator, width);
    out += fmt::format("  example:  {}\n    gives\n", example_line(*calculator));
    for (const std::string& line : split(calculator->prints, '\n'))
        if (!line.empty()) out += "      " + line + "\n";
    paragraph(out, "caution:", joined(cautions_of(*calculator), " "), width);
    return out;
}

std::string list_calculators() {
    std::string out;
    for (const CalculatorText& one : calculator_book()) out += fmt::format("{:<26} {}\n", one.name, one.purpose);
    return out;
}

}  // namespace ventfolio
