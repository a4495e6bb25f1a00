#pragma once

#include <optional>
#include <span>

#include "calc/band.hpp"

namespace ventfolio::calc {

struct DirectCurrentDraw {
    Current draw;
    std::optional<Current> fuse;  ///< the smallest standard blade fuse of 1.25 times the draw; none above 30 A
};

/// What a device takes from a vehicle socket or a battery.
///
/// Formula  draw = watts / (lowest volts x efficiency); fuse at least 1.25 x draw
/// Units    W, V, A
/// Range    0.5 to 5000 W, 3 to 60 V, efficiency 0.1 to 1
/// Source   definition; 80 % continuous load: US National Electrical Code as quoted; fuse steps: ISO 8820 (from memory)
/// Example  150 W through an inverter of 0.85 from 12 V: 14.7 A, fuse 20 A
/// Nothing  is returned outside the range.
std::optional<DirectCurrentDraw> direct_current_draw(Power load, Voltage lowest, double efficiency);

/// Whether a socket carries a draw for hours: a continuous load stays at or under 80 % of the rating.
///
/// Formula  draw <= 0.80 x rating
/// Units    A
/// Range    rating 1 to 1000 A, draw 0 or more
/// Source   US National Electrical Code as quoted
/// Example  14.7 A on a 15 A socket: no
/// Nothing  is returned outside the range.
std::optional<bool> socket_carries(Current rating, Current draw);

struct SupplyLoad {
    Power running;
    Power starting;  ///< the running watts again where starting takes no more
};

struct GeneratorLoad {
    Power running;  ///< all at once
    Power needed;   ///< what the generator must be rated for
};

/// What a generator must give.
///
/// Formula  the larger of sum of running / 0.8 and sum of running + the largest start surplus
/// Units    W
/// Range    one load or more, each running 0.5 to 5000 W and starting from its running watts to 20,000 W
/// Source   80 %: US National Electrical Code as quoted; start of a concentrator: consumer pages (350 to 800 W)
/// Example  120, 350 (starts with 800), 60 and 150 W: 680 W running, 1130 W needed
/// Nothing  is returned for an empty list or outside the range: one unknown load makes the sum a guess.
std::optional<GeneratorLoad> generator_load(std::span<const SupplyLoad> loads);

}  // namespace ventfolio::calc
