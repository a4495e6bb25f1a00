#include "units/decimal.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <charconv>
#include <cmath>

#include "units/ascii.hpp"

namespace ventfolio {
namespace {

bool is_decimal(std::string_view text) {
    if (text.starts_with('-')) text.remove_prefix(1);
    const auto point = text.find('.');
    const std::string_view whole = text.substr(0, point);
    if (!std::all_of(whole.begin(), whole.end(), is_digit)) return false;
    if (point == std::string_view::npos) return !whole.empty();
    const std::string_view fraction = text.substr(point + 1);
    return !fraction.empty() && std::all_of(fraction.begin(), fraction.end(), is_digit);
}

}  // namespace

std::optional<Decimal> Decimal::parse(std::string_view text) {
    if (!is_decimal(text) || text.size() > 18) return std::nullopt;
    const std::string padded = text.starts_with('.')    ? "0" + std::string{text}
                               : text.starts_with("-.") ? "-0" + std::string{text.substr(1)}
                                                        : std::string{text};
    double value = 0;
    std::from_chars(padded.data(), padded.data() + padded.size(), value);
    return Decimal{std::string{text}, value};
}

Decimal Decimal::rounded(double value, int places) {
    const double scale = std::pow(10.0, places);
    const double nearest = std::round(value * scale) / scale;
    return Decimal{fmt::format("{:.{}f}", nearest == 0 ? 0.0 : nearest, places), nearest};
}

Decimal Decimal::whole(long long value) { return Decimal{fmt::format("{}", value), static_cast<double>(value)}; }

std::string Decimal::as_labelled() const {
    const bool negative = written_.starts_with('-');
    std::string digits = negative ? written_.substr(1) : written_;
    if (digits.starts_with('.')) digits.insert(0, "0");
    const auto first = digits.find_first_not_of('0');
    const std::size_t point = std::min(digits.find('.'), digits.size());
    digits.erase(0, std::min(first == std::string::npos ? digits.size() : first, point == 0 ? 0 : point - 1));
    const bool zero = digits.find_first_not_of("0.") == std::string::npos;
    return negative && !zero ? "-" + digits : digits;
}

std::string Decimal::plain() const {
    std::string digits = as_labelled();
    if (digits.find('.') != std::string::npos) {
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.ends_with('.')) digits.pop_back();
    }
    return digits;
}

}  // namespace ventfolio
