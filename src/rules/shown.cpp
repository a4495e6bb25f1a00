#include "rules/shown.hpp"

#include <cmath>

#include "rules/report.hpp"
#include "units/print.hpp"

namespace ventfolio {
namespace {

std::string with_unit(double value, int places, std::string_view unit) {
    return shown(value, places) + " " + std::string{unit};
}

}  // namespace

std::string shown(double value, int places) { return Decimal::rounded(value, places).plain(); }

std::string shown_pressure(Pressure pressure, const Prescription& order) {
    const Field<Pressure>* stated[] = {&order.baseline_pressure, &order.inspiratory_pressure, &order.support_pressure,
                                       &order.alarms->high_pressure};
    Unit as = unit::cmH2O.unit;
    for (const Field<Pressure>* field : stated) {
        if (!field->given()) continue;
        as = field->measure().unit;
        break;
    }
    return with_unit(pressure.in(as), 1, as.symbol);
}

std::string shown_volume(Volume volume) { return with_unit(volume.in(unit::mL), 0, "mL"); }
std::string shown_flow(Flow flow) { return with_unit(flow.in(unit::L_per_min), 1, "L/min"); }
std::string shown_seconds(Duration time) { return with_unit(time.in(unit::s), 2, "s"); }
std::string shown_minutes(Duration time) { return std::to_string(floor_minutes(time)) + " min"; }
std::string shown_per_weight(double per_kilogram) { return with_unit(per_kilogram, 1, "mL/kg"); }
std::string shown_share(double share) { return with_unit(share * 100, 0, "%"); }
std::string shown_mass(Mass mass) { return with_unit(mass.in(unit::kg), 1, "kg"); }
std::string shown_length(Length length) { return with_unit(length.in(unit::mm), 1, "mm"); }

std::string shown_free_time(const Group<FreeBreathing>& free) {
    if (free.is_none()) return "none";
    if (!free.given()) return "not recorded";
    return written(free->time);
}

std::string shown_mode(const Prescription& order) {
    return order.mode ? std::string{Words<Mode>::words[static_cast<std::size_t>(*order.mode)]} : "not recorded";
}

}  // namespace ventfolio
