#include "sheets/outage_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "rules/outage_plan.hpp"
#include "rules/thresholds.hpp"
#include "sheets/printed_dates.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kPlan = wall | folder;

PrintedValue words_value(std::string name, std::string text) {
    return calculated(std::move(name), kPlan, plain_parts(std::move(text)));
}

/// Makes the data of one home, so that profile, home and printer need not be handed on.
class OutageData {
  public:
    OutageData(const TemplateData::Object& profile, const Household& home, const Printer& printer)
        : profile_{profile}, home_{home}, printer_{printer}, plan_{outage_plan(home)} {}

    TemplateData made() {
        add_sources();
        add_times();
        add_equipment();
        data_["by_clock"] = by_clock();
        return data_;
    }

  private:
    TemplateData time(const char* name, std::optional<PlanMinutes> minutes) const {
        if (!minutes) return {};
        return calculated(name, kPlan, elapsed(*minutes, printer_));
    }

    TemplateData clock(std::optional<PlanMinutes> minutes) const {
        if (!minutes || !home_.outage_start) return {};
        return words_value("clock", day_and_time(after_minutes(*home_.outage_start, *minutes), printer_));
    }

    /// The names that an entry of a list of the profile has already.
    template <class T>
    TemplateData::Object entry_of(const TemplateData& list, const List<T>& entries, const T& entry) const {
        const auto at = static_cast<std::size_t>(&entry - &entries[0]);
        return *list.items()->at(at).object();
    }
    TemplateData::Object entry_of(const Battery& battery) const {
        return entry_of(profile_.at("batteries"), home_.profile.batteries, battery);
    }

    void add_sources() {
        data_["batteries"] = batteries();
        TemplateData::Items not_counted;
        for (const BatteryFacts* facts : plan_.not_counted) not_counted.emplace_back(entry_of(*facts->battery));
        data_["not_counted"] = std::move(not_counted);
        data_["spares"] = spares();
        data_["has_spares"] = !plan_.spares.empty();
        data_["cylinders"] = cylinders();
        data_["no_battery"] = plan_.batteries.empty() && plan_.not_counted.empty();
        data_["has_sources"] =
            !plan_.batteries.empty() || !plan_.not_counted.empty() || !plan_.spares.empty() || !plan_.oxygen.empty();
        data_["has_cylinders"] = !plan_.oxygen.empty();
    }

    TemplateData::Items batteries() const {
        TemplateData::Items items;
        for (const PlannedBattery& planned : plan_.batteries) {
            TemplateData::Object item = entry_of(*planned.facts->battery);
            item["number"] = words_value("use", fmt::format("{}", items.size() + 1));
            item["from"] = time("battery-from", planned.from);
            item["to"] = time("battery-to", planned.to);
            item["is_last_source"] = &planned == &plan_.batteries.back();
            item["lowered"] = planned.facts->lowered;
            const auto& retest = planned.facts->retest_by;
            item["retest_by"] = retest ? TemplateData{words_value("retest-by", day_of_week_and_date(*retest, printer_))}
                                       : TemplateData{};
            items.emplace_back(std::move(item));
        }
        return items;
    }

    TemplateData::Items spares() const {
        TemplateData::Items items;
        PlanMinutes at = plan_.batteries.empty() ? 0 : plan_.batteries.back().to;
        for (const SpareUnit& spare : plan_.spares) {
            TemplateData::Object item;
            item["label"] = words_value("spare-unit", with_replaced(spare.label, " ", kNoBreakSpace));
            item["time"] = time("spare-time", spare.time);
            item["from"] = time("spare-from", at);
            item["to"] = time("spare-to", at + spare.time);
            at += spare.time;
            items.emplace_back(std::move(item));
        }
        return items;
    }

    std::string numbers(const PlannedOxygen& planned) const {
        if (planned.first == planned.last) return fmt::format("{}", planned.first);
        return fmt::format("{}{}{}{}{}", planned.first, kNoBreakSpace, printer_.words().at("range.to"), kNoBreakSpace,
                           planned.last);
    }

    TemplateData::Items cylinders() const {
        TemplateData::Items items;
        for (const PlannedOxygen& planned : plan_.oxygen) {
            TemplateData::Object item =
                entry_of(profile_.at("oxygen").object()->at("sources"), home_.profile.oxygen->sources, *planned.source);
            item["numbers"] = words_value("cylinder-number", numbers(planned));
            item["several"] = planned.first != planned.last;
            item["each"] = time("cylinder-time", planned.each);
            item["from"] = time("cylinder-from", planned.from);
            item["to"] = time("cylinder-to", planned.to);
            item["even"] = items.size() % 2 == 1;
            item["is_first_of_kind"] = items.empty() || (&planned - 1)->source != planned.source;
            item["kept_back"] = kept_back(*planned.source);
            item["counted_from"] = counted_from(*planned.source);
            items.emplace_back(std::move(item));
        }
        return items;
    }

    TemplateData pressure(const char* name, const Measure& measure) const {
        return calculated(name, kPlan, printer_.measure(measure, Zeros::drop, UnitForm::full));
    }
    TemplateData kept_back(const OxygenSource& source) const {
        if (source.kind.is(OxygenSourceKind::liquid)) return {};
        if (source.reserve) return pressure("cylinder-reserve", source.reserve.measure());
        const auto usual = static_cast<long long>(threshold::kCylinderReserve.in(unit::psi));
        return pressure("cylinder-reserve", {Decimal::whole(usual), unit::psi.unit});
    }
    TemplateData counted_from(const OxygenSource& source) const {
        if (source.gauge) return pressure("cylinder-gauge", source.gauge.measure());
        if (source.full) return pressure("cylinder-gauge", source.full.measure());
        return {};
    }

    TemplateData percent(const char* name, double share) const {
        return calculated(
            name, kPlan,
            printer_.number(Decimal::rounded(100 * share, 0), unit::percent.unit.symbol, Zeros::drop, UnitForm::full));
    }

    /// The highest and the lowest share that a battery at the bed counts with; one of them where they are alike.
    void add_shares() {
        const auto share = [](const PlannedBattery& planned) { return planned.facts->derating; };
        const bool lowered = std::ranges::any_of(plan_.batteries, [](const auto& one) { return one.facts->lowered; });
        data_["any_lowered"] = lowered;
        data_["share"] = data_["lowered_share"] = TemplateData{};
        if (plan_.batteries.empty()) return;
        const auto [least, most] = std::ranges::minmax(plan_.batteries, {}, share);
        data_["share"] = percent("battery-share", share(most));
        if (lowered) data_["lowered_share"] = percent("battery-share-lowered", share(least));
    }

    void add_times() {
        add_shares();
        const bool timed = !plan_.batteries.empty();
        data_["power"] = time("power", timed ? std::optional{plan_.batteries.back().to} : std::nullopt);
        data_["time_left"] = time("time-left", plan_.time_left);
        data_["leave_by"] = time("leave-by", plan_.leave_by);
        data_["leave_now"] = !plan_.leave_by;
        data_["half"] = time("half", plan_.half);
        const auto& reserve = home_.outage.leave_reserve;
        // To the next minute: a way that takes longer is the safer error.
        data_["reserve"] =
            time("leave-reserve", reserve ? std::optional{ceil_pieces(reserve->in(unit::min))} : std::nullopt);
        data_["oxygen_ends_first"] = plan_.oxygen_ends_first;
        data_["leave_at"] = clock(plan_.leave_by);
        data_["started"] = home_.outage_start ? TemplateData{words_value("power-failed", started())} : TemplateData{};
    }

    std::string started() const {
        return fmt::format("{}, {}", day_of_week_and_date(home_.outage_start->date, printer_),
                           printer_.time(home_.outage_start->time));
    }

    TemplateData::Items loads(LoadKeep keep) const {
        TemplateData::Items items;
        for (const Load& load : home_.profile.loads)
            if (load.keep.is(keep)) items.emplace_back(entry_of(profile_.at("loads"), home_.profile.loads, load));
        return items;
    }

    void add_equipment() {
        data_["switch_off"] = loads(LoadKeep::switched_off);
        data_["keep_on"] = loads(LoadKeep::always);
        data_["keep_if_possible"] = loads(LoadKeep::if_possible);
        for (const char* name : {"switch_off", "keep_on", "keep_if_possible"})
            data_["has_" + std::string{name}] = !data_.at(name).items()->empty();
        data_["heater"] = std::ranges::any_of(home_.prescriptions, [](const DerivedPrescription& one) {
            const auto& humidity = one.order->humidity;
            return humidity.given() &&
                   (humidity->kind.is(HumidityKind::heated) || humidity->kind.is(HumidityKind::built_in));
        });
        const auto& sources = home_.profile.oxygen->sources;
        data_["concentrator"] = std::ranges::any_of(
            sources, [](const OxygenSource& one) { return one.kind.is(OxygenSourceKind::concentrator); });
        const Device* unit = home_.unit_at_bed();
        data_["unit"] = unit && unit->label
                            ? TemplateData{words_value("unit", with_replaced(*unit->label, " ", kNoBreakSpace))}
                            : TemplateData{};
        add_flow();
    }

    void add_flow() {
        data_["flow"] = TemplateData{};
        data_["one_flow"] = false;
        const auto highest = highest_oxygen_flow(home_);
        if (!highest) return;
        bool alike = true;
        for (const DerivedPrescription& one : home_.prescriptions) {
            if (!one.oxygen_flow) continue;
            alike = alike && *one.oxygen_flow == *highest;
            if (*one.oxygen_flow != *highest || !one.order->oxygen->flow) continue;
            data_["flow"] =
                calculated("highest-oxygen-flow", kPlan,
                           printer_.measure(one.order->oxygen->flow.measure(), Zeros::drop, UnitForm::full));
        }
        data_["one_flow"] = alike;
    }

    struct ClockStep {
        PlanMinutes at;
        TemplateData::Object data;
    };

    ClockStep step(PlanMinutes at, const char* kind) const {
        ClockStep step{at, {}};
        for (const char* name : {"is_swap", "is_takeover", "is_cylinder", "is_half", "is_call", "is_leave", "is_last"})
            step.data[name] = std::string_view{name} == kind;
        step.data["after"] = time("after", at);
        step.data["clock"] = clock(at);
        for (const char* name : {"number", "next", "used"}) step.data[name] = TemplateData{};
        return step;
    }

    void add_swaps(std::vector<ClockStep>& steps) const {
        for (std::size_t at = 1; at < plan_.batteries.size(); ++at) {
            const Battery& next = *plan_.batteries[at].facts->battery;
            ClockStep swap =
                step(plan_.batteries[at].from, next.kind.is(BatteryKind::internal) ? "is_takeover" : "is_swap");
            swap.data["number"] = words_value("swap", fmt::format("{}", at));
            swap.data["next"] = entry_of(next).at("label");
            swap.data["used"] = entry_of(*plan_.batteries[at - 1].facts->battery).at("label");
            steps.push_back(std::move(swap));
        }
        if (!home_.outage.oxygen_needed) return;
        for (std::size_t at = 1; at < plan_.oxygen.size(); ++at) {
            ClockStep change = step(plan_.oxygen[at].from, "is_cylinder");
            change.data["next"] = words_value("cylinder-number", numbers(plan_.oxygen[at]));
            change.data["used"] = words_value("cylinder-number", numbers(plan_.oxygen[at - 1]));
            steps.push_back(std::move(change));
        }
    }

    TemplateData::Items by_clock() const {
        std::vector<ClockStep> steps;
        add_swaps(steps);
        if (plan_.half) steps.push_back(step(*plan_.half, "is_half"));
        if (plan_.call_provider) steps.push_back(step(*plan_.call_provider, "is_call"));
        if (plan_.leave_by) steps.push_back(step(*plan_.leave_by, "is_leave"));
        if (plan_.call_emergency) steps.push_back(step(*plan_.call_emergency, "is_last"));
        std::ranges::stable_sort(steps, {}, &ClockStep::at);
        // What would be done after the last source has ended is no step.
        std::erase_if(steps, [&](const ClockStep& one) { return plan_.time_left && one.at > *plan_.time_left; });
        TemplateData::Items items;
        for (ClockStep& one : steps) items.emplace_back(std::move(one.data));
        return items;
    }

    const TemplateData::Object& profile_;
    const Household& home_;
    const Printer& printer_;
    OutagePlan plan_;
    TemplateData::Object data_;
};

}  // namespace

TemplateData outage_data(const TemplateData::Object& profile, const Household& home, const Printer& printer) {
    return OutageData{profile, home, printer}.made();
}

}  // namespace ventfolio
