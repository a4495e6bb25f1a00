#pragma once

#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "units/decimal.hpp"
#include "units/quantity.hpp"

namespace ventfolio {

/// A quantity as a person wrote it: the digits and the unit both stay, and are what paper shows. The typed value serves
/// calculators only.
struct Measure {
    Decimal number;
    Unit unit;

    template <Dimension D>
    Quantity<D> as() const {
        return Quantity<D>::of(number.value(), unit);
    }
    /// In the canonical unit of its dimension.
    double canonical() const { return number.value() * unit.factor + unit.offset; }
    /// "16 cmH2O", for messages. Paper uses the words of the sheet's language.
    std::string text() const { return number.plain() + " " + std::string{unit.symbol}; }

    friend bool operator==(const Measure& a, const Measure& b) {
        return a.number == b.number && a.unit.symbol == b.unit.symbol;
    }
};

/// Why a text is not a measure.
enum class MeasureFault {
    empty,
    not_a_number,     ///< "about 35", "1e3", "3,5"
    without_unit,     ///< "35"
    glued,            ///< "35cmH2O": digits and unit need a space between them
    unknown_unit,     ///< "35 cmH20"
    wrong_dimension,  ///< "35 mL" where a pressure is due
};

/// Reads "35 cmH2O". `accepted` lists the units allowed here; it must not be empty.
std::variant<Measure, MeasureFault> parse_measure(std::string_view text, std::span<const Unit> accepted);

/// The units of one dimension.
std::span<const Unit> units_of(Dimension dimension);

}  // namespace ventfolio
