#include "calc/squeeze_interval.hpp"

#include <algorithm>
#include <cmath>

#include "calc/breath_timing.hpp"

namespace ventfolio::calc {

std::optional<SqueezeInterval> squeeze_interval(AgeGroup group, std::optional<BreathRate> set_rate) {
    const bool adult = group == AgeGroup::adult;
    if (!set_rate || *set_rate == BreathRate{}) return adult ? SqueezeInterval{6, 6} : SqueezeInterval{2, 3};
    const auto cycle = breath_cycle(*set_rate);
    if (!cycle) return std::nullopt;
    const int seconds = static_cast<int>(std::lround(cycle->in(unit::s)));
    const int kept = adult ? std::clamp(seconds, 3, 6) : std::clamp(seconds, 2, 3);
    return SqueezeInterval{kept, kept};
}

}  // namespace ventfolio::calc
