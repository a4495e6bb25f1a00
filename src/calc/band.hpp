#pragma once

#include "units/quantity.hpp"

/// Pure functions from quantities to quantities, one subject a header. None of them decides treatment: each says what
/// a formula from a named source gives, and returns nothing where that formula does not hold.
namespace ventfolio::calc {

/// A low and a high end of the same quantity: a normal band, or an estimate that must not pass for a measurement.
template <typename Value>
struct Band {
    Value low{};
    Value high{};

    constexpr bool contains(Value value) const { return low <= value && value <= high; }
    friend constexpr bool operator==(const Band&, const Band&) = default;
};

/// Relative tolerance of every comparison with a limit: 0.28 x 2200 is not quite 616 in binary.
inline constexpr double kTolerance = 1e-9;

/// Whether a number lies in a closed range. Never true for a number that is not finite.
constexpr bool within(double value, double low, double high) {
    const auto slack = [](double limit) { return kTolerance * (limit < 0 ? -limit : limit); };
    return value >= low - slack(low) && value <= high + slack(high);
}

template <Dimension D>
constexpr bool within(Quantity<D> value, double low, double high, UnitOf<D> unit) {
    return within(value.in(unit), low, high);
}

/// Whether `value` reaches `limit`, within the tolerance.
constexpr bool at_least(double value, double limit) {
    return value >= limit - kTolerance * (limit < 0 ? -limit : limit);
}

}  // namespace ventfolio::calc
