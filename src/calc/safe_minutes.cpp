#include "calc/safe_minutes.hpp"

#include <algorithm>

#include "units/print.hpp"

namespace ventfolio::calc {

std::optional<int> safe_free_minutes(Duration free_breathing) {
    if (!within(free_breathing, 0, 24, unit::h)) return std::nullopt;
    const auto minutes = static_cast<int>(std::min(5LL, floor_minutes(free_breathing / 2)));
    if (minutes < 1) return std::nullopt;
    return minutes;
}

}  // namespace ventfolio::calc
