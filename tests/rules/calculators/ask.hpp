#pragma once

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "rules/calculators/calculate.hpp"

/// Runs calculators by name and typed arguments, as the command does.
namespace ventfolio::testing {

/// The words of a shell line with double quotes: `--flow "2 L/min"` is two words.
std::vector<std::string> shell_words(std::string_view line);

/// The day that stands for today.
Date test_day();

/// The calculator of this name; the test stops when there is none.
const CalculatorText& the_calculator(std::string_view name);

std::variant<Inputs, ArgumentFaults> read(std::string_view name, const std::vector<std::string>& words);
/// Arguments that must be readable.
Inputs inputs_for(std::string_view name, const std::vector<std::string>& words);
std::variant<Calculation, OutsideRange> asked(std::string_view name, std::string_view arguments);
/// The result of this name, "fraction" or "fraction.low"; the test stops when there is none.
struct Found {
    std::string text;
    double exact = 0;
};
Found found(const Calculation& calculation, std::string_view result);

}  // namespace ventfolio::testing
