#include <fmt/format.h>
#include <algorithm>

#include "calc/next_due_date.hpp"
#include "calc/vital_sign_band.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// AARC, Pediatric Patients With Tracheostomy, 2021: 7 to 14 days.
constexpr int kTubeIntervalMost = 14;

std::vector<std::string> equipment_not_recorded(const Household& home) {
    const Profile& profile = home.profile;
    std::vector<std::string> items;
    const auto need = [&](bool there, std::string name) {
        if (!there) items.push_back(std::move(name));
    };
    const auto& bags = profile.emergency_equipment->breathing_bags;
    need(!profile.batteries.empty(), "batteries");
    need(std::ranges::any_of(bags, [](const BreathingBag& bag) { return bag.face_mask.is(true); }),
         "breathing bag with mask");
    need(profile.suction->portable_time.given() || profile.suction->hand_device.is(true), "portable suction");
    need(std::ranges::any_of(home.prescriptions,
                             [](const auto& rx) { return rx.order->humidity->kind.is(HumidityKind::heated); }),
         "heated humidifier");
    need(profile.monitors->oximeter.given(), "oximeter");
    need(!profile.oxygen->sources.empty(), "emergency oxygen");
    const bool nebulized = std::ranges::any_of(
        profile.medicines, [](const Medicine& one) { return one.kind.is(MedicineKind::nebulized); });
    if (nebulized) need(profile.airway_clearance->nebulizer.given(), "nebulizer");
    return items;
}

}  // namespace

namespace check {

void awake_night_cover_missing(const Household& home, Report& report) {
    const NightCover& cover = *home.profile.night_cover;
    if (!home.child || home.neck_tube == nullptr || cover.awake_every_night.is(true)) return;
    report.at(cover.awake_every_night)
        .also(cover.nights_without)
        .with("nights",
              cover.nights_without ? shown((*cover.nights_without).in(unit::pieces), 0) : std::string{"Some"});
}

void child_equipment_incomplete(const Household& home, Report& report) {
    if (!home.child || home.neck_tube == nullptr) return;
    const auto items = equipment_not_recorded(home);
    if (!items.empty()) report.at(home.profile.emergency_equipment).with("items", joined(items, ", "));
}

void child_rate_below_band(const Household& home, Report& report) {
    const auto band = home.child && home.age ? calc::vital_sign_band(*home.age) : std::nullopt;
    if (!band) return;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.rate || !below(*rx.rate, band->breathing.low * threshold::kChildRateShareOfBand)) continue;
        report.at(rx.order->rate, "low for this age")
            .with("rx", rx.name)
            .with("rate", rx.order->rate)
            .with("age", home.age->years > 0 ? fmt::format("{} years", home.age->years)
                                             : fmt::format("{} months", home.age->months));
    }
}

void child_tube_interval_long(const Household& home, Report& report) {
    if (!home.child || home.neck_tube == nullptr || !home.neck_tube->change_interval) return;
    const auto& interval = home.neck_tube->change_interval;
    const auto due = calc::next_due_date(home.on, *interval);
    if (due && days_between(home.on, *due) > kTubeIntervalMost)
        report.at(interval, "long for a child").with("days", interval);
}

}  // namespace check
}  // namespace ventfolio
