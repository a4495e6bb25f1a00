#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "profile/place.hpp"

namespace ventfolio {

/// What a finding does to the paper. See DEVELOPERS.md, "Findings".
enum class Severity {
    note,         ///< terminal only
    warn,         ///< prints, and stands on the verification sheet
    acknowledge,  ///< every page is marked "not yet checked" until a clinician accepts it
    refuse,       ///< the sheets that the rule stops are not made
};

std::string_view name_of(Severity severity);

/// A place that a finding points at, with the few words printed under the caret line ("above the limit of 31 cmH2O").
struct Mark {
    std::string file;
    Place place;
    std::string field;  ///< path of the field, "prescriptions.0.alarms.high_pressure"; empty for syntax faults
    std::string label;
};

/// Something that does not agree, as data. The texts that do not depend on the home (why, what to do, source) stand in
/// the rule book under the rule's name.
struct Finding {
    std::string rule;
    Severity severity = Severity::refuse;
    std::vector<Mark> marks;  ///< the first is where the message points
    std::string message;      ///< one sentence a therapist understands, with this home's numbers in it
    std::string to_do;        ///< only where it depends on the home; otherwise the rule book's
    std::vector<std::pair<std::string, std::string>> numbers;  ///< the values that led to it, by name
    bool accepted = false;                                     ///< a clinician accepted it, with these very numbers
};

}  // namespace ventfolio
