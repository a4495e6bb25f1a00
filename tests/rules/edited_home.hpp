#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "profile/read_profile.hpp"
#include "rules/judge.hpp"

/// A demo home with a few edits, read and judged as `check` would do it.
namespace ventfolio::testing {

/// The text of profiles/<home>.yaml.
std::string demo_home(std::string_view home);
/// The text with edits, one a line: "path: value" sets (or adds) a value, "remove: path" takes one out.
std::string edited(const std::string& yaml, std::string_view edits);

/// The path of every value, group, list and item in a text.
std::vector<std::string> paths_of(const std::string& yaml);

struct Judged {
    SourceText source;
    ReadResult read;
    std::vector<Finding> findings;  ///< of the reader and of the rules

    bool reports(std::string_view rule) const;
    const Finding* finding(std::string_view rule) const;
    std::vector<std::string> rules() const;  ///< names, each once, sorted
};

Judged judged(std::string name, std::string text, std::string_view on);
Judged judged_home(std::string_view home, std::string_view edits, std::string_view on = "2026-02-03");
/// A demo home with edits beside the same home without them: judged as an update of its packet.
Judged judged_update(std::string_view home, std::string_view edits, std::string_view on = "2026-02-03");
/// "rule (severity): message" of all findings, for CAPTURE.
std::string summary(const std::vector<Finding>& findings);

}  // namespace ventfolio::testing
