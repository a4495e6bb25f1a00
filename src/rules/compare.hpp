#pragma once

#include <cmath>

#include "calc/band.hpp"
#include "units/quantity.hpp"

namespace ventfolio {

/// Whether two numbers are one number written in two ways: 1e-9 of the larger, as the calculators compare.
inline bool same(double a, double b) {
    return std::abs(a - b) <= calc::kTolerance * std::fmax(std::abs(a), std::abs(b));
}
/// Strictly above: a value exactly at a limit does not count.
inline bool above(double a, double b) { return a > b && !same(a, b); }
inline bool below(double a, double b) { return above(b, a); }

template <Dimension D>
bool same(Quantity<D> a, Quantity<D> b) {
    constexpr Unit kCanonical{"", D, 1};
    return same(a.in(kCanonical), b.in(kCanonical));
}
template <Dimension D>
bool above(Quantity<D> a, Quantity<D> b) {
    return a > b && !same(a, b);
}
template <Dimension D>
bool below(Quantity<D> a, Quantity<D> b) {
    return above(b, a);
}
template <Dimension D>
bool at_or_above(Quantity<D> a, Quantity<D> b) {
    return !below(a, b);
}
template <Dimension D>
bool at_or_below(Quantity<D> a, Quantity<D> b) {
    return !above(a, b);
}

}  // namespace ventfolio
