#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "book.hpp"
#include "cpp_text.hpp"
#include "source.hpp"

namespace bake {
namespace {

/// "age_highest" as "kAgeHighest".
std::string constant_name(std::string_view name) {
    std::string out = "k";
    bool upper = true;
    for (const char c : name) {
        if (c == '_') {
            upper = true;
            continue;
        }
        out += upper && c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        upper = false;
    }
    return out;
}

/// How a unit of the data file becomes a C++ type. Calendar steps are whole numbers; shares are plain factors.
struct UnitForm {
    std::string_view unit;
    std::string_view form;
};
constexpr std::array kForms{
    UnitForm{"cmH2O", "Pressure k = Pressure::of(v, unit::cmH2O)"},
    UnitForm{"psi", "Pressure k = Pressure::of(v, unit::psi)"},
    UnitForm{"mL", "Volume k = Volume::of(v, unit::mL)"},
    UnitForm{"L/min", "Flow k = Flow::of(v, unit::L_per_min)"},
    UnitForm{"s", "Duration k = Duration::of(v, unit::s)"},
    UnitForm{"min", "Duration k = Duration::of(v, unit::min)"},
    UnitForm{"h", "Duration k = Duration::of(v, unit::h)"},
    UnitForm{"h/day", "Duration k = Duration::of(v, unit::h)"},
    UnitForm{"cm", "Length k = Length::of(v, unit::cm)"},
    UnitForm{"mm", "Length k = Length::of(v, unit::mm)"},
    UnitForm{"kg", "Mass k = Mass::of(v, unit::kg)"},
    UnitForm{"breaths/min", "BreathRate k = BreathRate::of(v, unit::breaths_per_min)"},
    UnitForm{"years", "int k = v"},
    UnitForm{"months", "int k = v"},
    UnitForm{"days", "int k = v"},
    UnitForm{"words", "int k = v"},
    UnitForm{"percent", "double k = v / 100.0"},
    UnitForm{"fraction", "double k = v"},
    UnitForm{"times", "double k = v"},
    UnitForm{"kg/m2", "double k = v"},
    UnitForm{"mL/kg", "double k = v"},
};

std::string declaration(const Threshold& threshold) {
    const auto form = std::ranges::find(kForms, threshold.unit, &UnitForm::unit);
    if (form == kForms.end())
        throw BookError{
            fmt::format("thresholds: error: '{}' has an unknown unit '{}'", threshold.name, threshold.unit)};
    if (threshold.value.find_first_not_of("0123456789.") != std::string::npos)
        throw BookError{fmt::format("thresholds: error: '{}' is not a number: '{}'", threshold.name, threshold.value)};
    std::string out{form->form};
    out.replace(out.find(" k = ") + 1, 1, constant_name(threshold.name));
    const auto value = out.find("(v") == std::string::npos ? out.find("= v") + 2 : out.find("(v") + 1;
    out.replace(value, 1, threshold.value);
    return out;
}

struct RuleArrays {
    std::string arrays;
    std::string stops = "{}";
    std::string bold = "{}";
    std::string fires;
    std::string silent;
};

std::string parts_of(const std::vector<ExamplePart>& fragment) {
    std::string out;
    for (const ExamplePart& part : fragment) out += fmt::format("{{{}sv, {}}}, ", literal(part.text), part.times);
    return out;
}

RuleArrays arrays_of(const Rule& rule) {
    RuleArrays out;
    const auto add = [&](const std::vector<std::string>& names, std::string_view prefix, std::string& reference) {
        if (names.empty()) return;
        reference = fmt::format("{}_{}", prefix, identifier(rule.name));
        out.arrays += fmt::format("constexpr std::string_view {}[]{{{}}};\n", reference, literals(names));
    };
    add(rule.stops, "stops", out.stops);
    add(rule.bold_on, "bold", out.bold);
    const auto add_fragment = [&](const std::vector<ExamplePart>& fragment, std::string_view prefix,
                                  std::string& reference) {
        reference = fmt::format("{}_{}", prefix, identifier(rule.name));
        out.arrays += fmt::format("constexpr ExamplePart {}[]{{{}}};\n", reference, parts_of(fragment));
    };
    add_fragment(rule.example.fires, "fires", out.fires);
    add_fragment(rule.example.silent, "silent", out.silent);
    return out;
}

std::string entry(const Rule& rule, const RuleArrays& arrays) {
    const Example& example = rule.example;
    return fmt::format(
        "    {{{}, {},\n     Judges::{}, Severity::{}, {}, {}, {},\n     {},\n     {},\n     {},\n     {},\n     {},\n"
        "     {{ExampleForm::{}, {}, {}, {}, {}, {}, {}, {}, {}}},\n     {}}},\n",
        literal(rule.name), literal(rule.subject), rule.judges, rule.severity, arrays.stops, rule.stops_judged_sheet,
        arrays.bold, literal(rule.says), literal(rule.why), literal(rule.to_do), literal(rule.source),
        literal(rule.formula), example.form, literal(example.home), literal(example.on), arrays.fires, arrays.silent,
        literal(example.sheet), literal(example.audience), literal(example.file), literal(example.edits),
        rule.judges == "profile" ? "check::" + identifier(rule.name) : "nullptr");
}

}  // namespace

std::string thresholds_header(const Book& book) {
    std::string out =
        "// Written by the build from thresholds.yaml.\n#pragma once\n\n#include \"units/quantity.hpp\"\n\n"
        "namespace ventfolio::threshold {\n\n";
    for (const Threshold& one : book.thresholds)
        out += fmt::format("/// {} {}; {}\ninline constexpr {};\n", one.value, one.unit, one.source, declaration(one));
    return out + "\n}  // namespace ventfolio::threshold\n";
}

std::string checks_header(const Book& book) {
    std::string out =
        "// Written by the build from the rule book: one check for every rule that judges the profile.\n"
        "#pragma once\n\nnamespace ventfolio {\nclass Report;\nstruct Household;\n}  // namespace ventfolio\n\n"
        "namespace ventfolio::check {\n\n";
    for (const Rule& rule : book.rules)
        if (rule.judges == "profile")
            out += fmt::format("void {}(const Household& home, Report& report);\n", identifier(rule.name));
    return out + "\n}  // namespace ventfolio::check\n";
}

std::string tables_source(const Book& book) {
    std::string arrays;
    std::string rules;
    for (const Rule& rule : book.rules) {
        const RuleArrays of_rule = arrays_of(rule);
        arrays += of_rule.arrays;
        rules += entry(rule, of_rule);
    }
    std::string threshold_rows;
    for (const Threshold& one : book.thresholds) {
        const std::string name = "users_" + one.name;
        arrays += fmt::format("constexpr std::string_view {}[]{{{}}};\n", name, literals(one.rules));
        threshold_rows += fmt::format("    {{{}, {}, {}, {}, {}}},\n", literal(one.name), literal(one.value),
                                      literal(one.unit), literal(one.source), name);
    }
    return fmt::format(
        "// Written by the build from the rule book.\n#include \"rules/checks.hpp\"\n#include "
        "\"rules/rule_book.hpp\"\n\n"
        "namespace ventfolio {{\nnamespace {{\n\nusing namespace std::string_view_literals;\n\n"
        "{}\nconstexpr std::string_view kSheets[]{{{}}};\n"
        "constexpr RuleText kRules[]{{\n{}}};\n\nconstexpr Threshold kThresholds[]{{\n{}}};\n\n}}  // namespace\n\n"
        "std::span<const RuleText> rule_book() {{ return kRules; }}\n"
        "std::span<const Threshold> thresholds() {{ return kThresholds; }}\n"
        "std::span<const std::string_view> sheet_names() {{ return kSheets; }}\n\n}}  // namespace ventfolio\n",
        arrays, literals(book.sheets.names), rules, threshold_rows);
}

}  // namespace bake
