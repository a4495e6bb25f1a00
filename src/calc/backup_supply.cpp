#include "calc/backup_supply.hpp"

#include <algorithm>
#include <array>

namespace ventfolio::calc {
namespace {

constexpr double kContinuousShare = 0.8;
constexpr std::array kBladeFuses{1.0, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0};

std::optional<Current> smallest_fuse(double least_amperes) {
    const auto* fuse = std::ranges::find_if(kBladeFuses, [&](double step) { return at_least(step, least_amperes); });
    if (fuse == kBladeFuses.end()) return std::nullopt;
    return Current::of(*fuse, unit::A);
}

}  // namespace

std::optional<DirectCurrentDraw> direct_current_draw(Power load, Voltage lowest, double efficiency) {
    if (!within(load, 0.5, 5000, unit::W) || !within(lowest, 3, 60, unit::V) || !within(efficiency, 0.1, 1))
        return std::nullopt;
    const double amperes = load.in(unit::W) / (lowest.in(unit::V)*efficiency);
    return DirectCurrentDraw{.draw = Current::of(amperes, unit::A), .fuse = smallest_fuse(amperes / kContinuousShare)};
}

std::optional<bool> socket_carries(Current rating, Current draw) {
    if (!within(rating, 1, 1000, unit::A) || !(draw >= Current{})) return std::nullopt;
    return at_least(kContinuousShare * rating.in(unit::A), draw.in(unit::A));
}

std::optional<GeneratorLoad> generator_load(std::span<const SupplyLoad> loads) {
    if (loads.empty()) return std::nullopt;
    Power running;
    Power largest_surplus;
    for (const SupplyLoad& load : loads) {
        if (!within(load.running, 0.5, 5000, unit::W) || !within(load.starting, 0.5, 20'000, unit::W) ||
            load.starting < load.running)
            return std::nullopt;
        running = running + load.running;
        largest_surplus = std::max(largest_surplus, load.starting - load.running);
    }
    return GeneratorLoad{.running = running, .needed = std::max(running / kContinuousShare, running + largest_surplus)};
}

}  // namespace ventfolio::calc
