#include "rules/workings.hpp"

#include <fmt/format.h>
#include <map>
#include <stdexcept>

#include "calc/predicted_weight.hpp"
#include "rules/calculators/inputs.hpp"
#include "rules/report.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

using Arguments = std::vector<std::string>;

/// Collects what the calculators say; a wrong argument name is a bug of this file, a value out of range is no number.
class Workings {
  public:
    explicit Workings(Date on) : on_{on} {}

    void add(std::string_view name, std::string about, const Arguments& arguments) {
        const CalculatorText* calculator = find_calculator(name);
        if (calculator == nullptr) throw std::logic_error{fmt::format("there is no calculator {}", name)};
        auto inputs = read_inputs(*calculator, arguments, on_);
        if (!std::holds_alternative<Inputs>(inputs)) return;
        auto answer = calculate(*calculator, std::get<Inputs>(std::move(inputs)));
        if (auto* found = std::get_if<Calculation>(&answer)) all_.push_back({std::move(about), std::move(*found)});
    }

    std::vector<Working> take() { return std::move(all_); }

  private:
    Date on_;
    std::vector<Working> all_;
};

std::string in_minutes(Duration time) { return fmt::format("{:.6g} min", time.in(unit::min)); }

void add_body(Workings& all, const Household& home) {
    const Person& person = *home.profile.person;
    if (home.child || !home.age || person.reference_weight.given()) return;
    std::string height = person.height.given() ? written(person.height) : "";
    if (height.empty() && person.arm_span.given()) {
        all.add("height-from-arm-span", "", {"--arm-span", written(person.arm_span)});
        if (const auto found = calc::height_from_arm_span(*person.arm_span))
            height = fmt::format("{:.1f} cm", found->in(unit::cm));
    }
    if (height.empty()) return;
    Arguments arguments{"--height", height, "--years", fmt::format("{}", home.age->years)};
    if (person.sex_for_volume.given()) {
        arguments.emplace_back("--sex");
        arguments.emplace_back(written(person.sex_for_volume));
    }
    all.add("predicted-weight", "", arguments);
}

std::string name_of(const DerivedPrescription& rx) { return rx.order->place.or_else(rx.order->id.or_else("")); }

void add_pressures(Workings& all, const DerivedPrescription& rx) {
    const Prescription& order = *rx.order;
    const auto& pressure = order.inspiratory_pressure.given() ? order.inspiratory_pressure : order.support_pressure;
    if (!pressure.given() || !order.baseline_pressure.given() || !order.pressure_reference.given()) return;
    const bool above =
        !order.inspiratory_pressure.given() || *order.pressure_reference == PressureReference::above_baseline;
    all.add("pressure-sums", name_of(rx),
            {"--inspiratory", written(pressure), "--counted-from", above ? "baseline" : "room", "--baseline",
             written(order.baseline_pressure)});
}

void add_breath(Workings& all, const DerivedPrescription& rx, const Household& home) {
    const Prescription& order = *rx.order;
    const std::string volume =
        rx.usual_volume ? fmt::format("{:.6g} mL", rx.usual_volume->in(unit::mL)) : std::string{};
    if (rx.usual_volume && home.reference_weight)
        all.add("volume-per-weight", name_of(rx),
                {"--volume", volume, "--weight", fmt::format("{:.1f} kg", home.reference_weight->in(unit::kg))});
    if (!order.rate.given()) return;
    if (order.inspiratory_time.given())
        all.add("breath-timing", name_of(rx),
                {"--rate", written(order.rate), "--time-in", written(order.inspiratory_time)});
    if (rx.usual_volume)
        all.add("minute-ventilation", name_of(rx), {"--rate", written(order.rate), "--volume", volume});
}

void add_alarms(Workings& all, const DerivedPrescription& rx) {
    const Alarms& alarms = *rx.order->alarms;
    if (!rx.order->alarms.given() || !alarms.high_pressure.given() || !alarms.low_pressure.given()) return;
    if (!rx.top || !rx.order->baseline_pressure.given()) return;
    all.add("alarm-margins", name_of(rx),
            {"--high-limit", written(alarms.high_pressure), "--low-limit", written(alarms.low_pressure), "--peak",
             fmt::format("{:.6g} cmH2O", rx.top->in(unit::cmH2O)), "--baseline", written(rx.order->baseline_pressure)});
}

void add_volume_alarms(Workings& all, const DerivedPrescription& rx) {
    const Alarms& alarms = *rx.order->alarms;
    if (rx.mouthpiece) return;  // it leaks by design, so that such an alarm says little
    if (alarms.low_tidal_volume.given() && rx.usual_volume)
        all.add("volume-alarm-share", name_of(rx),
                {"--limit", written(alarms.low_tidal_volume), "--usual",
                 fmt::format("{:.6g} mL", rx.usual_volume->in(unit::mL))});
    if (alarms.low_minute_volume.given() && rx.usual_minute_volume)
        all.add("minute-volume-alarm-share", name_of(rx),
                {"--limit", written(alarms.low_minute_volume), "--usual",
                 fmt::format("{:.6g} L/min", rx.usual_minute_volume->in(unit::L_per_min))});
}

void add_rescue(Workings& all, const Household& home) {
    std::optional<BreathRate> most;
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.rate && (!most || *rx.rate > *most)) most = rx.rate;
    if (home.age) {
        Arguments arguments{"--group", home.infant ? "infant" : home.child ? "child" : "adult"};
        if (most) {
            arguments.emplace_back("--rate");
            arguments.push_back(fmt::format("{:.6g} breaths/min", most->in(unit::breaths_per_min)));
        }
        all.add("squeeze-interval", "", arguments);
    }
    for (const auto* free : {&home.profile.dependence->unaided_awake, &home.profile.dependence->unaided_asleep})
        if (free->given() && (*free)->kind.is(FreeTimeKind::minutes) && (*free)->time.given())
            all.add("safe-minutes", "", {"--free", written((*free)->time)});
}

void add_batteries(Workings& all, const Household& home) {
    for (const Device& device : home.profile.devices) {
        std::map<double, Arguments> by_derating;
        for (const BatteryFacts& facts : home.outage.batteries) {
            if (!facts.counted || !device.label.given() || !facts.battery->unit.is(*device.label)) continue;
            Arguments& arguments = by_derating[facts.derating];
            arguments.emplace_back("--tested");
            arguments.push_back(in_minutes(*facts.battery->tested_time));
        }
        for (auto& [derating, arguments] : by_derating) {
            arguments.emplace_back("--derating");
            arguments.push_back(fmt::format("{:.6g} %", 100 * derating));
            all.add("battery-time", *device.label, arguments);
        }
    }
}

void add_outage(Workings& all, const Household& home) {
    const auto& travel = home.profile.evacuation->travel_time;
    if (!home.outage.power || !travel.given()) return;
    Arguments arguments{"--power", in_minutes(*home.outage.power), "--travel", written(travel)};
    if (home.outage.oxygen_needed && home.outage.oxygen) {
        arguments.emplace_back("--oxygen");
        arguments.push_back(in_minutes(*home.outage.oxygen));
    }
    arguments.emplace_back("--reserve");
    arguments.push_back(in_minutes(threshold::kLeaveReserve));
    all.add("outage-timeline", "", arguments);
}

void add_cylinders(Workings& all, const Household& home) {
    const auto flow = highest_oxygen_flow(home);
    if (!flow) return;
    for (const OxygenSource& source : home.profile.oxygen->sources) {
        if (!source.kind.is(OxygenSourceKind::cylinder)) continue;
        const auto& gauge = source.gauge.given() ? source.gauge : source.full;
        if (!gauge.given()) continue;
        Arguments arguments{"--gauge", written(gauge), "--flow",
                            fmt::format("{:.6g} L/min", flow->in(unit::L_per_min))};
        if (source.reserve.given()) arguments.insert(arguments.end(), {"--residual", written(source.reserve)});
        if (source.contents.given() && source.full.given()) {
            const double factor = (*source.contents).in(unit::L) / (*source.full).in(unit::psi);
            arguments.insert(arguments.end(), {"--factor", fmt::format("{:.3f} L/psi", factor)});
        } else if (source.size.given() && source.country.given()) {
            arguments.insert(arguments.end(), {"--size", written(source.size), "--country", written(source.country)});
        } else {
            continue;
        }
        all.add("cylinder-time", source.label.or_else(""), arguments);
    }
}

void add_airway(Workings& all, const Household& home) {
    if (home.neck_tube == nullptr) return;
    const NeckTube& tube = *home.neck_tube;
    const auto& catheter = home.profile.suction->catheter_size;
    if (catheter.given() && tube.inner_diameter.given())
        all.add("catheter-fit", "",
                {"--catheter", written(catheter), "--inner-diameter", written(tube.inner_diameter)});
    if (tube.last_changed.given() && tube.change_interval.given())
        all.add("next-due-date", "", {"--last", written(tube.last_changed), "--every", written(tube.change_interval)});
}

}  // namespace

std::vector<Working> workings(const Household& home) {
    Workings all{home.on};
    add_body(all, home);
    for (const DerivedPrescription& rx : home.prescriptions) {
        add_pressures(all, rx);
        add_breath(all, rx, home);
        add_alarms(all, rx);
        add_volume_alarms(all, rx);
    }
    add_rescue(all, home);
    add_airway(all, home);
    add_batteries(all, home);
    add_cylinders(all, home);
    add_outage(all, home);
    return all.take();
}

}  // namespace ventfolio
