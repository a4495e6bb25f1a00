#include <fmt/format.h>
#include <algorithm>
#include <vector>

#include "calc/backup_supply.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// FDA, CDC and state health departments: 20 ft from doors, windows and vents.
constexpr Length kGeneratorDistanceLeast = Length::of(20, unit::ft);

bool humidifier_ordered_on_battery(const Household& home) {
    return std::ranges::any_of(home.prescriptions, [](const DerivedPrescription& rx) {
        const OrderedException& order = *rx.order->humidity->on_battery_order;
        return order.by && order.date;
    });
}

std::string watts(Power power) { return shown(power.in(unit::W), 0) + " W"; }

void check_generator(const Profile& profile, std::vector<UnsuitableSupply>& found) {
    const Generator& generator = *profile.power->generator;
    if (!profile.power->generator.given() || !generator.power) return;
    std::vector<calc::SupplyLoad> loads;
    for (const Load& load : profile.loads)
        if (load.on_generator.is(true) && load.power)
            loads.push_back({*load.power, load.start_power ? *load.start_power : *load.power});
    const auto need = calc::generator_load(loads);
    if (need && above(need->needed, *generator.power))
        found.push_back({UnsuitableSupply::Kind::generator, &generator.power, "The generator", watts(need->needed),
                         written(generator.power)});
}

void check_vehicle(const Profile& profile, std::vector<UnsuitableSupply>& found) {
    const Vehicle& vehicle = *profile.power->vehicle;
    if (!profile.power->vehicle.given() || !vehicle.power || !vehicle.voltage || !vehicle.rated_current) return;
    const auto draw = calc::direct_current_draw(*vehicle.power, *vehicle.voltage, 1);
    if (!draw || calc::socket_carries(*vehicle.rated_current, draw->draw).value_or(true)) return;
    found.push_back({UnsuitableSupply::Kind::vehicle, &vehicle.rated_current, "The vehicle's socket",
                     shown(draw->draw.in(unit::A), 1) + " A for hours",
                     written(vehicle.rated_current) + " for a short time"});
}

void check_inverter(const Profile& profile, std::vector<UnsuitableSupply>& found) {
    const Inverter& inverter = *profile.power->inverter;
    if (!profile.power->inverter.given() || !inverter.waveform.is(Waveform::modified)) return;
    for (const Device& unit : profile.devices) {
        if (!unit.needs_pure_sine.is(true)) continue;
        found.push_back({UnsuitableSupply::Kind::inverter, &inverter.waveform, "The inverter",
                         written(unit.label) + ", which needs a pure sine wave", "a modified wave"});
        return;
    }
}

bool unsafe_place(const Field<GeneratorPlace>& place) { return place && *place != GeneratorPlace::outdoors; }

}  // namespace

std::vector<UnsuitableSupply> unsuitable_supplies(const Profile& profile) {
    std::vector<UnsuitableSupply> found;
    check_generator(profile, found);
    check_vehicle(profile, found);
    check_inverter(profile, found);
    return found;
}

namespace check {

void humidifier_heater_on_battery(const Household& home, Report& report) {
    if (humidifier_ordered_on_battery(home)) return;
    for (const Load& load : home.profile.loads)
        if (load.kind.is(LoadKind::humidifier) && load.on_battery.is(true))
            report.at(load.on_battery, "no order for it").also(load.power).with("watts", load.power);
}

void battery_load_unknown(const Household& home, Report& report) {
    for (const Load& load : home.profile.loads)
        if (load.on_battery.is(true) && !load.power) report.at(load.on_battery, "no watts").with("load", load.name);
}

void backup_supply_unsuitable(const Household& home, Report& report) {
    for (const UnsuitableSupply& one : unsuitable_supplies(home.profile))
        report.at(*one.at).with("supply", one.supply).with("need", one.need).with("rating", one.rating);
}

void generator_too_near_openings(const Household& home, Report& report) {
    const Generator& generator = *home.profile.power->generator;
    if (!home.profile.power->generator.given()) return;
    if (unsafe_place(generator.place))
        report.at(generator.place, "not outdoors").with("place", written(generator.place));
    else if (generator.distance && below(*generator.distance, kGeneratorDistanceLeast))
        report.at(generator.distance, "less than 6.1 m (20 ft)")
            .with("place", written(generator.distance) + " from windows, doors or vents");
}

void generator_without_carbon_monoxide_alarm(const Household& home, Report& report) {
    if (home.profile.power->generator.given() && !home.profile.monitors->carbon_monoxide_alarms.given())
        report.at(home.profile.power->generator).also(home.profile.monitors->carbon_monoxide_alarms);
}

}  // namespace check
}  // namespace ventfolio
