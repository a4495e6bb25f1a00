#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rules/household.hpp"

namespace ventfolio {

/// Minutes since the power failed, as paper shows them: rounded down to the quarter hour.
using PlanMinutes = long long;

/// A battery of the unit at the bed, in the order of use.
struct PlannedBattery {
    const BatteryFacts* facts = nullptr;
    PlanMinutes from = 0;
    PlanMinutes to = 0;
};

/// A unit that does not stand at the bed. Nobody counts on its batteries: it may be out, or needed in its own place.
struct SpareUnit {
    std::string label;
    PlanMinutes time = 0;
};

/// One cylinder, or several of a kind that last as long as one another, one after the other.
struct PlannedOxygen {
    const OxygenSource* source = nullptr;
    int first = 1;  ///< numbered through the home, in the order of the profile
    int last = 1;
    PlanMinutes each = 0;
    PlanMinutes from = 0;  ///< if the oxygen flows from the start
    PlanMinutes to = 0;
};

/// What a family does when the power is out, by the clock. All times are one series: the running total is rounded, not
/// its parts, so that chart, table and list say the same.
struct OutagePlan {
    std::vector<PlannedBattery> batteries;
    std::vector<const BatteryFacts*> not_counted;  ///< at the bed and never timed
    std::vector<SpareUnit> spares;
    std::vector<PlannedOxygen> oxygen;
    bool oxygen_ends_first = false;
    std::optional<PlanMinutes> time_left;       ///< until power or needed oxygen ends
    std::optional<PlanMinutes> leave_by;        ///< nothing: leave or call now
    std::optional<PlanMinutes> half;            ///< half of the time is used; only if that is before leave_by
    std::optional<PlanMinutes> call_provider;   ///< four hours are left; likewise
    std::optional<PlanMinutes> call_emergency;  ///< one hour is left
};

/// The plan of one home.
///
/// Formula  end of each source = sum of counted times up to it, rounded down to 15 min;
///          leave by = time left - (2 x travel + 120 min), rounded down to 15 min
/// Units    min
/// Range    as for calc::battery_time, calc::cylinder_time and calc::outage_timeline; what is outside is not counted
/// Source   common practice, no source: sources in the order external, detachable, built in; call the provider with
///          four hours left, for an ambulance with one
/// Example  480, 210 and 220 min at 0.80, travel 25 min: 6 h 15 min, 9 h 0 min, 12 h 0 min; leave by 9 h 15 min
OutagePlan outage_plan(const Household& home);

}  // namespace ventfolio
