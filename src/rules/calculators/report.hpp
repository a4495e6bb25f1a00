#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "rules/calculators/calculate.hpp"

namespace ventfolio {

/// Result, the formula with the numbers put in, source and caution.
std::string calculation_text(const Calculation& calculation, std::size_t width = 100);
/// The result lines alone: "lasts: 4 h 12 min". Each begins with the indent.
std::string result_lines(const Calculation& calculation, std::string_view indent = "");
/// The same as data: calculator, inputs, results, worked formula, source, cautions.
nlohmann::json calculation_json(const Calculation& calculation);
/// "outside": why there is no number, and the range.
nlohmann::json outside_json(const CalculatorText& calculator, const OutsideRange& outside);

/// How a calculator is called: arguments with units and defaults, and an example.
std::string calculator_usage(const CalculatorText& calculator, std::size_t width = 100);
/// Purpose, formula, range, source, arguments, example with what it prints, caution. Nothing for an unknown name.
std::optional<std::string> explain_calculator(std::string_view name, std::size_t width = 100);
/// All calculators, one a line, name first.
std::string list_calculators();

}  // namespace ventfolio
