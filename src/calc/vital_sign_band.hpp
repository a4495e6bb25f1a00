#pragma once

#include <optional>

#include "calc/age.hpp"

namespace ventfolio::calc {

/// What is normal for a child's age.
struct VitalSignBand {
    Band<PulseRate> pulse_awake;
    Band<PulseRate> pulse_asleep;
    Band<BreathRate> breathing;
    Band<Pressure> systolic;
    bool past_table = false;  ///< 16 and 17 years: the last row stands in
};

/// Normal pulse, breathing and blood pressure for a child's age: a check of alarm limits, never a diagnosis. The 2006
/// table had other breathing rates; the two must not be mixed.
///
/// Formula  table by age
/// Units    beats/min, breaths/min, mmHg
/// Range    birth to the 18th birthday
/// Source   PALS 2015 as reprinted in a paediatric reference chart
/// Example  4 years: pulse awake 80 to 120, breathing 20 to 28
/// Nothing  is returned for an adult.
std::optional<VitalSignBand> vital_sign_band(const Age& age);

/// The systolic pressure below which a child's blood pressure is low.
///
/// Formula  70 + 2 x years; 90 from 10 years on
/// Units    mmHg
/// Range    1 to 17 years
/// Source   PALS 2015, same chart
/// Example  4 years: 78 mmHg
/// Nothing  is returned outside the range.
std::optional<Pressure> lowest_systolic(const Age& age);

}  // namespace ventfolio::calc
