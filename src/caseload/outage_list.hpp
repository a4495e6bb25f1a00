#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/outage_plan.hpp"

namespace ventfolio {

/// How long somebody does without the ventilator, as the paper in the home promises it: none, some minutes, or hours.
struct UnaidedTime {
    int minutes = 0;
    bool hours = false;
    friend bool operator==(const UnaidedTime&, const UnaidedTime&) = default;
};

/// Who answers the phone for a home.
struct HomeCall {
    /// `contact` is whom the power company may call, too.
    enum class Role { family, contact, caregiver, neighbor };
    Role role = Role::family;
    std::string name;
    std::string phone;
};
std::string_view name_of(HomeCall::Role role);

/// Where a home stands in the list, in the order of calling.
enum class Standing {
    not_judged,   ///< the profile cannot be used, or is refused
    not_known,    ///< power or needed oxygen was never tested or is not recorded
    falls_short,  ///< of the hours that are to be bridged
    lasts,
};
std::string_view name_of(Standing standing);

/// One home in an outage of a whole area. Every time is the one that its outage plan prints, rounded down to a quarter
/// of an hour.
struct HomeInOutage {
    std::string file;           ///< of the profile, as it was given
    std::string record_number;  ///< empty where it could not be read
    std::string person;         ///< for lists with names only
    std::string not_judged;     ///< why not; empty for a home that was judged
    std::optional<PlanMinutes> power;
    std::optional<PlanMinutes> oxygen;
    bool oxygen_needed = false;
    std::optional<PlanMinutes> time_left;  ///< until power or needed oxygen ends; nothing: not known
    UnaidedTime awake;
    UnaidedTime asleep;
    std::optional<long long> travel;      ///< minutes, rounded up
    std::optional<PlanMinutes> leave_by;  ///< nothing: leave or call now
    std::vector<HomeCall> calls;          ///< at most two numbers, in the order of calling

    /// `needed`: the minutes that are to be bridged.
    Standing standing(PlanMinutes needed) const;
};

/// A home whose profile was read and judged. The times are those of `outage_plan`; here only these are set apart:
/// a unit at the bed without any battery stops at once (0 min), one whose batteries were never timed is not known, nor
/// is a home that needs oxygen whose hours are not known, or which may need it: the order has a flow and nobody wrote
/// down when it is used.
HomeInOutage home_in_outage(std::string file, const Household& home);

/// A home whose profile is refused, with what is known for a call: record number and phone numbers.
HomeInOutage home_not_judged(std::string file, std::string reason, const Profile& profile);
/// A file that cannot be used.
HomeInOutage home_not_judged(std::string file, std::string reason);

/// In the order of calling: by standing; then who has the shortest time left; of those, who does without the ventilator
/// for the shortest time; then by record number and file.
void sort_for_calls(std::vector<HomeInOutage>& homes, PlanMinutes needed);

}  // namespace ventfolio
