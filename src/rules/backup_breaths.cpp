#include <algorithm>
#include <array>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// The mode waits for the person, and nothing comes when the person does not start a breath.
bool waits_for_the_person(const DerivedPrescription& rx) {
    const auto& mode = rx.order->mode;
    if (mode.is(Mode::psv)) return !rx.order->backup_breaths.given();
    constexpr std::array kWithRate{Mode::vc_ac,      Mode::pc_ac, Mode::va_ac,  Mode::simv_vc,
                                   Mode::st_bilevel, Mode::va_ps, Mode::simv_pc};
    const bool with_rate = std::ranges::any_of(kWithRate, [&](Mode one) { return mode.is(one); });
    return with_rate && rx.order->rate && !above(*rx.order->rate, BreathRate{});
}

bool backup_refused(const DerivedPrescription& rx) {
    return rx.closed && rx.without_free_breathing && waits_for_the_person(rx);
}

std::string free_minutes_of(const DerivedPrescription& rx, const Dependence& dependence) {
    if (rx.covers_asleep && needs_every_breath(dependence.unaided_asleep))
        return shown_free_time(dependence.unaided_asleep);
    return shown_free_time(dependence.unaided_awake);
}

}  // namespace

namespace check {

void backup_breaths_missing(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!backup_refused(rx)) continue;
        report.at(rx.order->mode, "waits for the person")
            .also(rx.order->rate)
            .with("rx", rx.name)
            .with("name", home.name());
    }
}

void spontaneous_breathing_without_backup(const Household& home, Report& report) {
    const bool no_drive = home.profile.diagnosis->why_ventilated.is(WhyVentilated::no_drive);
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (backup_refused(rx) || !rx.closed || !waits_for_the_person(rx) || (!rx.dependent && !no_drive)) continue;
        report.at(rx.order->mode, "waits for the person")
            .with("rx", rx.name)
            .with("name", home.name())
            .with("reason", rx.dependent ? free_minutes_of(rx, *home.profile.dependence) + " of free breathing"
                                         : std::string{"no reliable drive to breathe"});
    }
}

void adult_rate_very_low(const Household& home, Report& report) {
    if (home.child) return;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.closed || !rx.dependent || !rx.rate || !below(*rx.rate, threshold::kAdultRateLeast)) continue;
        report.at(rx.order->rate, "low for an adult")
            .with("rx", rx.name)
            .with("rate", rx.order->rate)
            .with("name", home.name());
    }
}

}  // namespace check
}  // namespace ventfolio
