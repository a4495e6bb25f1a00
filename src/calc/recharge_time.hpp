#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct WattHours {
    double value = 0;
};

/// How long a charger takes to put back what a battery gave.
///
/// Formula  energy / (charger watts x efficiency)
/// Units    Wh and W, result in h; the last part charges slower, so a plan allows more
/// Range    energy 0 to 60,000 Wh, charger 0.5 to 5000 W, efficiency 0.1 to 1
/// Source   definition; efficiency 0.85: common practice, no source
/// Example  500 Wh with a 60 W charger at 0.85: 9.8 h
/// Nothing  is returned outside the range.
std::optional<Duration> recharge_time(WattHours energy, Power charger, double efficiency = 0.85);

/// How long fuel runs a generator.
///
/// Formula  tank / use an hour at that load
/// Units    L and L/h, result in h
/// Range    tank 0 to 500 L, use 0.05 to 50 L/h
/// Source   definition; the use at a load stands in the generator's instructions
/// Example  12 L at 1.5 L/h: 8 h
/// Nothing  is returned outside the range: a generator that uses no fuel is not running.
std::optional<Duration> fuel_time(Volume tank, double litres_per_hour);

struct VoltAmperes {
    double value = 0;
};

/// The rating of an uninterruptible supply that carries a load.
///
/// Formula  1.25 x watts / power factor
/// Units    W, result in VA; round up to buy
/// Range    load 0.5 to 5000 W, power factor 0.3 to 1
/// Source   definition; 1.25 is the inverse of the 80 % rule for lasting loads (US National Electrical Code as quoted)
/// Example  400 W at 0.8: 625 VA
/// Nothing  is returned outside the range.
std::optional<VoltAmperes> supply_rating(Power load, double power_factor);

}  // namespace ventfolio::calc
