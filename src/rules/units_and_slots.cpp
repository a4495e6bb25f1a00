#include <fmt/format.h>
#include <algorithm>

#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

void conflict(Report& report, const FieldBase& at, const FieldBase* other, const Device* unit, const Slot* slot,
              std::string what) {
    auto finding = report.at(at);
    if (other != nullptr) finding.also(*other);
    std::string where = unit ? written(unit->label) : std::string{"The units"};
    if (slot != nullptr) where += " slot " + written(slot->slot);
    finding.with("where", std::move(where)).with("conflict", std::move(what));
}

void check_slots(const Household& home, const Device& unit, Report& report) {
    for (std::size_t at = 0; at < unit.slots.size(); ++at) {
        const Slot& slot = unit.slots[at];
        if (slot.prescription && home.prescription(*slot.prescription) == nullptr)
            conflict(report, slot.prescription, nullptr, &unit, &slot,
                     fmt::format("no prescription is called {}", *slot.prescription));
        for (std::size_t before = 0; before < at; ++before)
            if (slot.slot && unit.slots[before].slot.is(*slot.slot))
                conflict(report, slot.slot, &unit.slots[before].slot, &unit, &slot, "two prescriptions stand in it");
    }
}

template <class Items, class Get>
void check_twice(const Items& items, Get get, std::string_view what, Report& report) {
    for (std::size_t at = 0; at < items.size(); ++at)
        for (std::size_t before = 0; before < at; ++before) {
            const Field<std::string>& one = get(items[at]);
            const Field<std::string>& other = get(items[before]);
            if (one && other.is(*one))
                conflict(report, one, &other, nullptr, nullptr, fmt::format("two {} are called {}", what, *one));
        }
}

/// A slot that holds a prescription, and the unit it belongs to.
struct Held {
    const Device* unit;
    const Slot* slot;
};

std::vector<Held> holders_of(const Household& home, const Prescription& order) {
    std::vector<Held> held;
    for (const Device& unit : home.profile.devices)
        for (const Slot& slot : unit.slots)
            if (order.id && slot.prescription.is(*order.id) && slot.revision) held.push_back({&unit, &slot});
    return held;
}

}  // namespace

namespace check {

void unit_slot_conflict(const Household& home, Report& report) {
    for (const Device& unit : home.profile.devices) check_slots(home, unit, report);
    for (const DerivedPrescription& rx : home.prescriptions) {
        const bool held = std::ranges::any_of(home.profile.devices,
                                              [&](const Device& unit) { return Household::runs(unit, *rx.order); });
        if (rx.order->id && !held)
            conflict(report, rx.order->id, nullptr, nullptr, nullptr, fmt::format("no slot holds {}", *rx.order->id));
    }
    check_twice(
        home.profile.devices, [](const Device& unit) -> auto& { return unit.label; }, "units", report);
    check_twice(
        home.profile.prescriptions, [](const Prescription& rx) -> auto& { return rx.id; }, "prescriptions", report);
    check_twice(
        home.profile.prescriptions, [](const Prescription& rx) -> auto& { return rx.label; }, "prescriptions", report);
}

/// The place word is all that a sheet shows of a prescription at a distance: its tag, its bookmark, the answer to
/// "Right sheet for now?".
void two_prescriptions_at_one_place(const Household& home, Report& report) {
    const auto& prescriptions = home.profile.prescriptions;
    for (std::size_t at = 0; at < prescriptions.size(); ++at)
        for (std::size_t before = 0; before < at; ++before) {
            const Field<std::string>& place = prescriptions[at].place;
            if (!place || !prescriptions[before].place.is(*place)) continue;
            report.at(place)
                .also(prescriptions[before].place)
                .with("rx_a", prescriptions[before].id)
                .with("rx_b", prescriptions[at].id)
                .with("place", *place);
        }
}

void backup_unit_lacks_prescription(const Household& home, Report& report) {
    for (const Device& unit : home.profile.devices) {
        if (!unit.is_backup.is(true)) continue;
        for (const DerivedPrescription& rx : home.prescriptions) {
            if (!rx.dependent || Household::runs(unit, *rx.order)) continue;
            report.at(unit.slots, "no slot with " + rx.name)
                .also(rx.order->id)
                .with("unit", unit.label)
                .with("rx", rx.name);
        }
    }
}

void units_hold_different_revisions(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Field<Revision>& changed = rx.order->changed_in;
        const std::vector<Held> held = holders_of(home, *rx.order);
        for (std::size_t at = 0; at < held.size(); ++at) {
            const Field<Revision>& revision = held[at].slot->revision;
            const bool differs = at > 0 && *revision != *held.front().slot->revision;
            const bool old = changed && *revision < *changed;
            if (!differs && !old) continue;
            auto finding = report.at(revision, "set and read back at " + revision->text());
            if (differs)
                finding.also(held.front().slot->revision);
            else
                finding.also(changed, "changed since");
            finding.with("rx", rx.name).with("unit_a", held[at].unit->label).with("revision_a", revision);
            finding.with("unit_b", differs ? written(held.front().unit->label) : std::string{"the order"})
                .with("revision_b", differs ? written(held.front().slot->revision) : written(changed));
            break;
        }
    }
}

}  // namespace check
}  // namespace ventfolio
