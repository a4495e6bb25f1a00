#include "calc/letter_height.hpp"

#include <cmath>
#include <numbers>

namespace ventfolio::calc {

std::optional<Length> letter_height(Length distance, double minutes_of_arc) {
    if (!within(distance, 200, 10'000, unit::mm) || !within(minutes_of_arc, 5, 60)) return std::nullopt;
    const double radians = minutes_of_arc / 60 * std::numbers::pi / 180;
    return distance * (2 * std::tan(radians / 2));
}

std::optional<double> type_size_for(Length capital, double cap_height) {
    if (!within(capital, 0.5, 200, unit::mm) || !within(cap_height, 0.4, 0.9)) return std::nullopt;
    return capital.in(unit::in)*72 / cap_height;
}

}  // namespace ventfolio::calc
