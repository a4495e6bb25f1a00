#pragma once

#include <algorithm>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// How far a measured value may lie from the usual one: a share of it, but at least so much, and, where it is capped,
/// at most such a share.
template <Dimension D>
struct Tolerance {
    double share = 0;
    Quantity<D> least{};
    std::optional<double> most_share = {};  ///< no such limit
};

/// The values that a setting check accepts around a usual one.
///
/// Formula  usual -/+ the larger of share x usual and `least`, but no more than most_share x usual where given; never
///          below 0
/// Units    of the quantity
/// Range    usual above 0 and finite; shares 0 to 1
/// Source   common practice, no source
/// Example  a tenth, at least 15 mL, at most a fifth. 450 mL: 405 to 495 mL. 60 mL: 48 to 72 mL (15 mL would be a
///          quarter of the breath)
/// Nothing  is returned outside the range.
template <Dimension D>
std::optional<Band<Quantity<D>>> tolerance_band(Quantity<D> usual, const Tolerance<D>& tolerance) {
    constexpr double kFinite = 1e12;
    const Quantity<D> none{};
    const double per_unit = usual / Quantity<D>::of(1, Unit{"", D, 1});
    if (!(usual > none) || !within(per_unit, 0, kFinite) || !within(tolerance.share, 0, 1) ||
        (tolerance.most_share && !within(*tolerance.most_share, 0, 1)) || !(tolerance.least >= none))
        return std::nullopt;
    Quantity<D> off = std::max(usual * tolerance.share, tolerance.least);
    if (tolerance.most_share) off = std::min(off, usual * *tolerance.most_share);
    return Band<Quantity<D>>{std::max(none, usual - off), usual + off};
}

/// The accepted range: what the profile expects, widened to the usual value with its tolerance.
///
/// Formula  the smaller low end to the larger high end
/// Units    of the quantity
/// Range    each band with its low end not above its high end
/// Source   common practice, no source
/// Example  expected 380 to 460, usual 450 -/+ 45: 380 to 495
/// Nothing  is returned when an end is missing or a band is turned round.
template <Dimension D>
std::optional<Band<Quantity<D>>> widened(const Band<Quantity<D>>& expected, const Band<Quantity<D>>& tolerated) {
    if (!(expected.low <= expected.high) || !(tolerated.low <= tolerated.high)) return std::nullopt;
    return Band<Quantity<D>>{std::min(expected.low, tolerated.low), std::max(expected.high, tolerated.high)};
}

}  // namespace ventfolio::calc
