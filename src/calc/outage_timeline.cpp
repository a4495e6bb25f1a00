#include "calc/outage_timeline.hpp"

namespace ventfolio::calc {
namespace {

bool is_source(Duration time) { return within(time, 0, 30, unit::days); }

}  // namespace

std::optional<OutageTimeline> outage_timeline(Duration power, std::optional<Duration> needed_oxygen, Duration travel,
                                              const LeaveReserve& reserve) {
    const bool usable = is_source(power) && (!needed_oxygen || is_source(*needed_oxygen)) &&
                        within(travel, 0, 24, unit::h) && within(reserve.travel_times, 0, 10) &&
                        within(reserve.fixed, 0, 24, unit::h);
    if (!usable) return std::nullopt;
    OutageTimeline timeline{.time_left = power,
                            .oxygen_ends_first = needed_oxygen && *needed_oxygen < power,
                            .reserve = travel * reserve.travel_times + reserve.fixed,
                            .leave_by = std::nullopt};
    if (timeline.oxygen_ends_first) timeline.time_left = *needed_oxygen;
    if (!at_least(timeline.reserve.in(unit::min), timeline.time_left.in(unit::min)))
        timeline.leave_by = timeline.time_left - timeline.reserve;
    return timeline;
}

}  // namespace ventfolio::calc
