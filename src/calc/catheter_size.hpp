#pragma once

#include <array>
#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// Suction catheter sizes that suppliers stock, in French (7 Fr is rare and left out).
inline constexpr std::array kStockedCatheters{5, 6, 8, 10, 12, 14, 16, 18};

struct CatheterFit {
    double ratio = 0;         ///< of the diameters, 0 to 1: "half" in the guidelines means this one
    double area_blocked = 0;  ///< 0 to 1; half of the diameter is only a quarter of the area
};

/// How much of the tube a suction catheter takes.
///
/// Formula  ratio = (Fr / 3 mm) / inner diameter; area = ratio squared
/// Units    catheter as a length (a French is a third of a millimetre), inner diameter in mm
/// Range    catheter 4 to 20 Fr, inner diameter 2.0 to 11.0 mm; of the inner cannula where there is one
/// Source   AARC artificial airway suctioning guideline 2022 and AARC 2010 (summaries); National Tracheostomy Safety
///          Project (UK): no greater than half the diameter
/// Example  10 Fr in 6.0 mm: ratio 0.556, area 0.309
/// Nothing  is returned outside the range, or when the catheter is as wide as the tube and cannot pass.
std::optional<CatheterFit> catheter_fit(Length catheter, Length inner_diameter);

enum class RatioLimit { up_to, below };

/// The largest stocked catheter under a ratio of the diameters.
///
/// Formula  largest stocked Fr with Fr <= 3 x inner diameter x ratio (or < with RatioLimit::below)
/// Units    mm, result a length to be read in Fr
/// Range    inner diameter 2.0 to 11.0 mm, ratio above 0 and below 1
/// Source   0.50 inclusive: AARC 2010 and the UK project; 0.70 exclusive: AARC 2022; "twice the bore, next smaller" is
///          two thirds, exclusive
/// Example  8.0 mm: 12 Fr at one half, 14 Fr below two thirds, 16 Fr below 0.70: three published rules, three answers
/// Nothing  is returned outside the range, or when no stocked size is small enough.
std::optional<Length> largest_catheter(Length inner_diameter, double ratio, RatioLimit limit);

}  // namespace ventfolio::calc
