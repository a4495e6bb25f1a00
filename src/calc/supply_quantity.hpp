#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// An order of something that is used up.
struct SupplyOrder {
    double days = 0;            ///< to last for
    double pieces_per_day = 0;  ///< 1 / 7 for one a week
    double spare = 0;           ///< 0.10 for a tenth more
    long long pack = 1;         ///< pieces in a pack
};

struct SupplyQuantity {
    long long pieces = 0;
    long long packs = 0;
};

/// How many pieces, and packs, last for so many days. Always rounded up.
///
/// Formula  pieces = days x pieces a day, up; with the spare, up; packs = pieces / pack, up
/// Units    days and pieces
/// Range    1 to 366 days, above 0 and up to 1000 pieces a day, spare 0 to 1, pack 1 to 10,000
/// Source   definition; no published example was found
/// Example  2 a day for 30 days with a tenth spare, in packs of 25: 66 pieces, 3 packs
/// Nothing  is returned outside the range.
std::optional<SupplyQuantity> supply_quantity(const SupplyOrder& order);

/// How many whole days the pieces in the house last.
///
/// Formula  pieces / pieces a day, rounded down
/// Units    days
/// Range    0 to 1,000,000 pieces, above 0 and up to 1000 a day
/// Source   definition
/// Example  11 pieces, 2 a day: 5 days
/// Nothing  is returned outside the range: what is not used never runs out.
std::optional<long long> days_of_supply(long long pieces, double pieces_per_day);

}  // namespace ventfolio::calc
