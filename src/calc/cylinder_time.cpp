#include "calc/cylinder_time.hpp"

#include <algorithm>
#include <array>

namespace ventfolio::calc {
namespace {

bool is_flow_in_use(Flow flow) { return within(flow, 0.01, 25, unit::L_per_min); }
bool is_gauge(Pressure pressure) { return within(pressure, 0, 5000, unit::psi); }
bool is_factor(LitresPerPsi factor) { return within(factor.value, 0.01, 10); }

/// Litres of gas from a pound of liquid.
constexpr double kGasPerPound = 344;

constexpr double kNoHandbookFactor = 1e9;

constexpr CylinderSize size_of(std::string_view country, std::string_view size, double contents_l, Pressure full,
                               double handbook = kNoHandbookFactor) {
    const double by_contents = contents_l / full.in(unit::psi);
    return {country, size, Volume::of(contents_l, unit::L), full, {std::min(by_contents, handbook)}};
}

constexpr Pressure kFullUs = Pressure::of(2200, unit::psi);
constexpr Pressure kFullGb = Pressure::of(137, unit::bar);

// Contents: ambulance and supplier tables, the smallest where they differ; M4, G and the GB sizes from memory. Handbook
// factors: ambulance vehicle rule (D, E, H, K) and remaining-oxygen table (M, G).
constexpr std::array kSizes{
    size_of("US", "M4", 113, kFullUs),        size_of("US", "ML6", 165, kFullUs),
    size_of("US", "M6", 164, kFullUs),        size_of("US", "B", 164, kFullUs),
    size_of("US", "M9", 246, kFullUs),        size_of("US", "C", 246, kFullUs),
    size_of("US", "D", 350, kFullUs, 0.16),   size_of("US", "M15", 350, kFullUs, 0.16),
    size_of("US", "E", 625, kFullUs, 0.28),   size_of("US", "M24", 625, kFullUs, 0.28),
    size_of("US", "M60", 1738, kFullUs),      size_of("US", "M", 3000, kFullUs, 1.56),
    size_of("US", "MM", 3000, kFullUs, 1.56), size_of("US", "G", 5000, kFullUs, 2.41),
    size_of("US", "H", 6900, kFullUs, 3.14),  size_of("US", "K", 6900, kFullUs, 3.14),
    size_of("GB", "D", 340, kFullGb),         size_of("GB", "E", 680, kFullGb),
    size_of("GB", "F", 1360, kFullGb),        size_of("GB", "J", 6800, kFullGb),
};

}  // namespace

std::optional<Duration> cylinder_time(const CylinderUse& use) {
    if (!is_gauge(use.gauge) || !is_gauge(use.residual) || !is_factor(use.factor) || !is_flow_in_use(use.flow))
        return std::nullopt;
    const double usable_psi = std::max(0.0, (use.gauge - use.residual).in(unit::psi));
    return Duration::of(usable_psi * use.factor.value / use.flow.in(unit::L_per_min), unit::min);
}

std::optional<LitresPerPsi> litres_per_psi(Volume contents, Pressure full) {
    if (!within(contents, 10, 10'000, unit::L) || !within(full, 500, 5000, unit::psi)) return std::nullopt;
    return LitresPerPsi{contents.in(unit::L) / full.in(unit::psi)};
}

std::optional<Volume> cylinder_contents(Volume water_volume, Pressure gauge) {
    if (!within(water_volume, 0.3, 60, unit::L) || !within(gauge, 0, 345, unit::bar)) return std::nullopt;
    return water_volume * gauge.in(unit::bar);
}

std::optional<Pressure> starting_gauge(Flow flow, Duration time, LitresPerPsi factor, Pressure residual) {
    if (!is_flow_in_use(flow) || !within(time, 0, 7, unit::days) || !is_factor(factor) || !is_gauge(residual))
        return std::nullopt;
    const double litres = flow.in(unit::L_per_min)*time.in(unit::min);
    const Pressure gauge = Pressure::of(litres / factor.value, unit::psi) + residual;
    if (!is_gauge(gauge)) return std::nullopt;
    return gauge;
}

std::span<const CylinderSize> cylinder_sizes() { return kSizes; }

std::optional<CylinderSize> cylinder_size(std::string_view country, std::string_view size) {
    const auto* found = std::ranges::find_if(
        kSizes, [&](const CylinderSize& entry) { return entry.country == country && entry.size == size; });
    if (found == kSizes.end()) return std::nullopt;
    return *found;
}

std::optional<Duration> liquid_oxygen_time(Mass liquid, Flow flow) {
    if (!within(liquid, 0, 150, unit::lb) || !is_flow_in_use(flow)) return std::nullopt;
    return Duration::of(kGasPerPound * liquid.in(unit::lb) / flow.in(unit::L_per_min), unit::min);
}

std::optional<bool> gauge_is_possible(Pressure gauge, Pressure full) {
    constexpr double kMostOfFull = 1.1;
    if (!is_gauge(gauge) || !within(full, 500, 5000, unit::psi)) return std::nullopt;
    return at_least((full * kMostOfFull).in(unit::psi), gauge.in(unit::psi));
}

std::optional<Duration> liquid_oxygen_days(const LiquidOxygenUse& use) {
    const bool usable = within(use.liquid, 0, 150, unit::lb) && is_flow_in_use(use.flow) &&
                        within(use.hours_a_day, 0.1, 24, unit::h) && within(use.lost_a_day, 0, 10, unit::lb);
    if (!usable) return std::nullopt;
    const double breathed = use.flow.in(unit::L_per_min)*use.hours_a_day.in(unit::min) / kGasPerPound;
    return Duration::of(use.liquid.in(unit::lb) / (breathed + use.lost_a_day.in(unit::lb)), unit::days);
}

}  // namespace ventfolio::calc
