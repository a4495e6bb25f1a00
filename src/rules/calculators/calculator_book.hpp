#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "units/quantity.hpp"

namespace ventfolio {

class Answer;
class Inputs;

/// A unit that only calculators know: `value in the kind's base unit = number * factor`.
struct CompoundUnit {
    std::string_view symbol;
    double factor = 1;
};

/// What a quantity is: one of the dimensions of units/, or a kind with units of its own (mL/cmH2O).
struct QuantityKind {
    std::string_view says;  ///< "a pressure"
    std::optional<Dimension> dimension;
    std::span<const CompoundUnit> units;
};

/// What an argument is read as.
enum class Takes : std::uint8_t {
    quantity,   ///< number and unit of its kind
    word,       ///< one of a list
    whole,      ///< a whole number
    number,     ///< a plain number
    date,       ///< 2026-02-03
    interval,   ///< 2 weeks
    measure,    ///< a quantity of any dimension
    unit_name,  ///< a unit alone
};

struct NamedText {
    std::string_view name;
    std::string_view text;
};

struct ArgumentText {
    std::string_view name;
    Takes takes = Takes::quantity;
    const QuantityKind* kind = nullptr;  ///< of quantities only
    std::string_view unit;               ///< in which help, range and worked formula speak
    std::optional<double> from;          ///< in `unit`
    std::optional<double> to;
    std::string_view standard;  ///< taken when the argument is not given; empty: none
    bool optional = false;
    bool many = false;  ///< may be given several times
    std::span<const std::string_view> words;
    std::string_view help;

    bool needed() const { return !optional && standard.empty(); }
};

enum class Form : std::uint8_t {
    number,
    hours,  ///< hours and minutes, rounded down: a time that runs out
    word,
    date,
    ratio,    ///< 1:2.6
    measure,  ///< six digits, in a unit that the calculation names
};
enum class Rounding : std::uint8_t { nearest, up, down };
/// Which end of an estimate paper plans on; `both` for bands that are no estimate, `value` where there is one number.
enum class PlanOn : std::uint8_t { value, low, high, both };

struct ResultText {
    std::string_view name;
    std::string_view label;
    Form form = Form::number;
    std::string_view unit;
    int places = 0;
    Rounding round = Rounding::nearest;
    PlanOn plan = PlanOn::value;
    std::span<const NamedText> words;  ///< what each word of the result says
};

/// Joins one calculator to its arguments. Nothing where the calculator gives no number.
using Binding = std::optional<Answer> (*)(const Inputs&);

/// Everything about a calculator but its function. Baked from src/rules/calculators/book while building.
struct CalculatorText {
    std::string_view name;     ///< "cylinder-time"
    std::string_view subject;  ///< book file: "oxygen"
    std::string_view purpose;
    std::string_view formula;
    std::span<const NamedText> works;  ///< the formula to put numbers in, for each way it can go
    std::string_view range;            ///< what the limits of the arguments do not say; may be empty
    std::string_view nothing;          ///< when no number is given inside those limits; may be empty
    std::string_view source;
    std::string_view caution;  ///< of this calculator alone; may be empty
    bool fire = false;         ///< oxygen, generator, battery: local fire and electrical codes come first
    std::span<const ArgumentText> arguments;
    std::span<const ResultText> results;
    std::string_view example;  ///< arguments as typed in a shell
    std::string_view prints;   ///< the result lines of the example
    Binding run = nullptr;
};

/// All calculators, by subject, in the order of the book.
std::span<const CalculatorText> calculator_book();
/// The calculator with this name; null when there is none.
const CalculatorText* find_calculator(std::string_view name);
/// The calculator whose name is nearest to a misspelt one.
std::optional<std::string> nearest_calculator(std::string_view name);
/// "The prescriber's orders, ... come first."
std::string_view limits_line();
/// The same for fire and electrical codes.
std::string_view fire_line();

}  // namespace ventfolio
