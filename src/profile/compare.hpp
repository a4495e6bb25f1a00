#pragma once

#include <optional>
#include <string>
#include <vector>

#include "profile/field.hpp"
#include "profile/profile.hpp"

namespace ventfolio {

/// A field, group or list as one of two profiles has it.
struct ComparedPart {
    std::string path;  ///< in that profile: "prescriptions.0.rate"
    FieldInfo info;
    FieldState state = FieldState::absent;  ///< `none` also for a field of a group that is `none`; likewise `unknown`
    bool is_field = true;                   ///< no group or list
    const FieldBase* field = nullptr;       ///< where state is that of the field itself; lives as long as its profile
};

/// Something that two profiles do not say alike.
struct Difference {
    std::string path;                 ///< in the new profile; in the old one where `gone`
    bool gone = false;                ///< the new profile does not have what the field stood in
    std::optional<ComparedPart> was;  ///< nothing where nothing was recorded
    std::optional<ComparedPart> now;  ///< nothing where nothing is recorded any more
};

/// What `now` says otherwise than `was`, in the order of a profile; what is gone from a list stands after its items.
///
/// Compared is what a person would read: a quantity by digits and unit as written ("0.5 L" and "500 mL" differ, "16"
/// and "16.0" do not, unless the field keeps its zeros), a text by its letters. Absent, unknown, none, off and given
/// are five answers. A group or list is a difference of its own only where no field in it tells of it.
///
/// Items of a list are the same item when their first given fields agree ("P1", "Unit A"); of several with one name
/// first those that are alike throughout, then in order. What is left over on both sides at one index is one item with
/// a new name. So an item put in front is one addition, and shifts nothing.
///
/// Both profiles must outlive the result.
///
/// Example: R1 and R2 of a home -> {prescriptions.0.rate, was 14 breaths/min, now 16 breaths/min}, …
std::vector<Difference> compare(const Profile& was, const Profile& now);

}  // namespace ventfolio
