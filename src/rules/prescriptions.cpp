#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// Mouthpiece studies: below this free time many clinics set a backup rate.
constexpr Duration kFreeTimeForNoBackup = Duration::of(360, unit::min);

bool sleep_is_ordered(const Interface& interface) {
    const Mouthpiece& mouthpiece = *interface.mouthpiece;
    return mouthpiece.type.is(MouthpieceType::flanged) && mouthpiece.sleep_order->by && mouthpiece.sleep_order->date;
}

/// Minutes of the day that prescriptions cover; nothing when a prescription does not say.
struct Cover {
    std::array<int, 1440> times{};
    double minutes = 0;
    bool by_clock = true;  ///< every prescription gives clock times

    bool has_gap_or_overlap() const {
        return by_clock && std::ranges::any_of(times, [](int count) { return count != 1; });
    }
};

std::optional<Cover> cover_of(const Household& home) {
    Cover cover;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (rx.order->when_used.empty()) {
            if (!rx.order->hours_per_day) return std::nullopt;
            cover.by_clock = false;
            cover.minutes += (*rx.order->hours_per_day).in(unit::min);
        }
        for (const TimeOfUse& use : rx.order->when_used) {
            if (!use.hours) return std::nullopt;
            cover.minutes += use.hours->minutes();
            for (int minute = 0; minute < use.hours->minutes(); ++minute)
                ++cover.times[static_cast<std::size_t>((use.hours->from.minutes + minute) % 1440)];
        }
    }
    return cover;
}

bool written_for(const Prescription& order) {
    if (order.written_for.empty()) return true;
    return std::ranges::any_of(order.written_for, [&](const WrittenFor& pair) {
        return (!pair.interface || !order.interface->kind || *pair.interface == *order.interface->kind) &&
               (!pair.circuit || !order.circuit->kind || *pair.circuit == *order.circuit->kind);
    });
}

bool mode_and_interface_clash(const DerivedPrescription& rx) {
    if (!rx.order->mode) return false;
    if (rx.mouthpiece_mode) return rx.closed;
    return rx.mouthpiece || (rx.closed && rx.order->circuit->kind.is(CircuitKind::open_mouthpiece));
}

}  // namespace

namespace check {

void mouthpiece_prescribed_for_sleep(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.mouthpiece_mode || !rx.covers_asleep || sleep_is_ordered(*rx.order->interface)) continue;
        report.at(rx.order->state, "includes sleep").also(rx.order->mode).with("rx", rx.name);
    }
}

void mouthpiece_without_backup_rate(const Household& home, Report& report) {
    const auto& free = home.profile.dependence->unaided_awake;
    const bool short_time = free.is_none() || (free.given() && free->time && below(*free->time, kFreeTimeForNoBackup));
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.mouthpiece_mode || !short_time || !rx.order->rate || above(*rx.order->rate, BreathRate{})) continue;
        report.at(rx.order->rate, "no backup rate").with("rx", rx.name).with("free_time", shown_free_time(free));
    }
}

void sleep_prescription_missing(const Household& home, Report& report) {
    if (!home.dependent_asleep) return;
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.covers_asleep && rx.closed) return;
    report.at(home.profile.prescriptions, "none of these is for sleep with a closed hose")
        .also(home.profile.dependence->unaided_asleep)
        .with("name", home.name());
}

void hours_without_prescription(const Household& home, Report& report) {
    const auto& used = home.profile.dependence->hours_per_day;
    const auto cover = cover_of(home);
    if (!used || !cover) return;
    const Duration covered = Duration::of(cover->minutes, unit::min);
    const double apart = std::abs((*used).in(unit::min)-cover->minutes);
    const bool whole_day = same(*used, Duration::of(24, unit::h));
    const bool off = above(apart, threshold::kHoursCoverDifference.in(unit::min));
    if (!off && (!whole_day || !cover->has_gap_or_overlap())) return;
    report.at(home.profile.prescriptions, off ? "" : "a gap or an overlap")
        .also(used)
        .with("hours", shown(covered.in(unit::h), 1) + " h")
        .with("name", home.name())
        .with("hours_per_day", used);
}

void prescription_does_not_fit_interface(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (written_for(*rx.order) && !mode_and_interface_clash(rx)) continue;
        report.at(rx.order->interface->kind)
            .also(rx.order->circuit->kind)
            .also(rx.order->mode)
            .with("rx", rx.name)
            .with("interface", rx.order->interface->kind)
            .with("circuit", rx.order->circuit->kind);
    }
}

}  // namespace check
}  // namespace ventfolio
