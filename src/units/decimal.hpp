#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace ventfolio {

/// A decimal number as it was written. The digits are kept beside the value, so that a setting reaches paper exactly
/// as the order reads and never passes through binary.
///
/// Accepts an optional minus sign, digits, and at most one point with a digit after it: "16", "0.5", ".5", "8.0",
/// "-40". No exponent, no grouping, no decimal comma.
///
/// Example: Decimal::parse("5.50")->plain() is "5.5"; its written() stays "5.50".
class Decimal {
  public:
    static std::optional<Decimal> parse(std::string_view text);
    /// The nearest decimal with `places` digits after the point, halves away from zero.
    static Decimal rounded(double value, int places);
    static Decimal whole(long long value);

    double value() const { return value_; }
    const std::string& written() const { return written_; }
    /// With a leading zero and without trailing zeros: the form for every number but sizes read off a box.
    std::string plain() const;
    /// With a leading zero; trailing zeros stay, as on the box of a tube ("8.0").
    std::string as_labelled() const;

    friend bool operator==(const Decimal& a, const Decimal& b) { return a.plain() == b.plain(); }

  private:
    Decimal(std::string written, double value) : written_{std::move(written)}, value_{value} {}

    std::string written_;
    double value_;
};

}  // namespace ventfolio
