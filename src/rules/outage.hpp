#pragma once

#include <optional>
#include <string>
#include <vector>

#include "profile/profile.hpp"
#include "units/quantity.hpp"

namespace ventfolio {

/// What the plan counts for one battery.
struct BatteryFacts {
    const Battery* battery = nullptr;
    std::optional<Duration> counted;  ///< tested time x derating; nothing: never timed
    double derating = 0;
    bool at_bed = false;   ///< serves the unit used at the bed
    bool lowered = false;  ///< counted with the lower derating
    bool test_too_old = false;
    std::string lowered_because;    ///< in words, when lowered
    std::optional<Date> retest_by;  ///< when lowered: so many days after the orders began
};

/// How long the home lasts without wall power.
struct OutageFacts {
    std::vector<BatteryFacts> batteries;
    std::optional<Duration> power;          ///< of the unit at the bed; nothing: no timed battery serves it
    std::optional<Duration> oxygen;         ///< cylinders and liquid at the highest ordered flow; nothing: not known
    bool oxygen_needed = false;             ///< ordered continuously or at night
    std::optional<Duration> time_left;      ///< the smaller of power and needed oxygen
    std::optional<Duration> leave_reserve;  ///< 2 x travel + 120 min
    int sources_at_bed = 0;                 ///< of power besides the wall, for the unit at the bed
};

/// A source of power that cannot carry what hangs on it; the plan does not count it.
struct UnsuitableSupply {
    enum class Kind { generator, vehicle, inverter };
    Kind kind;
    const FieldBase* at;
    std::string supply;  ///< "The generator"
    std::string need;    ///< "2750 W"
    std::string rating;  ///< "2200 W"
};
std::vector<UnsuitableSupply> unsuitable_supplies(const Profile& profile);

struct Household;
OutageFacts outage_facts(const Household& home);
/// How long the cylinders and liquid of one entry last at a flow; nothing when contents are not known.
std::optional<Duration> time_of(const OxygenSource& source, Flow flow);
/// Highest oxygen flow ordered on any prescription.
std::optional<Flow> highest_oxygen_flow(const Household& home);

}  // namespace ventfolio
