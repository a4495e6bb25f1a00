#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// Time in to time out as it is printed: the smaller of the two is 1.
struct InToOut {
    double in = 1;
    double out = 1;
};

struct BreathTiming {
    Duration cycle;
    Duration in;
    Duration out;
    double share_in = 0;  ///< 0 to 1; above 0.5 breathing in takes longer than breathing out
    InToOut ratio;
};

/// The time from one breath to the next.
///
/// Formula  60 / rate
/// Units    rate in breaths/min, result in s
/// Range    2 to 80 breaths/min
/// Source   definition
/// Example  20 breaths/min: 3 s
/// Nothing  is returned at rate 0 or outside the range.
std::optional<Duration> breath_cycle(BreathRate rate);

/// How a breath divides. The set rate is a floor: run it again at the high-rate alarm for the worst case.
///
/// Formula  out = 60 / rate - in; share = in / cycle; ratio 1 : out / in
/// Units    s; shares as fractions of 1
/// Range    2 to 80 breaths/min, time in 0.20 to 4.0 s
/// Source   definitions; rows of a neonatal timing study, Early Human Development 1991 (abstract)
/// Example  14 breaths/min, 1.2 s in: cycle 4.286 s, out 3.086 s, 1:2.6
/// Nothing  is returned outside the range, or when breathing in fills the whole cycle: no time is left to breathe out.
std::optional<BreathTiming> breath_timing(BreathRate rate, Duration time_in);

/// The time in of a breath whose ratio is known.
///
/// Formula  cycle x in / (in + out)
/// Units    s
/// Range    2 to 80 breaths/min; each side of the ratio above 0 and up to 10; result 0.20 to 4.0 s
/// Source   definition; task force on mask ventilation, J Clin Sleep Med 2010;6(5):491 (times at 30 to 40 %, from
/// memory) Example  20 breaths/min at 1:2: 1.0 s Nothing  is returned outside the range.
std::optional<Duration> time_in_from_ratio(BreathRate rate, InToOut ratio);

}  // namespace ventfolio::calc
