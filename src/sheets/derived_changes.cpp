#include <fmt/format.h>
#include <algorithm>

#include "rules/outage_plan.hpp"
#include "rules/workings.hpp"
#include "sheets/listed_change.hpp"
#include "sheets/printed_dates.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// The change notice lies in the folder; what is worked out of the settings and of the outage also hangs on walls.
constexpr Audiences kDerived = wall | folder;

/// Digits after the point on paper. The record of the checking shows more, for those who work it out again.
constexpr int kMostPlaces = 1;

/// One number of a home that nobody wrote down.
struct Fact {
    std::string name;          ///< key in the words' section `derived`
    std::string item;          ///< whose number it is: "bed", "Unit A"; empty: the home's
    std::string prescription;  ///< id
    Printer::Parts parts;
};

bool same_subject(const Fact& a, const Fact& b) {
    return a.name == b.name && a.prescription == b.prescription && (!a.prescription.empty() || a.item == b.item);
}

std::string text_of(const Printer::Parts& parts) {
    PrintedValue value;
    value.parts = parts;
    return value.text();
}

/// Collects what is worked out for one home and has a name in the words. What has none is behind the paper, not on it.
class Facts {
  public:
    Facts(const Household& home, const Printer& printer) : home_{home}, printer_{printer} {}

    std::vector<Fact> made() {
        for (const Working& working : workings(home_))
            for (const ShownResult& result : working.calculation.results) add(working, result);
        add_outage();
        return std::move(all_);
    }

  private:
    bool has_name(const std::string& name) const { return printer_.words().find("derived." + name).has_value(); }

    /// Of the two ways to say a pressure, the one that the order uses is told as what somebody wrote.
    static bool written_in_the_order(const std::string& name, const Prescription& order) {
        const bool total = order.inspiratory_pressure.given() && order.pressure_reference.is(PressureReference::total);
        if (name == "pressure-sums.peak") return total || order.peak_pressure.given();
        return name == "pressure-sums.support" && !total;
    }

    const DerivedPrescription* prescription_at(const std::string& about) const {
        const auto found = std::ranges::find_if(home_.prescriptions, [&](const DerivedPrescription& rx) {
            return !about.empty() && rx.order->place.is(about);
        });
        return found == home_.prescriptions.end() ? nullptr : &*found;
    }

    void add(const Working& working, const ShownResult& result) {
        const std::string name = fmt::format("{}.{}", working.calculation.calculator->name, result.result->name);
        if (!has_name(name)) return;
        const DerivedPrescription* rx = prescription_at(working.about);
        if (rx != nullptr && written_in_the_order(name, *rx->order)) return;
        all_.push_back({name, working.about, rx != nullptr ? rx->order->id.or_else("") : "", parts_of(result, rx)});
    }

    /// Pressures in the unit of the machine: nobody at the bed converts.
    static Measure in_own_unit(double number, const Unit& unit, int places, const DerivedPrescription* rx) {
        if (unit.dimension == Dimension::pressure && rx != nullptr && rx->order->baseline_pressure.given()) {
            const Unit& own = rx->order->baseline_pressure.measure().unit;
            return {Decimal::rounded(Pressure::of(number, unit).in(own), places), own};
        }
        return {Decimal::rounded(number, places), unit};
    }

    Printer::Parts number(double number, const ShownResult& result, const DerivedPrescription* rx) const {
        const int places = std::min(result.result->places, kMostPlaces);
        for (const Unit& unit : units_of(Dimension::pressure))
            if (unit.symbol == result.unit)
                return printer_.measure(in_own_unit(number, unit, places, rx), Zeros::drop, UnitForm::full);
        return printer_.number(Decimal::rounded(number, places), result.unit);
    }

    Printer::Parts parts_of(const ShownResult& result, const DerivedPrescription* rx) const {
        switch (result.result->form) {
            case Form::date:
                if (const auto date = Date::parse(result.text)) return plain_parts(printer_.date(*date));
                break;
            case Form::number: {
                Printer::Parts parts = number(result.numbers.front(), result, rx);
                if (result.numbers.size() < 2 || result.numbers.front() == result.numbers.back()) return parts;
                parts = printer_.number(Decimal::rounded(result.numbers.front(), kMostPlaces), "");
                parts.push_back({PrintedPart::Kind::word,
                                 fmt::format("{0}{1}{0}", kNoBreakSpace, printer_.words().at("range.to"))});
                for (PrintedPart& part : number(result.numbers.back(), result, rx)) parts.push_back(std::move(part));
                return parts;
            }
            case Form::ratio:
                return ratio(result);
            case Form::hours:
            case Form::word:
            case Form::measure:
                break;
        }
        return plain_parts(result.text);
    }

    /// "1:2.6".
    Printer::Parts ratio(const ShownResult& result) const {
        if (result.numbers.size() < 2) return plain_parts(result.text);
        const auto side = [&](double number) {
            return printed(Decimal::rounded(number, kMostPlaces), printer_.region().numbers, Zeros::drop);
        };
        return {{PrintedPart::Kind::number,
                 fmt::format("{}:{}", side(result.numbers.front()), side(result.numbers.back()))}};
    }

    void add_outage(std::string_view name, const std::string& item, Printer::Parts parts) {
        all_.push_back({fmt::format("outage.{}", name), item, "", std::move(parts)});
    }
    void add_time(std::string_view name, const std::string& item, PlanMinutes minutes) {
        add_outage(name, item, elapsed(minutes, printer_));
    }

    void add_outage() {
        const OutagePlan plan = outage_plan(home_);
        const Device* unit = home_.unit_at_bed();
        if (!plan.batteries.empty())
            add_time("power", unit != nullptr ? unit->label.or_else("") : "", plan.batteries.back().to);
        for (const SpareUnit& spare : plan.spares) add_time("spare", spare.label, spare.time);
        for (const BatteryFacts& facts : home_.outage.batteries)
            if (facts.counted)
                add_outage("share", facts.battery->label.or_else(""),
                           printer_.number(Decimal::rounded(100 * facts.derating, 0), unit::percent.unit.symbol));
        const OxygenSource* told = nullptr;
        for (const PlannedOxygen& planned : plan.oxygen) {
            if (planned.source != told) add_time("cylinder", planned.source->label.or_else(""), planned.each);
            told = planned.source;
        }
        if (!plan.oxygen.empty()) add_time("oxygen", "", plan.oxygen.back().to);
        if (plan.time_left) add_time("time-left", "", *plan.time_left);
        if (plan.leave_by)
            add_time("leave-by", "", *plan.leave_by);
        else if (plan.time_left)
            add_outage("leave-by", "", plain_parts(std::string{printer_.words().at("derived.leave_now")}));
    }

    const Household& home_;
    const Printer& printer_;
    std::vector<Fact> all_;
};

ListedChange change_of(const Fact* was, const Fact* now, const Printer& printer) {
    const Fact& either = now != nullptr ? *now : *was;
    const auto value = [](const Fact* fact, const char* name) {
        return fact == nullptr ? std::nullopt : std::optional{calculated(name, kDerived, fact->parts)};
    };
    ListedChange change;
    change.kind = ListedChange::Kind::derived;
    change.path = "calc." + either.name;
    change.prescription = either.prescription;
    const std::string label{printer.words().at("derived." + either.name)};
    change.label = calculated("changed-field", kDerived, plain_parts(sentence_start(label)));
    change.item =
        calculated("changed-item", kDerived, either.item.empty() ? Printer::Parts{} : plain_parts(either.item));
    change.was = value(was, "was");
    change.now = value(now, "now");
    return change;
}

}  // namespace

std::vector<ListedChange> derived_changes(const Household& was, const Household& now, const Printer& printer) {
    const std::vector<Fact> after = Facts{now, printer}.made();
    std::vector<Fact> before = Facts{was, printer}.made();
    std::vector<ListedChange> changes;
    for (const Fact& fact : after) {
        const auto same = std::ranges::find_if(before, [&](const Fact& other) { return same_subject(other, fact); });
        const bool known = same != before.end();
        if (!known || text_of(same->parts) != text_of(fact.parts))
            changes.push_back(change_of(known ? &*same : nullptr, &fact, printer));
        if (known) before.erase(same);
    }
    for (const Fact& fact : before) changes.push_back(change_of(&fact, nullptr, printer));
    return changes;
}

}  // namespace ventfolio
