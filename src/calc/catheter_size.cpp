#include "calc/catheter_size.hpp"

namespace ventfolio::calc {
namespace {

bool is_tube(Length inner_diameter) { return within(inner_diameter, 2, 11, unit::mm); }

}  // namespace

std::optional<CatheterFit> catheter_fit(Length catheter, Length inner_diameter) {
    if (!within(catheter, 4, 20, unit::Fr) || !is_tube(inner_diameter)) return std::nullopt;
    const double ratio = catheter / inner_diameter;
    if (at_least(ratio, 1)) return std::nullopt;
    return CatheterFit{.ratio = ratio, .area_blocked = ratio * ratio};
}

std::optional<Length> largest_catheter(Length inner_diameter, double ratio, RatioLimit limit) {
    if (!is_tube(inner_diameter) || !(ratio > 0) || !(ratio < 1)) return std::nullopt;
    const double most = inner_diameter.in(unit::Fr)*ratio;
    std::optional<Length> largest;
    for (const int size : kStockedCatheters) {
        const bool fits = limit == RatioLimit::up_to ? at_least(most, size) : !at_least(size, most);
        if (fits) largest = Length::of(size, unit::Fr);
    }
    return largest;
}

}  // namespace ventfolio::calc
