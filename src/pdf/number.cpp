#include "pdf/number.hpp"

#include <fmt/format.h>
#include <cmath>
#include <stdexcept>

namespace ventfolio {

void append_number(std::string& out, double value) {
    if (!(std::abs(value) <= 1e6)) throw std::logic_error{fmt::format("{} cannot stand in a drawing", value)};
    const long long hundredths = std::llround(value * 100);
    const long long size = std::llabs(hundredths);
    if (hundredths < 0) out += '-';
    out += fmt::to_string(size / 100);
    const auto fraction = static_cast<int>(size % 100);
    if (fraction == 0) return;
    out += '.';
    out += static_cast<char>('0' + fraction / 10);
    if (fraction % 10 != 0) out += static_cast<char>('0' + fraction % 10);
}

}  // namespace ventfolio
