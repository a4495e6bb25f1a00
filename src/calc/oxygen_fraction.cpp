#include "calc/oxygen_fraction.hpp"

#include <algorithm>

namespace ventfolio::calc {
namespace {

bool is_purity(double purity) { return within(purity, 0.5, 1); }

Fraction mixed(double purity, Flow oxygen, Flow total) {
    const double share = std::min(1.0, oxygen / total);
    return Fraction::of(100 * (kRoomAir + (purity - kRoomAir) * share), unit::percent);
}

}  // namespace

std::optional<Band<Fraction>> oxygen_fraction(const OxygenBleed& bleed) {
    const bool usable = within(bleed.oxygen, 0, 25, unit::L_per_min) &&
                        within(bleed.minute_volume, 0.3, 30, unit::L_per_min) &&
                        within(bleed.mean_leak, 0, 150, unit::L_per_min) && is_purity(bleed.purity.low) &&
                        is_purity(bleed.purity.high) && bleed.purity.low <= bleed.purity.high;
    if (!usable) return std::nullopt;
    return Band<Fraction>{mixed(bleed.purity.low, bleed.oxygen, bleed.minute_volume + bleed.mean_leak),
                          mixed(bleed.purity.high, bleed.oxygen, bleed.minute_volume)};
}

std::optional<Flow> oxygen_for_fraction(Fraction fraction, Flow total, double purity) {
    const double wanted = fraction.in(unit::percent) / 100;
    if (!is_purity(purity) || !within(wanted, kRoomAir, purity) || !within(total, 0.3, 180, unit::L_per_min))
        return std::nullopt;
    return total * std::clamp((wanted - kRoomAir) / (purity - kRoomAir), 0.0, 1.0);
}

}  // namespace ventfolio::calc
