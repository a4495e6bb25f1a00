#include "calc/recharge_time.hpp"

namespace ventfolio::calc {

std::optional<Duration> recharge_time(WattHours energy, Power charger, double efficiency) {
    if (!within(energy.value, 0, 60'000) || !within(charger, 0.5, 5000, unit::W) || !within(efficiency, 0.1, 1))
        return std::nullopt;
    return Duration::of(energy.value / (charger.in(unit::W)*efficiency), unit::h);
}

std::optional<Duration> fuel_time(Volume tank, double litres_per_hour) {
    if (!within(tank, 0, 500, unit::L) || !within(litres_per_hour, 0.05, 50)) return std::nullopt;
    return Duration::of(tank.in(unit::L) / litres_per_hour, unit::h);
}

std::optional<VoltAmperes> supply_rating(Power load, double power_factor) {
    if (!within(load, 0.5, 5000, unit::W) || !within(power_factor, 0.3, 1)) return std::nullopt;
    return VoltAmperes{1.25 * load.in(unit::W) / power_factor};
}

}  // namespace ventfolio::calc
