#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "calc/band.hpp"
#include "units/calendar.hpp"
#include "units/quantity.hpp"

namespace ventfolio {

/// One number of a result: of a dimension, in its canonical unit, or plain and already in the unit that the book names.
struct Amount {
    double value = 0;
    std::optional<Dimension> dimension;
};

/// One named result of a calculation. A band has two amounts; a word of the book or a day has a text instead.
struct Given {
    std::string name;
    std::vector<Amount> amounts;
    std::string text;  ///< or the unit of a measure
};

/// What a calculator found, under the names that the book prints.
class Answer {
  public:
    template <Dimension D>
    Answer& give(std::string_view name, Quantity<D> value) {
        return add(name, {amount(value)}, {});
    }
    template <Dimension D>
    Answer& give(std::string_view name, const calc::Band<Quantity<D>>& band) {
        return add(name, {amount(band.low), amount(band.high)}, {});
    }
    Answer& give(std::string_view name, double value) { return add(name, {{value, std::nullopt}}, {}); }
    /// In a unit that the book cannot know beforehand.
    Answer& give_measure(std::string_view name, double number, std::string_view unit) {
        return add(name, {{number, std::nullopt}}, std::string{unit});
    }
    Answer& give_ratio(std::string_view name, double first, double second) {
        return add(name, {{first, std::nullopt}, {second, std::nullopt}}, {});
    }
    Answer& give_word(std::string_view name, std::string_view word) { return add(name, {}, std::string{word}); }
    Answer& give_date(std::string_view name, Date day) { return add(name, {}, day.iso()); }
    /// Which of the book's worked formulas was followed, where there are several.
    Answer& by(std::string_view way) {
        way_ = way;
        return *this;
    }

    const std::vector<Given>& all() const { return all_; }
    const std::string& way() const { return way_; }

  private:
    template <Dimension D>
    static Amount amount(Quantity<D> value) {
        return {value.in(Unit{"", D, 1}), D};
    }
    Answer& add(std::string_view name, std::vector<Amount> amounts, std::string text) {
        all_.push_back({std::string{name}, std::move(amounts), std::move(text)});
        return *this;
    }

    std::vector<Given> all_;
    std::string way_;
};

}  // namespace ventfolio
