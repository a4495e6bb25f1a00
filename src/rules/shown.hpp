#pragma once

#include <string>

#include "rules/household.hpp"
#include "units/quantity.hpp"

/// Numbers as messages show them. Paper has its own printer.
namespace ventfolio {

/// Rounded to so many places, without trailing zeros: 7.27 to one place is "7.3".
std::string shown(double value, int places);
/// "21 cmH2O", in the unit that the order's own pressures are written in.
std::string shown_pressure(Pressure pressure, const Prescription& order);
std::string shown_volume(Volume volume);            ///< "500 mL"
std::string shown_flow(Flow flow);                  ///< "6.7 L/min"
std::string shown_seconds(Duration time);           ///< "4.3 s"
std::string shown_minutes(Duration time);           ///< "637 min", rounded down
std::string shown_per_weight(double per_kilogram);  ///< "7.3 mL/kg"
std::string shown_share(double share);              ///< "67 %"
std::string shown_mass(Mass mass);                  ///< "66 kg"
std::string shown_length(Length length);            ///< "4 mm"
/// "none", "minutes (25 min)", "hours", "not recorded".
std::string shown_free_time(const Group<FreeBreathing>& free);
/// The word of the profile: "pc_ac".
std::string shown_mode(const Prescription& order);

}  // namespace ventfolio
