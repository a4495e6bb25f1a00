#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "packet/packet_folder.hpp"
#include "rules/household.hpp"

namespace ventfolio {

/// What comes due in a home and is the clinic's or the provider's to see to, not the caregivers' daily care.
enum class DueKind {
    packet,              ///< the papers in the home are not those of the profile
    review,              ///< of the order
    follow_up,           ///< after a change of the order
    registration,        ///< with the power company
    certificate,         ///< of the need, for the power company
    permission,          ///< for a letter, a year after it was given
    directive,           ///< the signed order is confirmed again
    battery_test,        ///< timed again
    service,             ///< of a unit
    remote_alarm_test,   ///< of the second alarm
    sign_off,            ///< of a caregiver
    resuscitation_card,  ///< of a caregiver
    tube_change,         ///< of the neck tube
    care_task,           ///< with an interval of more than a day, by the clinic's rule
    reorder,             ///< of a supply that is down to its reorder level
    expiry,              ///< of a spare tube, a supply, something in the go-bag
};
/// "battery-test".
std::string_view name_of(DueKind kind);

/// One thing that is due.
struct Due {
    std::string record_number;
    std::string person;  ///< for lists with names only
    DueKind kind = DueKind::review;
    std::string what;        ///< in the words of the profile: "Unit A, built in"
    std::string named;       ///< who it is about, for lists with names only
    std::optional<Date> by;  ///< nothing: due now, since no day is known to count from
};

/// Everything with a date in one home, and what ought to have one, in no order. The days are those that the care
/// schedule prints and the rules report.
///
/// A yearly permission, and a year between tests of the second alarm: common practice, no source.
///
/// Example: a battery timed on 2025-12-15 is due on 2026-12-15; never timed, it is due now
std::vector<Due> dues_of(const Household& home);

/// What makes the packet that hangs in the home stale: another revision, or fields of its profile that say something
/// else than `home` does. Nothing if it is current.
std::optional<Due> stale_packet(const Household& home, const PacketFolder& packet);
/// The packet in the home is to be made again, or there is none that can be relied on: `why` says so.
Due packet_due(const Household& home, std::string why);

/// What is due by `last`. What has no day, then the earliest first; of one day by record number and kind.
void keep_due_by(std::vector<Due>& dues, Date last);

}  // namespace ventfolio
