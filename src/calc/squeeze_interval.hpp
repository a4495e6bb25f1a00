#pragma once

#include <optional>

#include "calc/age.hpp"

namespace ventfolio::calc {

/// "Squeeze the bag every `from` to `to` seconds"; the two are equal where one number is printed.
struct SqueezeInterval {
    int from = 0;
    int to = 0;
    friend bool operator==(const SqueezeInterval&, const SqueezeInterval&) = default;
};

/// How often the breathing bag is squeezed, in whole seconds.
///
/// Formula  60 / rate, rounded (a half goes up), kept within 3 to 6 s for an adult and 2 to 3 s for a child or infant;
///          without a rate an adult 6 s, a child or infant 2 to 3 s
/// Units    s
/// Range    set rate 2 to 80 breaths/min; 0 or none counts as no rate
/// Source   AHA 2020 (training copies): adult 1 breath every 6 s, child and infant every 2 to 3 s
/// Example  adult at 14 breaths/min: every 4 s
/// Nothing  is returned for a rate outside the range.
std::optional<SqueezeInterval> squeeze_interval(AgeGroup group, std::optional<BreathRate> set_rate);

}  // namespace ventfolio::calc
