#include <fmt/format.h>

#include "../../bake/cpp_text.hpp"
#include "calculator_book.hpp"

namespace bake {
namespace {

using NamedTexts = std::vector<std::pair<std::string, std::string>>;

std::string pairs(const NamedTexts& texts) {
    std::string out;
    for (const auto& [name, text] : texts) out += fmt::format("{{{}, {}}}, ", literal(name), literal(text));
    return out;
}

/// An array of its own where there is something to hold; "{}" otherwise.
std::string array(std::string& arrays, std::string_view type, const std::string& name, const std::string& entries) {
    if (entries.empty()) return "{}";
    arrays += fmt::format("constexpr {} {}[]{{{}}};\n", type, name, entries);
    return name;
}

std::string limit(const std::string& number) { return number.empty() ? "std::nullopt" : number; }

std::string argument_entry(const Argument& one, const std::string& owner, std::string& arrays,
                           const CalculatorBook& book) {
    const bool plain = std::ranges::find(book.kinds, one.takes, &Kind::name) == book.kinds.end();
    const std::string takes = plain ? "Takes::" + (one.takes == "unit" ? "unit_name" : one.takes) : "Takes::quantity";
    const std::string words =
        array(arrays, "std::string_view", fmt::format("words_{}_{}", owner, identifier(one.name)), literals(one.words));
    return fmt::format("    {{{}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}}},\n", literal(one.name), takes,
                       plain ? "nullptr" : "&kind_" + identifier(one.takes), literal(one.unit), limit(one.from),
                       limit(one.to), literal(one.standard), one.optional, one.many, words, literal(one.help));
}

std::string result_entry(const Result& one, const std::string& owner, std::string& arrays) {
    const std::string words =
        array(arrays, "NamedText", fmt::format("says_{}_{}", owner, identifier(one.name)), pairs(one.words));
    return fmt::format("    {{{}, {}, Form::{}, {}, {}, Rounding::{}, PlanOn::{}, {}}},\n", literal(one.name),
                       literal(one.label), one.form, literal(one.unit), one.places, one.round,
                       one.plan.empty() ? "value" : one.plan, words);
}

std::string entry(const Calculator& one, std::string& arrays, const CalculatorBook& book) {
    const std::string name = identifier(one.name);
    std::string arguments;
    std::string results;
    for (const Argument& argument : one.arguments) arguments += argument_entry(argument, name, arrays, book);
    for (const Result& result : one.results) results += result_entry(result, name, arrays);
    const std::string arguments_array = array(arrays, "ArgumentText", "arguments_" + name, "\n" + arguments);
    const std::string results_array = array(arrays, "ResultText", "results_" + name, "\n" + results);
    const std::string works = array(arrays, "NamedText", "works_" + name, pairs(one.works));
    return fmt::format(
        "    {{{}, {},\n     {},\n     {},\n     {}, {},\n     {},\n     {},\n     {}, {}, {}, {},\n     {}, {},\n"
        "     calculators::{}}},\n",
        literal(one.name), literal(one.subject), literal(one.purpose), literal(one.formula), works, literal(one.range),
        literal(one.nothing), literal(one.source), literal(one.caution), one.fire, arguments_array, results_array,
        literal(one.example), literal(one.prints), name);
}

std::string kind_entries(const CalculatorBook& book) {
    std::string out;
    for (const Kind& kind : book.kinds) {
        std::string units;
        for (const CompoundUnit& unit : kind.units)
            units += fmt::format("{{{}, 1.0 * {}}}, ", literal(unit.symbol), unit.factor);
        const std::string list = array(out, "CompoundUnit", "units_" + identifier(kind.name), units);
        out += fmt::format("constexpr QuantityKind kind_{}{{{}, {}, {}}};\n", identifier(kind.name), literal(kind.says),
                           kind.dimension.empty() ? "std::nullopt" : "Dimension::" + kind.dimension, list);
    }
    return out;
}

}  // namespace

std::string bindings_header(const CalculatorBook& book) {
    std::string out =
        "// Written by the build from the calculators' texts: one binding for every calculator.\n#pragma once\n\n"
        "#include <optional>\n\nnamespace ventfolio {\nclass Answer;\nclass Inputs;\n}  // namespace ventfolio\n\n"
        "namespace ventfolio::calculators {\n\n";
    for (const Calculator& one : book.calculators)
        out += fmt::format("std::optional<Answer> {}(const Inputs& in);\n", identifier(one.name));
    return out + "\n}  // namespace ventfolio::calculators\n";
}

std::string calculator_tables(const CalculatorBook& book) {
    std::string arrays;
    std::string entries;
    for (const Calculator& one : book.calculators) entries += entry(one, arrays, book);
    return fmt::format(
        "// Written by the build from the calculators' texts.\n#include \"rules/calculator_bindings.hpp\"\n"
        "#include \"rules/calculators/calculator_book.hpp\"\n\nnamespace ventfolio {{\nnamespace {{\n\n{}\n{}\n"
        "constexpr CalculatorText kCalculators[]{{\n{}}};\n\n}}  // namespace\n\n"
        "std::span<const CalculatorText> calculator_book() {{ return kCalculators; }}\n"
        "std::string_view limits_line() {{ return {}; }}\n"
        "std::string_view fire_line() {{ return {}; }}\n\n}}  // namespace ventfolio\n",
        kind_entries(book), arrays, entries, literal(book.limits), literal(book.fire));
}

}  // namespace bake
