#include "units/print.hpp"

#include <algorithm>
#include <cmath>

namespace ventfolio {
namespace {

constexpr double kTolerance = 1e-9;

long long floor_with_tolerance(double value) {
    return static_cast<long long>(std::floor(value + kTolerance * std::max(1.0, std::abs(value))));
}

}  // namespace

std::string printed(const Decimal& number, const NumberFormat& format, Zeros zeros) {
    const std::string digits = zeros == Zeros::keep ? number.as_labelled() : number.plain();
    const std::size_t sign = digits.starts_with('-') ? 1 : 0;
    const std::size_t point = std::min(digits.find('.'), digits.size());
    std::string text = digits.substr(0, point);
    if (text.size() - sign >= 4)
        for (std::size_t at = text.size(); at > sign + 3; at -= 3) text.insert(at - 3, format.group_sign);
    if (point < digits.size()) text += format.decimal_sign + digits.substr(point + 1);
    return text;
}

long long floor_minutes(Duration time) { return floor_with_tolerance(time.in(unit::min)); }

long long floor_minutes(Duration time, int step) { return floor_with_tolerance(time.in(unit::min) / step) * step; }

long long ceil_pieces(double pieces) { return -floor_with_tolerance(-pieces); }

}  // namespace ventfolio
