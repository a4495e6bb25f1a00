#pragma once

#include <span>

#include "rules/household.hpp"
#include "sheets/listed_change.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What differs between two revisions of a home.
struct HomeChange {
    const Household& was;
    const Household& now;
    std::span<const ListedChange> edited;
    std::span<const ListedChange> derived;
};

/// What a notice of a change tells about the person and the machines, under the name `change`.
///
/// A change has `label`, `item` (which of several), `was` and `now`; either is missing where nothing was or is there.
///   dials       something is set on a machine: a setting or an alarm limit
///   places      the prescriptions in which a machine is set or shows something else: all that a prescription has,
///               `is_added` where the home did not have it, `settings` (with the alarm limits; `any_settings`),
///               `expected_change` (what the screen should show; `any_expected`) and `machines` that hold it: `unit`,
///               `slot`
///   gone        prescriptions that the home has no more: `tag` and the `machines` that held them
///   newly_held  machines and slots that hold an order that they did not hold: `tag`, `unit`, `slot`; all of it is to
///               be set there; `any_newly_held`
///   untouched   prescriptions in which no machine changes
///   also        every other change, and what people at home go by that follows from the changes; `any_also`
///   retests     batteries to be timed again: `label`; `any_retests`, `retest_by`, the first day by which
///   goes_on     any of `places` and `newly_held`; touches_machines: any of these and `gone`
///
/// Left out is what a notice says of itself: the revision, its dates, who checked it, and the marks of the revision on
/// prescriptions and slots. And what may not stand in the folder.
void add_change_data(TemplateData::Object& data, const HomeChange& change, const Printer& printer);

}  // namespace ventfolio
