#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/commands.hpp"
#include "cli/world.hpp"
#include "rules/calculators/report.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kUsageLines =
    "Run a calculator by hand, with formula and source\n"
    "Usage: ventfolio calc NAME --ARGUMENT VALUE ... [--format text|json]\n"
    "       ventfolio calc NAME --help\n\n";
constexpr std::string_view kExampleLine =
    "Example: ventfolio calc cylinder-time --size E --gauge \"2000 psi\" --residual \"200 psi\" --flow \"2 L/min\"";

bool asks_for_help(const std::string& word) { return word == "--help" || word == "-h"; }

int list_them(bool with_usage) {
    if (with_usage) fmt::print("{}", kUsageLines);
    fmt::print("{}", list_calculators());
    if (with_usage)
        fmt::print("\nExit status: {}, {}, {}, {}\n{}\n\n{}\n", kDone, kFindings, kUsage, kUnusable, kExampleLine,
                   limits_line());
    return kDone;
}

int unknown(const std::string& name) {
    const auto near = nearest_calculator(name);
    fmt::print(stderr, "ventfolio: there is no calculator \"{}\"{}\n", name,
               near ? fmt::format("; did you mean \"{}\"?", *near) : "; see `ventfolio list calculators`");
    return kUsage;
}

/// Takes "--format json" out of the words; nothing for a format that is not known.
std::optional<bool> take_format(std::vector<std::string>& words) {
    const auto begins = [](const std::string& word) { return word == "--format" || word.starts_with("--format="); };
    const auto at = std::ranges::find_if(words, begins);
    if (at == words.end()) return false;
    const bool apart = *at == "--format";
    const auto value = apart ? std::next(at) : at;
    if (value == words.end()) return std::nullopt;
    const std::string format = apart ? *value : value->substr(value->find('=') + 1);
    words.erase(at, std::next(value));
    if (format != "json" && format != "text") return std::nullopt;
    return format == "json";
}

int report_faults(const CalculatorText& calculator, const ArgumentFaults& faults) {
    for (const std::string& sentence : faults.sentences)
        fmt::print(stderr, "ventfolio: {}: {}\n", calculator.name, sentence);
    fmt::print(stderr, "\n{}", calculator_usage(calculator));
    return kUsage;
}

int report_outside(const CalculatorText& calculator, const OutsideRange& outside, bool json) {
    if (json) fmt::print("{}\n", outside_json(calculator, outside).dump(2));
    for (const std::string& sentence : outside.sentences)
        fmt::print(stderr, "ventfolio: {}: {}\n", calculator.name, sentence);
    fmt::print(stderr, "  range: {}\n", range_of(calculator));
    return kFindings;
}

int run(const CalculatorText& calculator, std::vector<std::string> words, Date on) {
    const auto json = take_format(words);
    if (!json) return report_faults(calculator, {{"--format is text or json"}});
    auto inputs = read_inputs(calculator, words, on);
    if (const auto* faults = std::get_if<ArgumentFaults>(&inputs)) return report_faults(calculator, *faults);
    const auto outcome = calculate(calculator, std::get<Inputs>(std::move(inputs)));
    if (const auto* outside = std::get_if<OutsideRange>(&outcome)) return report_outside(calculator, *outside, *json);
    const Calculation& calculation = std::get<Calculation>(outcome);
    if (*json)
        fmt::print("{}\n", calculation_json(calculation).dump(2));
    else
        fmt::print("{}", calculation_text(calculation));
    return kDone;
}

}  // namespace

std::string_view calc_example() { return kExampleLine; }

int calc_command(const std::vector<std::string>& words, Date on) {
    if (words.empty()) return list_them(false);
    if (asks_for_help(words.front())) return list_them(true);
    const CalculatorText* calculator = find_calculator(words.front());
    if (calculator == nullptr) return unknown(words.front());
    if (std::ranges::any_of(words, asks_for_help)) {
        fmt::print("{}", calculator_usage(*calculator));
        return kDone;
    }
    return run(*calculator, {words.begin() + 1, words.end()}, on);
}

}  // namespace ventfolio
