#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "rules/masking.hpp"
#include "units/calendar.hpp"

/// Findings as data. The form is published: report_schema.json, printed by `ventfolio schema --of check`.
namespace ventfolio {

/// What stands behind the findings, so that values of private fields can be left out of what is written.
struct Privacy {
    std::span<const SourceText> sources;
    AudiencesOf audiences;
};

/// {"findings": [{rule, severity, accepted, message, marks, numbers, why, to_do, source, stops}],
/// "counts": {"refuse": 1, …}}. Lines and columns count from 1; begin and end are byte offsets. Without `privacy`
/// everything is shown.
nlohmann::ordered_json report_json(std::span<const Finding> findings, const Privacy* privacy = nullptr);

/// One file that `check` was given.
struct FileReport {
    enum class State {
        ready,    ///< nothing stops it
        stopped,  ///< findings stop it
        unusable  ///< the file cannot be read
    };
    std::string file;
    State state = State::ready;
    std::string message;  ///< why it cannot be used
    std::vector<Finding> findings;
    SourceText source;
};

/// A run of `check`.
struct CheckReport {
    Date on;
    bool strict = false;
    bool unmasked = false;  ///< values of private fields are shown
    int status = 0;         ///< exit status of the program
    std::vector<FileReport> files;
};

/// The whole run: on, strict, masked, status, counts, a summary of each file, and all findings with their file.
nlohmann::ordered_json check_json(const CheckReport& report);

std::string_view name_of(FileReport::State state);

}  // namespace ventfolio
