#include "calc/supply_quantity.hpp"

#include <cmath>

#include "units/print.hpp"

namespace ventfolio::calc {
namespace {

bool is_use(double pieces_per_day) { return within(pieces_per_day, 1e-4, 1000); }

}  // namespace

std::optional<SupplyQuantity> supply_quantity(const SupplyOrder& order) {
    if (!within(order.days, 1, 366) || !is_use(order.pieces_per_day) || !within(order.spare, 0, 1) || order.pack < 1 ||
        order.pack > 10'000)
        return std::nullopt;
    const long long needed = ceil_pieces(order.days * order.pieces_per_day);
    const long long pieces = ceil_pieces(static_cast<double>(needed) * (1 + order.spare));
    return SupplyQuantity{.pieces = pieces, .packs = (pieces + order.pack - 1) / order.pack};
}

std::optional<long long> days_of_supply(long long pieces, double pieces_per_day) {
    if (pieces < 0 || pieces > 1'000'000 || !is_use(pieces_per_day)) return std::nullopt;
    const double days = static_cast<double>(pieces) / pieces_per_day;
    return static_cast<long long>(std::floor(days * (1 + kTolerance)));
}

}  // namespace ventfolio::calc
