#pragma once

#include <compare>
#include <optional>
#include <span>
#include <string_view>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// How much gas a cylinder gives for each psi that its gauge falls.
struct LitresPerPsi {
    double value = 0;
    friend constexpr auto operator<=>(LitresPerPsi, LitresPerPsi) = default;
};

/// The gauge reading at which a home changes the cylinder, unless the profile says otherwise (common practice, no
/// source; ambulances go down to 200 psi).
inline constexpr Pressure kUsualResidual = Pressure::of(500, unit::psi);

struct CylinderUse {
    Pressure gauge;
    Pressure residual = kUsualResidual;
    LitresPerPsi factor;
    Flow flow;
};

/// How long a gas cylinder lasts at a constant flow.
///
/// Formula  (gauge - residual) x factor / flow, and 0 at or below the residual
/// Units    psi, L/psi, L/min, result in min; round down to print (floor_minutes)
/// Range    gauge and residual 0 to 5000 psi, factor 0.01 to 10 L/psi, flow 0.01 to 25 L/min
/// Source   vehicle rule of a US state ambulance agency (D 0.16, E 0.28, H 3.14 L/psi)
/// Example  E cylinder, 750 psi, residual 200 psi, 0.28 L/psi, 10 L/min: 15.4 min
/// Nothing  is returned at flow 0 (the cylinder is not in use) or outside the range.
std::optional<Duration> cylinder_time(const CylinderUse& use);

/// The factor of a cylinder from its label.
///
/// Formula  contents / full pressure
/// Units    L and psi
/// Range    contents 10 to 10,000 L, full pressure 500 to 5000 psi
/// Source   definition; 244 cubic feet at 2200 psi: handbook factor 3.14
/// Example  680 L at 2200 psi: 0.309 L/psi
/// Nothing  is returned outside the range.
std::optional<LitresPerPsi> litres_per_psi(Volume contents, Pressure full);

/// What a cylinder holds by its water volume, where labels give that.
///
/// Formula  water volume x gauge in bar (ideal gas: real contents are 5 to 8 % higher when full, the safe side)
/// Units    L and bar, result in L
/// Range    water volume 0.3 to 60 L, gauge 0 to 345 bar
/// Source   Boyle's law; nominal 680 L for 4.7 L at 137 bar (from memory)
/// Example  10 L at 137 bar: 1370 L
/// Nothing  is returned outside the range.
std::optional<Volume> cylinder_contents(Volume water_volume, Pressure gauge);

/// The gauge reading that a trip must start with.
///
/// Formula  flow x time / factor + residual
/// Units    L/min, min, L/psi, psi
/// Range    flow 0.01 to 25 L/min, time 0 to 7 days, factor 0.01 to 10 L/psi, residual and result 0 to 5000 psi
/// Source   the inverse of cylinder_time
/// Example  2 L/min for 210 min, 0.28 L/psi, residual 500 psi: 2000 psi
/// Nothing  is returned outside the range: no such cylinder lasts that long.
std::optional<Pressure> starting_gauge(Flow flow, Duration time, LitresPerPsi factor, Pressure residual);

/// A cylinder size. The same letter means other sizes in other countries, and in one country it may mean two cylinders.
struct CylinderSize {
    std::string_view country;  ///< ISO 3166 code
    std::string_view size;
    Volume contents;  ///< the smallest published for this letter
    Pressure full;
    LitresPerPsi factor;  ///< the safe one: the smaller of the handbook's and contents / full
};

std::span<const CylinderSize> cylinder_sizes();

/// The safe factor for a size letter.
///
/// Formula  the smaller of the handbook factor and the smallest published contents / full pressure
/// Units    L/psi
/// Range    the sizes of cylinder_sizes(), by country
/// Source   US: ambulance and supplier tables, full at 2200 psi; GB: 137 bar (from memory)
/// Example  US, D: 0.159 (older steel, 350 L), not the 0.193 of the aluminium cylinder with the same letter
/// Nothing  is returned for an unknown size, or a letter without its country.
std::optional<CylinderSize> cylinder_size(std::string_view country, std::string_view size);

/// How long liquid oxygen lasts.
///
/// Formula  344 L of gas per lb of liquid / flow
/// Units    lb and L/min, result in min
/// Range    0 to 150 lb, flow 0.01 to 25 L/min; loss by boiling off is not counted
/// Source   US formulary page (860.6 L of gas from a litre of liquid, 344.24 L/lb); teaching page (5 lb, 2 L/min)
/// Example  5 lb at 2 L/min: 860 min
/// Nothing  is returned at flow 0 or outside the range.
std::optional<Duration> liquid_oxygen_time(Mass liquid, Flow flow);

/// Whether a gauge can read so much on a cylinder of a size: more than a tenth above full is a unit that slipped.
///
/// Formula  gauge <= 1.1 x full pressure
/// Units    any pressure
/// Range    gauge 0 to 5000 psi, full 500 to 5000 psi
/// Source   common practice, no source
/// Example  20,000 kPa on a cylinder that is full at 2200 psi: false
/// Nothing  is returned outside the range.
std::optional<bool> gauge_is_possible(Pressure gauge, Pressure full);

struct LiquidOxygenUse {
    Mass liquid;
    Flow flow;
    Duration hours_a_day = Duration::of(24, unit::h);
    Mass lost_a_day = {};  ///< boils off, used or not
};

/// How many days liquid oxygen lasts when it is not breathed all day and some of it boils off.
///
/// Formula  lb / (flow x 60 x hours a day / 344 + lb lost a day)
/// Units    lb, L/min and h, result in days
/// Range    0 to 150 lb, flow 0.01 to 25 L/min, 0.1 to 24 hours a day, loss 0 to 10 lb a day
/// Source   as for liquid_oxygen_time; 1 to 1.5 lb lost a day by stationary vessels is common practice, no source
/// Example  100 lb at 2 L/min all day: 11.9 days
/// Nothing  is returned at flow 0 or outside the range.
std::optional<Duration> liquid_oxygen_days(const LiquidOxygenUse& use);

}  // namespace ventfolio::calc
