#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

enum class Sex { female, male };

/// The weight that an adult's lungs are judged by: lungs scale with height and sex, not with fat.
///
/// Formula  male 50.0 + 0.91 x (height - 152.4); female 45.5 + 0.91 x (height - 152.4)
/// Units    height in cm, result in kg
/// Range    18 to 120 years, height 130 to 213.4 cm (the printed chart covers 147.3 to 213.4 cm; below it the formula
///          is only a guide and below 130 cm it falls towards zero)
/// Source   ARDS Network, N Engl J Med 2000;342:1301; adults only: BMC Pulmonary Medicine 2017, predicted weight paper
/// Example  male, 178 cm: 73.3 kg. Sex unknown, 178 cm: 68.8 to 73.3 kg
/// Nothing  is returned for a child or for a height outside the range. With the sex unknown both formulas are used and
///          the two ends differ; upper limits then go by `low`. With the sex known the ends are equal.
std::optional<Band<Mass>> predicted_weight(int age_years, std::optional<Sex> sex, Length height);

/// The height of someone who cannot be measured standing (contractures, a curved spine, an amputation).
///
/// Formula  arm span / 1.06
/// Units    cm
/// Range    arm span 42.4 to 243.8 cm, which gives heights of 40 to 230 cm
/// Source   ATS/ERS standardisation of lung function testing 2005 (from memory)
/// Example  170 cm of span: 160.4 cm
/// Nothing  is returned outside the range.
std::optional<Length> height_from_arm_span(Length arm_span);

/// The weight of a child of usual build for a height: a cross-check of a weight or height that was typed wrong, never a
/// weight to dose or to set a breath by.
///
/// Formula  2.396 x exp(0.01863 x height)
/// Units    cm, result in kg
/// Range    1 to 17 years, height 74 to 180 cm
/// Source   Traub and Johnson, Am J Hosp Pharm 1980;37:195 (from memory)
/// Example  110 cm: 18.6 kg
/// Nothing  is returned outside the range.
std::optional<Mass> child_weight_for_height(int age_years, Length height);

}  // namespace ventfolio::calc
