#include "sheets/prescription_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "rules/tolerances.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kSettings = wall | folder | crew | wallet;

int places_of(const Decimal& number) {
    const std::string plain = number.plain();
    const auto point = plain.find('.');
    return point == std::string::npos ? 0 : static_cast<int>(plain.size() - point - 1);
}

/// Sums and differences of settings in their own unit, with as many digits as the settings have.
Measure added(const Measure& a, const Measure& b, double sign = 1) {
    const int places = std::max(places_of(a.number), places_of(b.number));
    return {Decimal::rounded(a.number.value() + sign * b.number.value(), places), a.unit};
}

/// Puts a value under its full, brief and number-only names.
void put(TemplateData::Object& data, const std::string& name, const std::optional<MeasureRange>& range,
         const Printer& printer) {
    for (const auto& [suffix, form] : {std::pair{"", UnitForm::full}, std::pair{"_brief", UnitForm::brief},
                                       std::pair{"_number", UnitForm::number_only}}) {
        data[name + suffix] = range
                                  ? TemplateData{calculated(name, kSettings, printer.range(*range, Zeros::drop, form))}
                                  : TemplateData{};
    }
}

struct Pressures {
    std::optional<MeasureRange> peak;
    std::optional<MeasureRange> support;
    std::optional<MeasureRange> ordered;  ///< of a volume-assured mode, as written
};

MeasureRange single(Measure measure) { return {measure, measure}; }

/// Both ways to read each pressure, so that total and above baseline are never mixed up.
Pressures pressures_of(const Prescription& order) {
    Pressures pressures;
    if (!order.baseline_pressure.given() || !order.pressure_reference.given()) return pressures;
    const Measure& baseline = order.baseline_pressure.measure();
    const bool above = *order.pressure_reference == PressureReference::above_baseline;
    const auto one_unit = [&](const Measure& other) { return other.unit.symbol == baseline.unit.symbol; };
    if (order.inspiratory_pressure.given() && one_unit(order.inspiratory_pressure.measure())) {
        const Measure& set = order.inspiratory_pressure.measure();
        pressures.peak = single(above ? added(set, baseline) : set);
        pressures.support = single(above ? set : added(set, baseline, -1));
    } else if (order.support_pressure.given() && one_unit(order.support_pressure.measure())) {
        pressures.support = single(order.support_pressure.measure());
        pressures.peak = single(added(order.support_pressure.measure(), baseline));
    }
    const VolumeAssured& assured = *order.volume_assured;
    if (order.volume_assured.given() && assured.pressure_least.given() && assured.pressure_most.given()) {
        const MeasureRange set{assured.pressure_least.measure(), assured.pressure_most.measure()};
        pressures.ordered = set;
        pressures.peak = above ? MeasureRange{added(set.from, baseline), added(set.to, baseline)} : set;
        pressures.support = above ? set : MeasureRange{added(set.from, baseline, -1), added(set.to, baseline, -1)};
    }
    return pressures;
}

/// The range that the log accepts: as measured at set-up; where that is one number, with the usual tolerance.
template <Dimension D>
std::optional<MeasureRange> accepted(const Field<Range<D>>& expected, const calc::Tolerance<D>& tolerance) {
    if (!expected.given()) return std::nullopt;
    const MeasureRange& range = expected.range();
    if (!(range.from == range.to)) return range;
    const auto band = calc::tolerance_band(expected.low(), tolerance);
    if (!band) return range;
    const int places = std::max(places_of(range.from.number), range.from.unit.symbol == "L/min" ? 1 : 0);
    return MeasureRange{{Decimal::rounded(band->low.in(range.from.unit), places), range.from.unit},
                        {Decimal::rounded(band->high.in(range.from.unit), places), range.from.unit}};
}

void add_accepted(TemplateData::Object& data, const Prescription& order, const Printer& printer) {
    const ExpectedValues& expected = *order.expected;
    put(data, "accepted_peak", accepted(expected.peak_pressure, kPressureTolerance), printer);
    put(data, "accepted_volume", accepted(expected.tidal_volume, kVolumeTolerance), printer);
    put(data, "accepted_minute_volume", accepted(expected.minute_volume, kMinuteVolumeTolerance), printer);
    put(data, "accepted_rate", accepted(expected.total_rate, kRateTolerance), printer);
    const bool leak = expected.leak.given();
    put(data, "accepted_leak", leak ? std::optional{expected.leak.range()} : std::nullopt, printer);
}

/// "8 PM to 9 AM", or the prescriber's own words where the hours are not fixed.
TemplateData used(const Prescription& order, const Printer& printer) {
    std::string text;
    for (const TimeOfUse& time : order.when_used) {
        if (!time.hours.given()) continue;
        text += text.empty() ? "" : fmt::format(" {} ", printer.words().at("range.and"));
        text += printer.span(*time.hours);
    }
    if (text.empty() && order.when_note.given()) text = *order.when_note;
    if (text.empty()) return {};
    return calculated("used", kSettings, plain_parts(sentence_start(text)));
}

/// The breathing bag that hangs where this prescription is used: on the chair by day, else at the bed.
const BreathingBag* bag_for(const Household& home, const DerivedPrescription& one) {
    if (!home.profile.emergency_equipment.given()) return nullptr;
    const BreathingBag* at_bed = nullptr;
    for (const BreathingBag& bag : home.profile.emergency_equipment->breathing_bags) {
        if (bag.at.is(BagPlace::bed) && at_bed == nullptr) at_bed = &bag;
        if (bag.at.is(BagPlace::chair) && !one.covers_asleep) return &bag;
    }
    return at_bed;
}

TemplateData bag_place(const Household& home, const DerivedPrescription& one, const Printer& printer) {
    const BreathingBag* bag = bag_for(home, one);
    if (bag == nullptr) return {};
    const std::string place =
        bag->place.given() ? *bag->place : printer.choice("at", std::get<Choice>(bag->at.value()).word);
    return calculated("bag_place", kSettings, plain_parts(place));
}

/// A heater reads within two degrees of its target. Common practice, no source.
constexpr double kTemperatureTolerance = 2;

void add_temperature(TemplateData::Object& data, const Prescription& order, const Printer& printer) {
    std::optional<MeasureRange> range;
    if (order.humidity.given() && order.humidity->temperature.given()) {
        const Measure& target = order.humidity->temperature.measure();
        const int places = places_of(target.number);
        range = MeasureRange{{Decimal::rounded(target.number.value() - kTemperatureTolerance, places), target.unit},
                             {Decimal::rounded(target.number.value() + kTemperatureTolerance, places), target.unit}};
    }
    put(data, "accepted_temperature", range, printer);
}

struct Holder {
    const Device* device;
    const Slot* slot;
};

/// The units that hold a prescription: first the one by the bed for sleep or the one on the chair for the day, the
/// backup last.
std::vector<Holder> holders(const Household& home, const Prescription& order, bool for_sleep) {
    std::vector<Holder> found;
    for (const Device& device : home.profile.devices)
        for (const Slot& slot : device.slots)
            if (order.id.given() && slot.prescription.is(*order.id)) found.push_back({&device, &slot});
    std::ranges::stable_sort(found, {}, [&](const Holder& holder) {
        const bool in_place = (for_sleep ? holder.device->at_bed : holder.device->on_chair).or_else(false);
        return std::pair{!in_place, holder.device->is_backup.or_else(false)};
    });
    return found;
}

TemplateData text_of(const char* name, const Field<std::string>& field) {
    if (!field.given()) return {};
    // "Unit A" and "slot 1" are names: they do not end a line in the middle.
    return calculated(name, kSettings, plain_parts(with_replaced(*field, " ", kNoBreakSpace)));
}

void add_units(TemplateData::Object& data, const Household& home, const DerivedPrescription& one) {
    const std::vector<Holder> all = holders(home, *one.order, one.covers_asleep);
    data["unit"] = all.empty() ? TemplateData{} : text_of("unit", all.front().device->label);
    data["slot"] = all.empty() ? TemplateData{} : text_of("slot", all.front().slot->slot);
    TemplateData::Items spares;
    for (std::size_t at = 1; at < all.size(); ++at) {
        TemplateData::Object spare;
        spare["unit"] = text_of("unit", all[at].device->label);
        spare["slot"] = text_of("slot", all[at].slot->slot);
        spares.emplace_back(std::move(spare));
    }
    data["has_spare_unit"] = !spares.empty();
    data["spare_unit"] = all.size() > 1 ? text_of("unit", all[1].device->label) : TemplateData{};
    data["spare_slot"] = all.size() > 1 ? text_of("slot", all[1].slot->slot) : TemplateData{};
    data["spare_units"] = std::move(spares);
    data["main_unit"] = data["unit"];
}

/// How the hose set of this place is drawn.
void add_hookup(TemplateData::Object& data, const DerivedPrescription& one, const Household& home) {
    const Prescription& order = *one.order;
    const std::vector<Holder> all = holders(home, order, one.covers_asleep);
    const bool rides = !all.empty() && all.front().device->on_chair.or_else(false);
    const bool in_chair = rides && !one.covers_asleep;
    data["in_chair"] = in_chair;
    data["on_wall_power"] = !in_chair || home.profile.batteries.is_none();
    const bool given = home.profile.oxygen.given() && home.profile.oxygen->use.given();
    const bool no_flow = order.oxygen.is_none() || (order.oxygen->flow.given() && !one.oxygen_flow);
    const bool fraction = order.oxygen->fraction.given();
    data["oxygen_here"] = given && (!no_flow || fraction);
    const bool to_mask = order.interface->kind.is(InterfaceKind::mask);
    const bool vented = to_mask && order.interface->mask.given() && order.interface->mask->vented.or_else(false);
    data["vented"] = vented;
    data["port_in_hose"] = order.circuit->kind.is(CircuitKind::passive) && !vented;
}

TemplateData::Object derived(TemplateData::Object data, const DerivedPrescription& one, const Household& home,
                             const Printer& printer) {
    const Prescription& order = *one.order;
    const Pressures pressures = pressures_of(order);
    const bool ranged = pressures.ordered.has_value();
    put(data, "peak", ranged ? std::nullopt : pressures.peak, printer);
    put(data, "peak_range", ranged ? pressures.peak : std::nullopt, printer);
    put(data, "support", pressures.support, printer);
    put(data, "pressure_range", pressures.ordered, printer);
    put(data, "any_peak", pressures.peak, printer);
    add_accepted(data, order, printer);
    add_units(data, home, one);
    data["tag"] = order.place.given() ? TemplateData{calculated("tag", kSettings, plain_parts(capitals(*order.place)))}
                                      : TemplateData{};
    data["used"] = used(order, printer);
    data["oxygen_on"] = one.oxygen_flow.has_value();
    add_hookup(data, one, home);
    data["sleeping"] = one.covers_asleep;
    data["closed"] = one.closed;
    data["bag_place"] = bag_place(home, one, printer);
    add_temperature(data, order, printer);
    return data;
}

/// What one card says about the other places.
TemplateData::Items others_of(const TemplateData::Items& all, std::size_t self) {
    TemplateData::Items others;
    for (std::size_t at = 0; at < all.size(); ++at)
        if (at != self) others.push_back(all[at]);
    return others;
}

}  // namespace

TemplateData with_derived(const TemplateData& prescriptions, const Household& home, const Printer& printer) {
    TemplateData::Items items;
    for (std::size_t at = 0; at < home.prescriptions.size(); ++at)
        items.emplace_back(derived(*(*prescriptions.items())[at].object(), home.prescriptions[at], home, printer));
    TemplateData::Items with_others = items;
    for (std::size_t at = 0; at < items.size(); ++at) (*with_others[at].object())["others"] = others_of(items, at);
    return with_others;
}

}  // namespace ventfolio
