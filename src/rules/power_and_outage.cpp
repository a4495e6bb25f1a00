#include <fmt/format.h>
#include <algorithm>

#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

bool leaves_no_time(const Household& home) {
    const OutageFacts& outage = home.outage;
    return home.dependent && outage.time_left && outage.leave_reserve &&
           at_or_below(*outage.time_left, *outage.leave_reserve);
}

}  // namespace

namespace check {

void battery_time_untested(const Household& home, Report& report) {
    if (!home.dependent) return;
    for (const BatteryFacts& facts : home.outage.batteries) {
        const Battery& battery = *facts.battery;
        if (battery.tested_time && battery.tested_on && !facts.test_too_old) continue;
        const Spot at = battery.tested_time ? Spot{battery.tested_on} : Spot{battery.label};
        report.at(at, battery.tested_time ? "a year ago or not dated" : "never timed")
            .with("battery", battery.label)
            .with("date", battery.tested_time ? written(battery.tested_on) : std::string{"never"});
    }
}

void battery_time_lowered(const Household& home, Report& report) {
    for (const BatteryFacts& facts : home.outage.batteries) {
        if (!facts.lowered) continue;
        const Battery& battery = *facts.battery;
        const Spot at = battery.tested_at.given() ? Spot{battery.tested_at} : Spot{battery.label};
        report.at(at).with("battery", battery.label).with("reason", facts.lowered_because);
    }
}

void battery_shorter_than_leaving(const Household& home, Report& report) {
    if (!leaves_no_time(home)) return;
    report.at(home.profile.batteries)
        .also(home.profile.evacuation->travel_time)
        .with("time_left", shown_minutes(*home.outage.time_left))
        .with("reserve", shown_minutes(*home.outage.leave_reserve));
}

void outage_time_short(const Household& home, Report& report) {
    if (!home.dependent || leaves_no_time(home) || !home.outage.time_left) return;
    if (!below(*home.outage.time_left, threshold::kOutageShortBelow)) return;
    report.at(home.profile.batteries).with("time_left", shown_minutes(*home.outage.time_left));
}

void too_few_power_sources(const Household& home, Report& report) {
    const auto& hours = home.profile.dependence->hours_per_day;
    const bool long_hours = hours && above(*hours, threshold::kHeavyUserHoursAbove) && home.profile.devices.size() < 2;
    if (home.outage.sources_at_bed >= 2 || (!home.dependent && !long_hours)) return;
    report.at(home.profile.batteries)
        .with("count", home.outage.sources_at_bed == 1 ? "There is 1 source" : "There is no source");
}

void provider_help_too_late(const Household& home, Report& report) {
    if (!home.dependent) return;
    const Contact& provider = *home.profile.contacts->equipment_provider;
    const bool late =
        provider.response_time && home.outage.time_left && above(*provider.response_time, *home.outage.time_left);
    if (!late && !provider.all_hours.is(false)) return;
    report
        .at(late ? Spot{provider.response_time} : Spot{provider.all_hours},
            late ? "longer than the power lasts" : "not at all hours")
        .with("provider", provider.name)
        .with("response", late ? written(provider.response_time) : std::string{"until the next working hours"})
        .with("time_left",
              home.outage.time_left ? shown_minutes(*home.outage.time_left) : std::string{"a time not known"});
}

void utility_record_incomplete(const Household& home, Report& report) {
    const UtilityCompany& company = *home.profile.utility_company;
    if (!company.outage_phone) report.at(company.outage_phone).with("what", "outage number is missing");
    if (company.registered_until && *company.registered_until < home.on)
        report.at(company.registered_until, "past")
            .with("what", "registration ended on " + company.registered_until->iso());
}

void backup_away_with_chair(const Household& home, Report& report) {
    const Device* backup = nullptr;
    for (const Device& unit : home.profile.devices) {
        if (!unit.is_backup.is(true)) continue;
        if (backup != nullptr) return;
        backup = &unit;
    }
    if (backup != nullptr && backup->on_chair.is(true))
        report.at(backup->is_backup, "rides on the chair").with("unit", backup->label);
}

void humidifier_off_without_substitute(const Household& home, Report& report) {
    const HumidityPlan& plan = *home.profile.humidity_plan;
    const bool substitute =
        plan.outage_swap.given() && plan.outage_swap->kind.given() && !plan.exchanger_ruled_out.is(true);
    if (substitute) return;
    const bool stays_on = std::ranges::any_of(home.profile.loads, [](const Load& load) {
        return load.kind.is(LoadKind::humidifier) && load.on_battery.is(true);
    });
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.neck_tube || stays_on || !rx.order->humidity->kind.is(HumidityKind::heated)) continue;
        report.at(plan.outage_swap).also(rx.order->humidity->kind).with("rx", rx.name).with("name", home.name());
    }
}

}  // namespace check
}  // namespace ventfolio
