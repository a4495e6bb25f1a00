#include "sheets/home_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "calc/safe_minutes.hpp"
#include "calc/squeeze_interval.hpp"
#include "rules/rule_book.hpp"
#include "sheets/alarm_data.hpp"
#include "sheets/care_data.hpp"
#include "sheets/home_parts.hpp"
#include "sheets/outage_data.hpp"
#include "sheets/prescription_data.hpp"
#include "sheets/profile_data.hpp"
#include "sheets/record_data.hpp"
#include "sheets/supply_data.hpp"
#include "sheets/switch_data.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Below this inner diameter a tube that came out may sound no pressure alarm. Source: Kun 2001 (bench study).
constexpr double kSmallTube = 6.0;

constexpr Audiences kRescue = wall | folder | crew | wallet;

TemplateData maybe(bool present, PrintedValue value) {
    return present ? TemplateData{std::move(value)} : TemplateData{};
}

void add_age(TemplateData::Object& data, const Household& home, const Printer& printer) {
    data["is_child"] = home.child;
    data["is_infant"] = home.infant;
    data["is_adult"] = !home.child;
    const auto age = printed_age(home, printer);
    data["age"] = age ? TemplateData{*age} : TemplateData{};
}

/// The three ways of being without the machine, and the minutes that paper promises.
void add_free_breathing(TemplateData::Object& data, const std::string& state, const Group<FreeBreathing>& free,
                        const Printer& printer) {
    const bool minutes = free.given() && free->kind.is(FreeTimeKind::minutes);
    const std::optional<int> safe = minutes && free->time ? calc::safe_free_minutes(*free->time) : std::optional<int>{};
    const bool hours = free.given() && free->kind.is(FreeTimeKind::hours);
    // Too few minutes to promise any, or nothing recorded: the paper speaks as for none.
    data[state + "_none"] = !hours && !safe;
    data[state + "_minutes"] = safe.has_value();
    data[state + "_hours"] = hours;
    data["alone_" + state] =
        maybe(safe.has_value(),
              calculated("alone_" + state, kRescue, printer.number(Decimal::whole(safe.value_or(0)), "min")));
}

void add_airway(TemplateData::Object& data, const Household& home) {
    const Airway& airway = *home.profile.airway;
    const bool open = airway.upper.is(UpperAirway::open) || airway.upper.is(UpperAirway::open_but_difficult);
    const bool blocked = airway.upper.is(UpperAirway::blocked) || airway.upper.is(UpperAirway::laryngectomy);
    data["mouth_open"] = home.neck_tube == nullptr || open;
    data["mouth_blocked"] = home.neck_tube != nullptr && blocked;
    data["mouth_unknown"] = home.neck_tube != nullptr && !open && !blocked;
    const auto allowed = [](const auto& group) { return group.given() && group->allowed.or_else(false); };
    const bool valve = home.neck_tube && allowed(home.neck_tube->speaking_valve);
    const bool cap = home.neck_tube && allowed(home.neck_tube->cap);
    data["valve_allowed"] = valve;
    data["cap_allowed"] = cap;
    data["valve_or_cap"] = valve || cap;
    data["cuffed"] = home.neck_tube != nullptr && home.neck_tube->cuff.given();
    const bool fresh = opening_is_fresh(home);
    data["opening_fresh"] = fresh;
    data["small_tube"] = home.neck_tube && home.neck_tube->inner_diameter.given() &&
                         *home.neck_tube->inner_diameter < Length::of(kSmallTube, unit::mm);
    data["opening_healed"] = home.neck_tube != nullptr && !fresh;
}

PrintedValue oxygen_limit(const char* name, const Field<Fraction>& limit, const Printer& printer) {
    const FieldInfo asked{.key = name, .on = kRescue, .ask = "prescriber"};
    if (!limit.given()) return printer.not_recorded(asked, "oxygen." + std::string{name});
    return calculated(name, kRescue, printer.measure(limit.measure(), Zeros::drop, UnitForm::full));
}

/// The oxygen orders of the home under names that a prescription's own oxygen does not hide.
void add_oxygen(TemplateData::Object& data, const Household& home, const Printer& printer) {
    const Oxygen& oxygen = *home.profile.oxygen;
    data["oxygen_as_needed"] = oxygen.use.is(OxygenUse::as_needed);
    data["oxygen_call_below"] = oxygen_limit("call_below", oxygen.call_below, printer);
    data["oxygen_emergency_below"] = oxygen_limit("emergency_below", oxygen.emergency_below, printer);
    PrintedValue goal = oxygen_limit("goal_low", oxygen.goal_low, printer);
    if (oxygen.goal_low.given() && oxygen.goal_high.given())
        goal = calculated(
            "oxygen-goal", kRescue,
            printer.range({oxygen.goal_low.measure(), oxygen.goal_high.measure()}, Zeros::drop, UnitForm::full));
    data["oxygen_goal"] = std::move(goal);
    data["oxygen_entry"] =
        oxygen.entry.given()
            ? calculated("oxygen-entry", kRescue,
                         plain_parts(printer.choice("entry", std::get<Choice>(oxygen.entry.value()).word)))
            : printer.not_recorded({.key = "entry", .on = kRescue, .ask = "equipment_provider"}, "oxygen.entry");
}

/// Source and way of the oxygen, for the drawing of the hose set.
void add_oxygen_way(TemplateData::Object& data, const Household& home) {
    const Oxygen& oxygen = *home.profile.oxygen;
    const auto enters = [&](OxygenEntry entry) { return oxygen.entry.is(entry); };
    data["oxygen_to_inlet"] = enters(OxygenEntry::device_inlet);
    data["oxygen_to_outlet"] = enters(OxygenEntry::outlet_adapter);
    data["oxygen_to_mask"] = enters(OxygenEntry::mask_port);
    const bool listed = !oxygen.sources.empty();
    const auto first_is = [&](OxygenSourceKind kind) { return listed && oxygen.sources.begin()->kind.is(kind); };
    data["from_concentrator"] = first_is(OxygenSourceKind::concentrator);
    data["from_cylinder"] = first_is(OxygenSourceKind::cylinder);
    data["from_liquid"] = first_is(OxygenSourceKind::liquid);
    const bool way =
        enters(OxygenEntry::device_inlet) || enters(OxygenEntry::outlet_adapter) || enters(OxygenEntry::mask_port);
    data["oxygen_way_known"] = way && listed && oxygen.sources.begin()->kind.given();
}

void add_equipment(TemplateData::Object& data, const Household& home, const Printer& printer) {
    const Oxygen& oxygen = *home.profile.oxygen;
    const bool has_oxygen = home.profile.oxygen.given() && oxygen.use.given();
    data["has_oxygen"] = has_oxygen;
    const bool for_bag = home.profile.emergency_equipment.given() &&
                         home.profile.emergency_equipment->oxygen_for_bag.or_else(false) && oxygen.bag_flow.given();
    data["bag_oxygen"] =
        maybe(has_oxygen && for_bag,
              calculated("bag_oxygen", kRescue,
                         for_bag ? printer.measure(oxygen.bag_flow.measure(), Zeros::drop, UnitForm::spoken)
                                 : Printer::Parts{}));
    data["bag_oxygen_brief"] =
        maybe(has_oxygen && for_bag,
              calculated("bag_oxygen", kRescue,
                         for_bag ? printer.measure(oxygen.bag_flow.measure(), Zeros::drop, UnitForm::full)
                                 : Printer::Parts{}));
    data["has_exchanger"] = has_exchanger(home);
    data["uses_neck_tube"] = home.neck_tube != nullptr;
    data["uses_mask"] = home.uses(InterfaceKind::mask);
    data["uses_mouthpiece"] = home.uses(InterfaceKind::mouthpiece);
    data["many_places"] = home.prescriptions.size() > 1;
    const Device* backup = nullptr;
    for (const Device& device : home.profile.devices)
        if (device.is_backup.or_else(false)) backup = &device;
    data["has_backup"] = backup != nullptr;
    data["no_batteries"] = home.profile.batteries.is_none();
    data["backup_label"] =
        maybe(backup && backup->label.given(),
              calculated("backup_label", kRescue, plain_parts(backup ? backup->label.or_else("") : "")));
}

/// The shortest interval that any prescription asks for: more breaths are the safer error while help comes.
TemplateData squeeze_for_home(const Household& home, const Printer& printer) {
    std::optional<BreathRate> fastest;
    for (const DerivedPrescription& one : home.prescriptions)
        if (one.rate && (!fastest || *one.rate > *fastest)) fastest = one.rate;
    return squeeze_data(home, fastest, printer);
}

}  // namespace

std::optional<PrintedValue> printed_age(const Household& home, const Printer& printer) {
    if (!home.age) return std::nullopt;
    const bool in_months = home.age->years < 2;
    const int count = in_months ? 12 * home.age->years + home.age->months : home.age->years;
    return calculated("age", folder | crew | wallet,
                      printer.number(Decimal::whole(count), in_months ? "months" : "years"));
}

TemplateData squeeze_data(const Household& home, std::optional<BreathRate> rate, const Printer& printer) {
    if (!home.age) return {};
    auto interval = calc::squeeze_interval(calc::age_group(*home.age), rate);
    if (!interval) interval = calc::squeeze_interval(calc::age_group(*home.age), std::nullopt);
    if (!interval) return {};
    const Measure from{Decimal::whole(interval->from), unit::s.unit};
    const Measure to{Decimal::whole(interval->to), unit::s.unit};
    return calculated("squeeze-interval", kRescue, printer.range({from, to}, Zeros::drop, UnitForm::full));
}

namespace {

/// The prescription that a stranger is told of: the one for sleep, else the first.
TemplateData main_prescription(const Household& home, const TemplateData& prescriptions) {
    const auto for_sleep = std::ranges::find_if(home.prescriptions, &DerivedPrescription::covers_asleep);
    const auto at = for_sleep == home.prescriptions.end() ? 0 : for_sleep - home.prescriptions.begin();
    const TemplateData::Items& items = *prescriptions.items();
    return items.empty() ? TemplateData{} : items[static_cast<std::size_t>(at)];
}

/// A cuff without an amount to fill prints as such: a row left out would read as no cuff. A foam cuff takes none.
void add_cuff(TemplateData::Object& data, const Household& home, const Printer& printer) {
    data["cuff_not_recorded"] = TemplateData{};
    if (home.neck_tube == nullptr || !home.neck_tube->cuff.given() || home.neck_tube->cuff.is(Cuff::foam)) return;
    const CuffOrder& order = *home.neck_tube->cuff_order;
    if (order.pressure.given() || order.volume.given()) return;
    data["cuff_not_recorded"] = printer.not_recorded(
        {.key = "cuff_order", .on = wall | folder | crew, .ask = "prescriber"}, "airway.neck_tube.cuff_order");
}

/// The lowest oxygen level that a check accepts: the low end of the goal, else of what is normal.
TemplateData oxygen_least(const Household& home, const Group<NormalOxygenLevel>& normal, const Printer& printer) {
    const Oxygen& oxygen = *home.profile.oxygen;
    const Measure* least = nullptr;
    if (home.profile.oxygen.given() && oxygen.goal_low.given())
        least = &oxygen.goal_low.measure();
    else if (normal.given() && normal->level.given())
        least = &normal->level.range().from;
    if (least == nullptr) return {};
    return calculated("oxygen-least", wall | folder | crew, printer.measure(*least, Zeros::drop, UnitForm::full));
}

/// Where the person sleeps: the card that someone sleepy goes to.
TemplateData sleep_tag(const Household& home) {
    for (const DerivedPrescription& one : home.prescriptions)
        if (one.covers_asleep && one.order->place.given())
            return calculated("tag", wall | folder | crew | wallet, plain_parts(capitals(*one.order->place)));
    return {};
}

void add_for_crew(TemplateData::Object& data, const Household& home) {
    data["has_port"] = std::ranges::any_of(home.prescriptions, [](const DerivedPrescription& one) {
        return one.order->circuit.given() && one.order->circuit->exhalation_port.given();
    });
    const Feeding& feeding = *home.profile.feeding;
    data["has_feeding_tube"] = home.profile.feeding.given() && !feeding.route.is(FeedingRoute::mouth);
    data["no_allergies"] = home.profile.allergies.is_none() || home.profile.allergies->substances.is_none();
    data["directive_unknown"] = !home.profile.directive->status.given();
}

}  // namespace

namespace {

std::string with_underscores(std::string_view name) { return with_replaced(std::string{name}, "-", "_"); }

void add_gaps(TemplateData::Object& data, std::span<const Finding> findings) {
    for (const std::string_view sheet : sheet_names()) data["gaps_on_" + with_underscores(sheet)] = false;
    for (const RuleText& rule : rule_book()) {
        if (rule.bold_on.empty()) continue;
        const bool found = std::ranges::any_of(findings, [&](const Finding& one) { return one.rule == rule.name; });
        data["gap_" + with_underscores(rule.name)] = found;
        if (!found) continue;
        for (const std::string_view sheet : rule.bold_on) data["gaps_on_" + with_underscores(sheet)] = true;
    }
}

}  // namespace

TemplateData home_data(const Household& home, const Printer& printer, std::span<const Finding> findings) {
    TemplateData::Object data = profile_data(home.profile, printer);
    data["outage"] = outage_data(data, home, printer);
    data["care"] = care_data(data, home, printer);
    data["stock"] = supply_data(data, home, printer);
    add_age(data, home, printer);
    add_free_breathing(data, "awake", home.profile.dependence->unaided_awake, printer);
    add_free_breathing(data, "asleep", home.profile.dependence->unaided_asleep, printer);
    add_airway(data, home);
    add_equipment(data, home, printer);
    add_oxygen(data, home, printer);
    add_oxygen_way(data, home);
    add_for_crew(data, home);
    add_cuff(data, home, printer);
    data["oxygen_least_awake"] = oxygen_least(home, home.profile.baseline->oxygen_level_awake, printer);
    data["oxygen_least_asleep"] = oxygen_least(home, home.profile.baseline->oxygen_level_asleep, printer);
    data["sleep_tag"] = sleep_tag(home);
    add_gaps(data, findings);
    add_alarm_data(data, home, printer);
    data["squeeze"] = squeeze_for_home(home, printer);
    data["prescriptions"] = with_derived(data.at("prescriptions"), home, printer);
    add_record_data(data, home, printer);
    data["main"] = main_prescription(home, data.at("prescriptions"));
    data["in_use"] = names_in_use(data.at("prescriptions"));
    data["differs"] = differing_names(data.at("prescriptions"));
    return data;
}

}  // namespace ventfolio
