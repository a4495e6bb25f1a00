#include "calc/suction.hpp"

namespace ventfolio::calc {
namespace {

Pressure mmHg(double number) { return Pressure::of(number, unit::mmHg); }

}  // namespace

std::optional<SuctionDepth> suction_depth(const SuctionPath& path) {
    const bool usable = within(path.tube, 25, 130, unit::mm) && within(path.connector, 0, 10, unit::cm) &&
                        within(path.past_tip, 0, 1, unit::cm);
    if (!usable) return std::nullopt;
    const Length to_tip = path.tube + path.connector;
    return SuctionDepth{.to_tip = to_tip, .deepest = to_tip + path.past_tip};
}

std::optional<SuctionPressureBand> suction_pressure_band(const Age& age) {
    if (!is_possible(age)) return std::nullopt;
    if (age.years >= 18) return SuctionPressureBand{std::nullopt, mmHg(150), mmHg(200)};
    if (age.years >= 12) return SuctionPressureBand{mmHg(80), mmHg(120), mmHg(120)};
    if (age.total_days >= 28) return SuctionPressureBand{mmHg(80), mmHg(100), mmHg(120)};
    return SuctionPressureBand{mmHg(60), mmHg(80), mmHg(120)};
}

}  // namespace ventfolio::calc
