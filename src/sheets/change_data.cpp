#include "sheets/change_data.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <vector>

#include "sheets/printed_dates.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Kind = ListedChange::Kind;

bool is_dialled(const ListedChange& change) { return change.kind == Kind::setting || change.kind == Kind::alarm; }

/// The notice names the new revision, its dates and its people anyway; a prescription and a slot are marked with it.
bool tells_of_the_revision_itself(const ListedChange& change) {
    const std::string_view path = change.path;
    if (change.kind == Kind::order) return !path.starts_with("orders.prescriber");
    const std::string_view key = path.substr(path.rfind('.') + 1);
    return key == "changed_in" || key == "measured_on" || key == "measured_by" ||
           (path.starts_with("devices.") && (key == "revision" || key == "slot"));
}

/// A notice is paper for the folder: what may not stand there is told by none.
bool may_be_told(const ListedChange& change) { return (change.audiences() & folder) != 0; }

/// What people at home go by. The other numbers are for those who check the order: they stand on the checking record,
/// with how they were worked out.
bool is_for_the_home(const ListedChange& derived) {
    for (const std::string_view about : {"calc.outage.power", "calc.outage.spare", "calc.outage.leave-by",
                                         "calc.outage.oxygen", "calc.squeeze-interval.", "calc.safe-minutes.",
                                         "calc.next-due-date.", "calc.breath-timing.ratio", "calc.outage.cylinder"})
        if (derived.path.starts_with(about)) return true;
    return false;
}

TemplateData maybe(const std::optional<PrintedValue>& value) { return value ? TemplateData{*value} : TemplateData{}; }

TemplateData item_of(const ListedChange& change) {
    TemplateData::Object item;
    item["label"] = change.label;
    item["item"] = change.item.parts.empty() ? TemplateData{} : TemplateData{change.item};
    item["was"] = maybe(change.was);
    item["now"] = maybe(change.now);
    return item;
}

template <typename Test>
TemplateData::Items chosen(std::span<const ListedChange> changes, Test test) {
    TemplateData::Items items;
    for (const ListedChange& change : changes)
        if (may_be_told(change) && test(change)) items.push_back(item_of(change));
    return items;
}

TemplateData text_of(const char* name, const Field<std::string>& field) {
    if (!field.given()) return {};
    return calculated(name, folder, plain_parts(*field));
}

struct Held {
    const Device* device;
    const Slot* slot;
};

/// Each machine and slot that holds a prescription, in the order of the profile.
std::vector<Held> holders(const Household& home, const Prescription& order) {
    std::vector<Held> all;
    for (const Device& device : home.profile.devices)
        for (const Slot& slot : device.slots)
            if (order.id.given() && slot.prescription.is(*order.id)) all.push_back({&device, &slot});
    return all;
}

bool same_place(const Held& one, const Held& other) {
    return one.device->label.or_else("") == other.device->label.or_else("") &&
           one.slot->slot.or_else("") == other.slot->slot.or_else("");
}

TemplateData::Object machine(const Held& held) {
    TemplateData::Object item;
    item["unit"] = text_of("unit", held.device->label);
    item["slot"] = text_of("slot", held.slot->slot);
    return item;
}

TemplateData::Items machines_with(const Household& home, const Prescription& order) {
    TemplateData::Items machines;
    for (const Held& held : holders(home, order)) machines.emplace_back(machine(held));
    return machines;
}

std::string tag_of(const Prescription& order) {
    return capitals(order.place.or_else(order.label.or_else(order.id.or_else(""))));
}

TemplateData tag_data(const Prescription& order) { return calculated("tag", folder, plain_parts(tag_of(order))); }

bool is_in(const Household& home, const Prescription& order) {
    return order.id.given() && home.prescription(*order.id) != nullptr;
}

class ChangeData {
  public:
    ChangeData(const HomeChange& change, const Printer& printer) : change_{change}, printer_{printer} {}

    TemplateData::Object object(const TemplateData::Items& prescriptions) const {
        TemplateData::Items places;
        TemplateData::Items untouched;
        for (std::size_t at = 0; at < change_.now.prescriptions.size(); ++at) {
            const Prescription& order = *change_.now.prescriptions[at].order;
            TemplateData::Object item = *prescriptions[at].object();
            item["tag"] = tag_data(order);
            if (shows_on_a_machine(order))
                places.emplace_back(place(std::move(item), order));
            else
                untouched.emplace_back(std::move(item));
        }
        TemplateData::Object data;
        data["dials"] = std::ranges::any_of(
            change_.edited, [&](const ListedChange& one) { return is_dialled(one) && in_a_table(one); });
        add_retests(data);
        data["places"] = std::move(places);
        data["untouched"] = std::move(untouched);
        TemplateData::Items ended = gone();
        TemplateData::Items taken_over = newly_held();
        data["any_newly_held"] = !taken_over.empty();
        data["goes_on"] = !data.at("places").items()->empty() || !taken_over.empty();
        data["touches_machines"] = !data.at("places").items()->empty() || !ended.empty() || !taken_over.empty();
        data["gone"] = std::move(ended);
        data["newly_held"] = std::move(taken_over);
        TemplateData::Items others = also();
        data["any_also"] = !others.empty();
        data["also"] = std::move(others);
        return data;
    }

  private:
    bool is_of(const ListedChange& one, const Prescription& order) const { return order.id.is(one.prescription); }

    bool shows_on_a_machine(const Prescription& order) const {
        return std::ranges::any_of(change_.edited, [&](const ListedChange& one) {
            return is_of(one, order) && (is_dialled(one) || (one.kind == Kind::expected && !skipped(one)));
        });
    }

    TemplateData::Object place(TemplateData::Object item, const Prescription& order) const {
        item["is_added"] = !is_in(change_.was, order);
        TemplateData::Items settings;
        for (const Kind kind : {Kind::setting, Kind::alarm})
            std::ranges::move(
                chosen(change_.edited, [&](const ListedChange& one) { return one.kind == kind && is_of(one, order); }),
                std::back_inserter(settings));
        TemplateData::Items expected = chosen(change_.edited, [&](const ListedChange& one) {
            return one.kind == Kind::expected && is_of(one, order) && !skipped(one);
        });
        item["any_settings"] = !settings.empty();
        item["any_expected"] = !expected.empty();
        item["settings"] = std::move(settings);
        item["expected_change"] = std::move(expected);
        item["machines"] = machines_with(change_.now, order);
        return item;
    }

    void add_retests(TemplateData::Object& data) const {
        TemplateData::Items items;
        std::optional<Date> by;
        for (const BatteryFacts& facts : change_.now.outage.batteries) {
            if (!facts.lowered) continue;
            TemplateData::Object item;
            item["label"] = text_of("battery", facts.battery->label);
            items.emplace_back(std::move(item));
            if (facts.retest_by && (!by || *facts.retest_by < *by)) by = facts.retest_by;
        }
        data["any_retests"] = !items.empty();
        data["retests"] = std::move(items);
        data["retest_by"] =
            by ? TemplateData{calculated("retest-by", folder, plain_parts(day_of_week_and_date(*by, printer_)))}
               : TemplateData{};
    }

    TemplateData::Items gone() const {
        TemplateData::Items items;
        for (const DerivedPrescription& one : change_.was.prescriptions) {
            if (is_in(change_.now, *one.order)) continue;
            TemplateData::Object item;
            item["tag"] = tag_data(*one.order);
            item["machines"] = machines_with(change_.was, *one.order);
            items.emplace_back(std::move(item));
        }
        return items;
    }

    /// A machine that takes over an order as it is has every number of it to be set, although none has changed.
    TemplateData::Items newly_held() const {
        TemplateData::Items items;
        for (const DerivedPrescription& one : change_.now.prescriptions) {
            const std::vector<Held> before =
                one.order->id.given() ? holders(change_.was, *one.order) : std::vector<Held>{};
            for (const Held& held : holders(change_.now, *one.order)) {
                const bool known =
                    std::ranges::any_of(before, [&](const Held& other) { return same_place(held, other); });
                if (known || !is_in(change_.was, *one.order)) continue;
                TemplateData::Object item = machine(held);
                item["tag"] = tag_data(*one.order);
                items.emplace_back(std::move(item));
            }
        }
        return items;
    }

    TemplateData::Items also() const {
        const auto listed = [&](const ListedChange& one) {
            return !in_a_table(one) && !of_one_gone(one) && !skipped(one);
        };
        TemplateData::Items items = chosen(change_.edited, listed);
        std::ranges::move(chosen(change_.derived, is_for_the_home), std::back_inserter(items));
        return items;
    }

    static bool skipped(const ListedChange& one) { return tells_of_the_revision_itself(one); }

    /// In the table of a prescription.
    bool in_a_table(const ListedChange& one) const {
        return (is_dialled(one) || one.kind == Kind::expected) && change_.now.prescription(one.prescription) != nullptr;
    }

    /// A prescription that the home has no more is said once, not setting by setting.
    bool of_one_gone(const ListedChange& one) const {
        return change_.now.prescription(one.prescription) == nullptr &&
               change_.was.prescription(one.prescription) != nullptr;
    }

    const HomeChange& change_;
    const Printer& printer_;
};

}  // namespace

void add_change_data(TemplateData::Object& data, const HomeChange& change, const Printer& printer) {
    data["change"] = ChangeData{change, printer}.object(*data.at("prescriptions").items());
}

}  // namespace ventfolio
