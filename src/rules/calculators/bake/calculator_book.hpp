#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace bake {

/// A unit that only calculators know, such as mL/cmH2O. `value in the first unit = number * factor`.
struct CompoundUnit {
    std::string symbol;
    std::string factor;
};

struct Kind {
    std::string name;       ///< "compliance"
    std::string says;       ///< "a compliance"
    std::string dimension;  ///< of quantities; empty for compound kinds
    std::vector<CompoundUnit> units;
};

struct Argument {
    std::string name;
    std::string takes;
    std::string unit;
    std::string from;
    std::string to;
    std::string standard;
    bool optional = false;
    bool many = false;
    std::vector<std::string> words;
    std::string help;
};

struct Result {
    std::string name;
    std::string label;
    std::string form;
    std::string unit;
    std::string places;
    std::string round;
    std::string plan;
    std::vector<std::pair<std::string, std::string>> words;
};

struct Calculator {
    std::string name;
    std::string subject;
    std::string purpose;
    std::string formula;
    std::vector<std::pair<std::string, std::string>> works;
    std::string range;
    std::string nothing;
    std::string source;
    std::string caution;
    bool fire = false;
    std::vector<Argument> arguments;
    std::vector<Result> results;
    std::string example;
    std::string prints;
};

struct CalculatorBook {
    std::string limits;
    std::string fire;
    std::vector<Kind> kinds;
    std::vector<Calculator> calculators;
};

/// Reads and checks all files. Throws BookError on the first mistake.
CalculatorBook read_calculators(const std::filesystem::path& shared,
                                const std::vector<std::filesystem::path>& subjects);

/// Contents of the two generated files.
std::string bindings_header(const CalculatorBook& book);
std::string calculator_tables(const CalculatorBook& book);

}  // namespace bake
