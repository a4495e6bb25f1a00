#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "rules/calculators/calculator_book.hpp"
#include "units/calendar.hpp"
#include "units/measure.hpp"

namespace ventfolio {

/// One argument as it was given, or as the book takes it by default.
struct Input {
    const ArgumentText* argument = nullptr;
    std::string written = {};
    bool by_default = false;
    double value = 0;  ///< quantities in the canonical unit of their dimension or the base unit of their kind; numbers
    std::optional<Date> date = {};
    std::optional<Interval> interval = {};
    std::optional<Unit> unit = {};  ///< of a measure of any dimension, or a unit alone
};

/// The arguments of one calculation. Asking for one that is not there is a bug of the binding: std::logic_error.
class Inputs {
  public:
    explicit Inputs(std::vector<Input> all) : all_{std::move(all)} {}

    const std::vector<Input>& all() const { return all_; }
    bool has(std::string_view name) const { return find(name) != nullptr; }

    template <Dimension D>
    Quantity<D> get(std::string_view name) const {
        return quantity<D>(the(name));
    }
    template <Dimension D>
    std::optional<Quantity<D>> maybe(std::string_view name) const {
        return has(name) ? std::optional{get<D>(name)} : std::nullopt;
    }
    template <Dimension D>
    std::vector<Quantity<D>> list(std::string_view name) const {
        std::vector<Quantity<D>> values;
        for (const Input& input : all_)
            if (input.argument->name == name) values.push_back(quantity<D>(input));
        return values;
    }
    double number(std::string_view name) const { return the(name).value; }
    long long whole(std::string_view name) const { return static_cast<long long>(the(name).value); }
    const std::string& word(std::string_view name) const { return the(name).written; }
    Date date(std::string_view name) const { return the(name).date.value(); }
    Interval interval(std::string_view name) const { return the(name).interval.value(); }
    const Unit& unit(std::string_view name) const { return the(name).unit.value(); }

  private:
    template <Dimension D>
    static Quantity<D> quantity(const Input& input) {
        return Quantity<D>::of(input.value, Unit{"", D, 1});
    }
    const Input* find(std::string_view name) const;
    const Input& the(std::string_view name) const;

    std::vector<Input> all_;
};

/// What is wrong with the arguments, one sentence each: an unknown name with the nearest right one, a missing argument,
/// a value that is no measure, a unit of another kind with those that fit.
struct ArgumentFaults {
    std::vector<std::string> sentences;
};

/// Reads "--gauge", "2000 psi", … (also "--gauge=2000 psi", and a value in several words). `today` stands for dates
/// that are taken by default.
std::variant<Inputs, ArgumentFaults> read_inputs(const CalculatorText& calculator, std::span<const std::string> words,
                                                 Date today);

/// The unit in which the book speaks of a quantity, as factor and offset.
struct Scale {
    double factor = 1;
    double offset = 0;
};
Scale scale_of(const ArgumentText& argument);
/// The units in which an argument may be given, the book's own first.
std::vector<std::string> accepted_units(const ArgumentText& argument);

}  // namespace ventfolio
