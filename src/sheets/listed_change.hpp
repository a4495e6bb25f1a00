#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rules/household.hpp"
#include "sheets/printed_value.hpp"
#include "sheets/printer.hpp"

namespace ventfolio {

/// One thing that differs between two revisions of a home, in the words of the paper.
struct ListedChange {
    enum class Kind {
        setting,   ///< dialled on a machine for one prescription
        alarm,     ///< an alarm limit of one prescription, dialled too
        expected,  ///< what the screen of one prescription should show
        order,     ///< of the order itself: revision, dates, who checked
        other,     ///< of the rest of the profile
        derived,   ///< worked out by a calculator or a plan, not written by anyone
    };
    Kind kind = Kind::other;
    /// Of the field in the new profile, of a field that is gone in the old one; "calc.NAME" for what is derived.
    std::string path;
    std::string prescription;         ///< its id, for a part of one; else empty
    PrintedValue label;               ///< "Breaths per minute"
    PrintedValue item;                ///< which of several: "bed", "Unit A"; without parts for what a home has once
    std::optional<PrintedValue> was;  ///< nothing where nothing was recorded
    std::optional<PrintedValue> now;  ///< nothing where nothing is recorded any more

    /// Where all of it may stand. Some fields may stand on no paper at all: a change of them is told to nobody.
    Audiences audiences() const;
};

/// What somebody has edited, in the order of a profile. An item that is new or gone is one change for each of its
/// fields.
std::vector<ListedChange> edited_changes(const Household& was, const Household& now, const Printer& printer);

/// What came out otherwise because of it, kind `derived`: numbers of calculators and plans that stand on paper or that
/// a rule watches, such as the time between squeezes or the hours on batteries.
std::vector<ListedChange> derived_changes(const Household& was, const Household& now, const Printer& printer);

/// "Breaths per minute, bed: was 14, now 16"; "Cuff: was not recorded, now air".
std::string in_one_line(const ListedChange& change, const Printer& printer);

}  // namespace ventfolio
