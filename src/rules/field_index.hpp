#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

#include "profile/audience.hpp"
#include "profile/field.hpp"

namespace ventfolio {

struct Profile;

/// What a field, group or list of a profile is called and where it stands.
struct FieldRecord {
    std::string path;  ///< "prescriptions.0.alarms.high_pressure"
    Place place;       ///< its own, else of the nearest thing around it that has one
    Audiences on = nobody;
    Zeros zeros = Zeros::drop;         ///< keep: a size as its box reads, "8.0 mm"
    const FieldBase* field = nullptr;  ///< null for groups and lists
};

/// Finds the record of a field from the field itself. Refers to the profile, which must outlive it and not change. The
/// profile is walked when the first record is asked for: most homes have few findings, or none.
class FieldIndex {
  public:
    explicit FieldIndex(const Profile& profile) : profile_{profile} {}

    /// `thing` is a field, group or list of the profile (an element of a list has no address of its own: its first
    /// field shares it).
    const FieldRecord& of(const void* thing) const;

  private:
    void walk() const;

    const Profile& profile_;
    mutable std::unordered_map<const void*, FieldRecord> records_;
};

/// Audiences of a field by its path in any profile ("prescriptions.0.rate"): what the dictionary declares. nobody for
/// an unknown path.
Audiences audiences_of(std::string_view path);

}  // namespace ventfolio
