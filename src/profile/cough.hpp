#pragma once

#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// A machine that pushes air in and pulls it out again (mechanical insufflation-exsufflation).
struct CoughDevice {
    Field<Pressure> pressure_in;
    Field<Pressure> pressure_out;
    Field<Duration> time_in;
    Field<Duration> time_out;
    Field<Duration> pause;
    Field<std::string> sets;
    Field<std::string> times;
    Field<std::string> through;

    void describe(Visitor& visitor);
};

/// Other ways to clear the airway.
struct AirwayClearance {
    Field<std::string> air_stacking;
    Field<std::string> assisted_cough;
    Field<std::string> vest;
    Field<std::string> nebulizer;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
