#include <array>

#include "sheets/checks/checks.hpp"

namespace ventfolio::sheet_check {

std::span<const NamedCheck> all_checks() {
    static constexpr std::array kChecks{
        NamedCheck{"alarm-off-as-instruction", alarm_off_as_instruction},
        NamedCheck{"mouth-step-without-mouth-route", mouth_step_without_mouth_route},
        NamedCheck{"reinsertion-step-for-fresh-opening", reinsertion_step_for_fresh_opening},
        NamedCheck{"step-does-not-fit-home", step_does_not_fit_home},
        NamedCheck{"oxygen-before-breaths", oxygen_before_breaths},
        NamedCheck{"rated-battery-time-printed", rated_battery_time_printed},
        NamedCheck{"squeeze-interval-out-of-range", squeeze_interval_out_of_range},
        NamedCheck{"treatment-limit-restated", treatment_limit_restated},
        NamedCheck{"private-fact-in-wrong-place", private_fact_in_wrong_place},
        NamedCheck{"misreadable-number", misreadable_number},
        NamedCheck{"error-prone-words", error_prone_words},
        NamedCheck{"emergency-sentence-too-long", emergency_sentence_too_long},
        NamedCheck{"family-text-hard-to-read", family_text_hard_to_read},
    };
    return kChecks;
}

}  // namespace ventfolio::sheet_check
