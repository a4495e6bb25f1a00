#pragma once

#include <optional>

#include "calc/age.hpp"

namespace ventfolio::calc {

struct SuctionDepth {
    Length to_tip;   ///< the catheter's end is level with the end of the tube
    Length deepest;  ///< further in, the catheter touches the windpipe
};

/// The parts of a measured suction depth.
struct SuctionPath {
    Length tube;
    Length connector;
    /// What is allowed beyond the tip: 0.5 cm for a child (ATS 2000, from memory: 0.5 to 1 cm), 1 cm for an adult
    /// (common practice, no source).
    Length past_tip;
};

/// How far a suction catheter goes in.
///
/// Formula  to the tip = tube + connector; deepest = to the tip + what is allowed beyond it
/// Units    mm or cm
/// Range    tube 25 to 130 mm, connector 0 to 10 cm, past the tip 0 to 1 cm
/// Source   measured (pre-determined) depth: ATS 2000, from memory; deep suction injures: AARC 2010 (summary)
/// Example  tube 75 mm, connector 1.5 cm, 1 cm beyond: 9.0 cm to the tip, 10.0 cm at most
/// Nothing  is returned outside the range.
std::optional<SuctionDepth> suction_depth(const SuctionPath& path);

struct SuctionPressureBand {
    std::optional<Pressure> usual_low;  ///< nothing for adults: no low end was published
    Pressure usual_high;
    Pressure never_reach;  ///< the ceiling itself is already too much
};

/// Usual suction pressures for an age, as magnitudes below the room's pressure.
///
/// Formula  under 28 days 60 to 80; to 11 years 80 to 100; 12 to 17 years 80 to 120; adult up to 150; below 120 under
///          18 years and below 200 for adults
/// Units    mmHg
/// Range    0 to 120 years
/// Source   UK paediatric tracheostomy module (to 1 year); Ireton 2007 (abstract: child, adolescent); AARC 2010
///          (secondary: 150) and AARC 2022 (below 120 and below 200)
/// Example  4 years: 80 to 100 mmHg, never 120
/// Nothing  is returned for an age outside the range.
std::optional<SuctionPressureBand> suction_pressure_band(const Age& age);

}  // namespace ventfolio::calc
