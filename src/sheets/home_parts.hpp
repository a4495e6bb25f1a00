#pragma once

#include "rules/household.hpp"

/// What a home has, for the sheets that name it and for the checks over them.
namespace ventfolio {

/// A heat and moisture exchanger on the ventilator, for an outage, or for time off the ventilator.
bool has_exchanger(const Household& home);
/// The opening of the neck tube is not recorded as healed, or younger than two weeks.
bool opening_is_fresh(const Household& home);

/// The home is known to lack the part; false where it is not recorded.
bool lacks_cuff(const Household& home);
bool lacks_inner_tube(const Household& home);
bool lacks_neck_tube(const Household& home);
bool lacks_oxygen(const Household& home);
bool lacks_exhalation_port(const Household& home);
bool lacks_small_lines(const Household& home);
bool lacks_exchanger(const Household& home);
bool lacks_second_ventilator(const Household& home);

}  // namespace ventfolio
