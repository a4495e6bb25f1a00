#include "sheets/supply_data.hpp"

#include <fmt/format.h>

#include "calc/supply_quantity.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kStock = folder;

/// Two weeks beyond what is in use are kept of what is hard to replace; a tenth of what is changed gets lost or wet.
/// Common practice, no source.
constexpr int kDays = 14;
constexpr double kSpare = 0.10;
/// A month of supplies is counted as short, so that a day needs more. Common practice, no source.
constexpr double kDaysOfMonth = 30;

class StockData {
  public:
    StockData(const TemplateData::Object& profile, const Household& home, const Printer& printer)
        : profile_{profile}, home_{home}, printer_{printer} {}

    TemplateData made() {
        data_["days"] = calculated("stock-days", kStock, printer_.number(Decimal::whole(kDays), "days"));
        data_["spare"] = calculated("stock-spare", kStock, printer_.number(Decimal::whole(10), "%"));
        data_["items"] = items();
        add_intervals();
        TemplateData::Items backups;
        for (std::size_t at = 0; at < home_.profile.devices.size(); ++at)
            if (home_.profile.devices[at].is_backup.or_else(false))
                backups.emplace_back(*profile_.at("devices").items()->at(at).object());
        data_["backups"] = std::move(backups);
        for (const char* name : {"items", "by_interval", "backups"})
            data_["has_" + std::string{name}] = !data_.at(name).items()->empty();
        return data_;
    }

  private:
    TemplateData pieces(double per_day, double spare) const {
        const auto needed = calc::supply_quantity({.days = kDays, .pieces_per_day = per_day, .spare = spare});
        if (!needed) return {};
        return calculated("needed", kStock, printer_.number(Decimal::whole(needed->pieces), ""));
    }

    TemplateData::Items items() const {
        TemplateData::Items items;
        for (std::size_t at = 0; at < home_.profile.supplies.size(); ++at) {
            const Supply& supply = home_.profile.supplies[at];
            TemplateData::Object item = *profile_.at("supplies").items()->at(at).object();
            item["needed"] =
                supply.per_month ? pieces((*supply.per_month).in(unit::pieces) / kDaysOfMonth, 0) : TemplateData{};
            items.emplace_back(std::move(item));
        }
        return items;
    }

    static double days_of(const Interval& interval) {
        const Date any = *Date::of(2001, 2, 1);  // the shortest month: more pieces are the safer error
        return days_between(any, interval.after(any));
    }

    void add(const char* kind, const Field<Interval>& every, TemplateData tag, TemplateData position) {
        if (!every) return;
        TemplateData::Object item;
        for (const char* name : {"is_tube", "is_exchanger", "is_filter"}) item[name] = std::string_view{name} == kind;
        item["every"] = printer_.print(every, {.key = "change_interval", .on = kStock}, "calc.change-interval");
        item["needed"] = pieces(1 / days_of(*every), kSpare);
        item["tag"] = std::move(tag);
        item["position"] = std::move(position);
        by_interval_.emplace_back(std::move(item));
    }

    void add_intervals() {
        if (home_.neck_tube != nullptr) add("is_tube", home_.neck_tube->change_interval, {}, {});
        for (const DerivedPrescription& one : home_.prescriptions) add_prescription(*one.order);
        if (home_.profile.humidity_plan.given()) {
            const auto& away = home_.profile.humidity_plan->off_ventilator;
            if (away.given() && away->moisture_exchanger.given())
                add("is_exchanger", away->moisture_exchanger->change_interval, {}, {});
        }
        data_["by_interval"] = by_interval_;
    }

    void add_prescription(const Prescription& order) {
        TemplateData tag;
        if (order.place) tag = calculated("tag", wall | folder | crew | wallet, plain_parts(capitals(*order.place)));
        if (order.humidity.given() && order.humidity->moisture_exchanger.given())
            add("is_exchanger", order.humidity->moisture_exchanger->change_interval, tag, {});
        if (!order.circuit.given()) return;
        for (const Filter& filter : order.circuit->filters) {
            TemplateData position;
            if (filter.position)
                position = calculated(
                    "filter-position", kStock,
                    plain_parts(printer_.choice("position", std::get<Choice>(filter.position.value()).word)));
            add("is_filter", filter.change_interval, tag, std::move(position));
        }
    }

    const TemplateData::Object& profile_;
    const Household& home_;
    const Printer& printer_;
    TemplateData::Items by_interval_;
    TemplateData::Object data_;
};

}  // namespace

TemplateData supply_data(const TemplateData::Object& profile, const Household& home, const Printer& printer) {
    return StockData{profile, home, printer}.made();
}

}  // namespace ventfolio
