#pragma once

#include <string>
#include <variant>
#include <vector>

#include "rules/calculators/answer.hpp"
#include "rules/calculators/inputs.hpp"

namespace ventfolio {

/// Why there is no number, one sentence each.
struct OutsideRange {
    std::vector<std::string> sentences;
};

/// One result, ready to be shown.
struct ShownResult {
    const ResultText* result = nullptr;
    std::string text = {};  ///< "4 h 12 min", "25 % to 41 %, paper plans on the low one"
    std::vector<double> numbers =
        {};  ///< as shown, in the unit of the result (minutes for hours); two for a band or ratio
    std::vector<double> exact = {};  ///< the same before they were rounded
    std::string unit = {};           ///< of the numbers
};

/// A finished calculation.
struct Calculation {
    const CalculatorText* calculator = nullptr;
    Inputs inputs;
    std::vector<ShownResult> results;
    std::string worked;  ///< the formula with the numbers put in
};

/// Runs a calculator. Every number is checked against its argument's range first, so that the answer to a number
/// outside says which and where the range ends.
std::variant<Calculation, OutsideRange> calculate(const CalculatorText& calculator, Inputs inputs);

/// "gauge 0 to 5,000 psi; flow 0.01 to 25 L/min; …": where the calculator holds.
std::string range_of(const CalculatorText& calculator);

/// An input in the unit that the book uses: "2,000 psi" for 137.9 bar.
std::string in_book_unit(const Input& input);

}  // namespace ventfolio
