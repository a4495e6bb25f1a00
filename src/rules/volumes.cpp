#include <cmath>

#include "calc/minute_ventilation.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// PALICC-2, 2023: in children avoid more than 10 mL/kg.
constexpr double kChildWithCuffMost = 10;

struct PerWeightLimits {
    double low = 0;
    double high = 0;
};

bool weak_or_cord_injured(const Household& home) {
    const auto& why = home.profile.diagnosis->why_ventilated;
    return why.is(WhyVentilated::weak_muscles) || why.is(WhyVentilated::spinal_injury);
}

bool has_cuff(const Household& home) { return home.neck_tube != nullptr && home.neck_tube->cuff.given(); }

const FieldBase& ordered_volume_field(const DerivedPrescription& rx) {
    if (rx.volume_assured) return rx.order->volume_assured->target_volume;
    return rx.order->tidal_volume;
}

bool impossible(const DerivedPrescription& rx) {
    if (!rx.ordered_volume) return false;
    if (above(*rx.ordered_volume, threshold::kVolumeHighest)) return true;
    return rx.closed && rx.ordered_per_weight &&
           (below(*rx.ordered_per_weight, threshold::kVolumePerWeightImpossibleBelow) ||
            above(*rx.ordered_per_weight, threshold::kVolumePerWeightImpossibleAbove));
}

PerWeightLimits limits_of(const DerivedPrescription& rx, const Household& home) {
    if (!rx.closed) return {0, threshold::kVolumePerWeightHighMouthpiece};
    PerWeightLimits limits{threshold::kVolumePerWeightLow, threshold::kVolumePerWeightHigh};
    if (!home.child && weak_or_cord_injured(home)) limits.high = threshold::kVolumePerWeightHighWeaknessOrCord;
    if (home.child && !has_cuff(home) && rx.volume_mode) limits.high = threshold::kVolumePerWeightHighChildNoCuff;
    return limits;
}

bool ordered_unusual(const DerivedPrescription& rx, const Household& home) {
    if (impossible(rx) || !rx.ordered_per_weight || (!rx.closed && !rx.mouthpiece)) return false;
    const PerWeightLimits limits = limits_of(rx, home);
    return below(*rx.ordered_per_weight, limits.low) || above(*rx.ordered_per_weight, limits.high);
}

bool delivered_unusual(const DerivedPrescription& rx, const Household& home) {
    if (!rx.closed || !rx.usual_per_weight) return false;
    const bool child_with_cuff = home.child && has_cuff(home);
    if (rx.pressure_mode)
        return below(*rx.usual_per_weight, threshold::kVolumePerWeightLow) ||
               above(*rx.usual_per_weight, child_with_cuff ? kChildWithCuffMost : threshold::kVolumePerWeightHigh);
    return child_with_cuff && rx.ordered_per_weight && above(*rx.ordered_per_weight, kChildWithCuffMost);
}

}  // namespace

namespace check {

void tidal_volume_impossible(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!impossible(rx)) continue;
        report.at(ordered_volume_field(rx), "cannot be")
            .with("rx", rx.name)
            .with("volume", ordered_volume_field(rx))
            .with("per_kg",
                  rx.ordered_per_weight ? shown_per_weight(*rx.ordered_per_weight) : std::string{"not possible"})
            .with("weight", home.reference_weight ? shown_mass(*home.reference_weight) : home.name());
    }
}

void tidal_volume_per_weight_unusual(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!ordered_unusual(rx, home)) continue;
        const PerWeightLimits limits = limits_of(rx, home);
        report.at(ordered_volume_field(rx), shown_per_weight(*rx.ordered_per_weight))
            .with("rx", rx.name)
            .with("volume", ordered_volume_field(rx))
            .with("per_kg", shown_per_weight(*rx.ordered_per_weight))
            .with("weight", shown_mass(*home.reference_weight))
            .with("low", shown(limits.low, 0))
            .with("high", shown_per_weight(limits.high));
    }
}

void delivered_volume_per_weight_unusual(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (impossible(rx) || ordered_unusual(rx, home) || !delivered_unusual(rx, home)) continue;
        const FieldBase& field = rx.ordered_volume ? ordered_volume_field(rx) : rx.order->expected->tidal_volume;
        report.at(field, shown_per_weight(*rx.usual_per_weight))
            .with("rx", rx.name)
            .with("volume", shown_volume(*rx.usual_volume))
            .with("per_kg", shown_per_weight(*rx.usual_per_weight))
            .with("weight", shown_mass(*home.reference_weight));
    }
}

void rate_and_volume_disagree(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const ExpectedValues& expected = *rx.order->expected;
        if (!rx.closed || !expected.minute_volume || !rx.usual_volume) continue;
        std::optional<BreathRate> rate = rx.rate;
        if (expected.total_rate) rate = expected.total_rate.middle();
        const auto product = rate ? calc::minute_ventilation(*rate, *rx.usual_volume) : std::nullopt;
        if (!product) continue;
        const double difference = std::abs(*product / expected.minute_volume.middle() - 1);
        if (!above(difference, threshold::kRateVolumeDifference)) continue;
        report.at(expected.minute_volume, shown_flow(*product) + " by rate and volume")
            .also(rx.ordered_volume ? Spot{ordered_volume_field(rx)} : Spot{expected.tidal_volume})
            .with("rx", rx.name)
            .with("rate", shown(rate->in(unit::breaths_per_min), 1) + " breaths/min")
            .with("volume", shown_volume(*rx.usual_volume))
            .with("product", shown_flow(*product))
            .with("mv", expected.minute_volume);
    }
}

}  // namespace check
}  // namespace ventfolio
