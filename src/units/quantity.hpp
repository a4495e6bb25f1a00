#pragma once

#include <compare>
#include <span>
#include <string_view>
#include <vector>

namespace ventfolio {

/// The physical quantities of a profile. Breaths and heart beats are told apart, so that one can never stand for the
/// other.
enum class Dimension {
    pressure,         ///< canonical unit: Pa
    volume,           ///< L
    flow,             ///< L/min
    duration,         ///< s
    breath_rate,      ///< breaths/min
    pulse_rate,       ///< beats/min
    daily_rate,       ///< times/day
    length,           ///< m
    mass,             ///< kg
    temperature,      ///< degree Celsius
    fraction,         ///< 1 (100 %)
    power,            ///< W
    voltage,          ///< V
    current,          ///< A
    electric_charge,  ///< Ah
    count,            ///< pieces
};

/// A unit as it is written in a profile. `value in canonical unit = number * factor + offset`.
struct Unit {
    std::string_view symbol;  ///< spelling in YAML and key of the unit's word in words.yaml
    Dimension dimension;
    double factor;
    double offset = 0;
};

/// A unit whose dimension is known to the compiler, so that adding a pressure to a flow does not compile.
template <Dimension D>
struct UnitOf {
    Unit unit;
};

/// One number with its meaning: a pressure, a flow, a time. Canonical unit inside, named units in and out.
///
/// Example: Pressure::of(20, unit::cmH2O).in(unit::mmHg) is 14.711.
template <Dimension D>
class Quantity {
  public:
    static constexpr Dimension dimension = D;

    constexpr Quantity() = default;
    static constexpr Quantity of(double number, UnitOf<D> unit) { return of(number, unit.unit); }
    /// For a unit found at run time; its dimension must be D.
    static constexpr Quantity of(double number, const Unit& unit) {
        return Quantity{number * unit.factor + unit.offset};
    }
    constexpr double in(UnitOf<D> unit) const { return in(unit.unit); }
    constexpr double in(const Unit& unit) const { return (canonical_ - unit.offset) / unit.factor; }

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity{a.canonical_ + b.canonical_}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity{a.canonical_ - b.canonical_}; }
    friend constexpr Quantity operator*(Quantity a, double times) { return Quantity{a.canonical_ * times}; }
    friend constexpr Quantity operator*(double times, Quantity a) { return a * times; }
    friend constexpr Quantity operator/(Quantity a, double parts) { return Quantity{a.canonical_ / parts}; }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.canonical_ / b.canonical_; }

  private:
    explicit constexpr Quantity(double canonical) : canonical_{canonical} {}

    double canonical_ = 0;
};

using Pressure = Quantity<Dimension::pressure>;
using Volume = Quantity<Dimension::volume>;
using Flow = Quantity<Dimension::flow>;
using Duration = Quantity<Dimension::duration>;
using BreathRate = Quantity<Dimension::breath_rate>;
using PulseRate = Quantity<Dimension::pulse_rate>;
using DailyRate = Quantity<Dimension::daily_rate>;
using Length = Quantity<Dimension::length>;
using Mass = Quantity<Dimension::mass>;
using Temperature = Quantity<Dimension::temperature>;
using Fraction = Quantity<Dimension::fraction>;
using Power = Quantity<Dimension::power>;
using Voltage = Quantity<Dimension::voltage>;
using Current = Quantity<Dimension::current>;
using ElectricCharge = Quantity<Dimension::electric_charge>;
using Count = Quantity<Dimension::count>;

/// Conversion constants. Sources: conventional values of NIST SP 811 and ISO 80000, checked in tests against GNU units.
namespace unit {
inline constexpr UnitOf<Dimension::pressure> Pa{{"Pa", Dimension::pressure, 1}};
inline constexpr UnitOf<Dimension::pressure> cmH2O{{"cmH2O", Dimension::pressure, 98.0665}};
inline constexpr UnitOf<Dimension::pressure> hPa{{"hPa", Dimension::pressure, 100}};
inline constexpr UnitOf<Dimension::pressure> mbar{{"mbar", Dimension::pressure, 100}};
inline constexpr UnitOf<Dimension::pressure> kPa{{"kPa", Dimension::pressure, 1000}};
inline constexpr UnitOf<Dimension::pressure> bar{{"bar", Dimension::pressure, 100000}};
inline constexpr UnitOf<Dimension::pressure> psi{{"psi", Dimension::pressure, 6894.757293168}};
inline constexpr UnitOf<Dimension::pressure> mmHg{{"mmHg", Dimension::pressure, 133.322387415}};
inline constexpr UnitOf<Dimension::volume> mL{{"mL", Dimension::volume, 0.001}};
inline constexpr UnitOf<Dimension::volume> L{{"L", Dimension::volume, 1}};
inline constexpr UnitOf<Dimension::flow> L_per_min{{"L/min", Dimension::flow, 1}};
inline constexpr UnitOf<Dimension::flow> mL_per_min{{"mL/min", Dimension::flow, 0.001}};
inline constexpr UnitOf<Dimension::flow> L_per_s{{"L/s", Dimension::flow, 60}};
inline constexpr UnitOf<Dimension::duration> ms{{"ms", Dimension::duration, 0.001}};
inline constexpr UnitOf<Dimension::duration> s{{"s", Dimension::duration, 1}};
inline constexpr UnitOf<Dimension::duration> min{{"min", Dimension::duration, 60}};
inline constexpr UnitOf<Dimension::duration> h{{"h", Dimension::duration, 3600}};
inline constexpr UnitOf<Dimension::duration> days{{"days", Dimension::duration, 86400}};
inline constexpr UnitOf<Dimension::breath_rate> breaths_per_min{{"breaths/min", Dimension::breath_rate, 1}};
inline constexpr UnitOf<Dimension::pulse_rate> beats_per_min{{"beats/min", Dimension::pulse_rate, 1}};
inline constexpr UnitOf<Dimension::daily_rate> times_per_day{{"times/day", Dimension::daily_rate, 1}};
inline constexpr UnitOf<Dimension::length> mm{{"mm", Dimension::length, 0.001}};
inline constexpr UnitOf<Dimension::length> cm{{"cm", Dimension::length, 0.01}};
inline constexpr UnitOf<Dimension::length> m{{"m", Dimension::length, 1}};
inline constexpr UnitOf<Dimension::length> in{{"in", Dimension::length, 0.0254}};
inline constexpr UnitOf<Dimension::length> ft{{"ft", Dimension::length, 0.3048}};
inline constexpr UnitOf<Dimension::length> Fr{{"Fr", Dimension::length, 0.001 / 3}};
inline constexpr UnitOf<Dimension::mass> g{{"g", Dimension::mass, 0.001}};
inline constexpr UnitOf<Dimension::mass> kg{{"kg", Dimension::mass, 1}};
inline constexpr UnitOf<Dimension::mass> lb{{"lb", Dimension::mass, 0.45359237}};
inline constexpr UnitOf<Dimension::temperature> degC{{"°C", Dimension::temperature, 1}};
inline constexpr UnitOf<Dimension::temperature> degF{{"°F", Dimension::temperature, 1 / 1.8, -32 / 1.8}};
inline constexpr UnitOf<Dimension::fraction> percent{{"%", Dimension::fraction, 0.01}};
inline constexpr UnitOf<Dimension::power> W{{"W", Dimension::power, 1}};
inline constexpr UnitOf<Dimension::power> kW{{"kW", Dimension::power, 1000}};
inline constexpr UnitOf<Dimension::voltage> V{{"V", Dimension::voltage, 1}};
inline constexpr UnitOf<Dimension::current> A{{"A", Dimension::current, 1}};
inline constexpr UnitOf<Dimension::electric_charge> Ah{{"Ah", Dimension::electric_charge, 1}};
inline constexpr UnitOf<Dimension::count> pieces{{"pieces", Dimension::count, 1}};
}  // namespace unit

/// Every unit that a profile may use, in the order in which messages list them.
std::span<const Unit> all_units();
/// The unit with this symbol, or one of its other accepted spellings ("C" for "°C"); null when unknown.
const Unit* find_unit(std::string_view symbol);
/// All that find_unit takes for this unit, its symbol first.
std::vector<std::string_view> spellings_of(const Unit& unit);
/// "a pressure", "a flow": the words in which messages name a dimension.
std::string_view name_of(Dimension dimension);

}  // namespace ventfolio
