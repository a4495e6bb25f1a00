#pragma once

#include "calc/tolerance_band.hpp"
#include "rules/thresholds.hpp"

/// How far a measured value may lie from the usual one: for the rules, the setting check and the calculator alike.
/// Common practice, no source: no published tolerance was found. A setting that is dialled must match exactly.
namespace ventfolio {

inline constexpr calc::Tolerance<Dimension::volume> kVolumeTolerance{
    threshold::kToleranceVolumeShare, threshold::kToleranceVolumeLeast, threshold::kToleranceVolumeMostShare};
inline constexpr calc::Tolerance<Dimension::flow> kMinuteVolumeTolerance{threshold::kToleranceMinuteVolume, Flow{}};
inline constexpr calc::Tolerance<Dimension::pressure> kPressureTolerance{threshold::kTolerancePressureShare,
                                                                         threshold::kTolerancePressureLeast};
/// No rule goes by this one, so it is not among the thresholds of rules.
inline constexpr calc::Tolerance<Dimension::breath_rate> kRateTolerance{0, BreathRate::of(1, unit::breaths_per_min)};

}  // namespace ventfolio
