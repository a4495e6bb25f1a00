#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "profile/finding.hpp"

namespace ventfolio {

class Report;
struct Household;

/// What a rule looks at.
enum class Judges : std::uint8_t {
    reading,     ///< found while the profile is read: syntax, units, ranges, missing fields
    profile,     ///< a check in rules/ over the finished profile
    markup,      ///< found while a template is read
    document,    ///< a check over a finished sheet, in sheets/checks
    layout,      ///< found while a finished sheet is set on its pages
    acceptance,  ///< the list of accepted findings, after everything else
};

/// One function of rules/; declared by the build for every rule of the book that judges the profile.
using ProfileCheck = void (*)(const Household&, Report&);

/// The fragment that `explain` shows and the tests run: edits of a demo home, one `path: value` or `remove: path` a
/// line; for a rule of finished sheets, the words of a template.
struct RuleExample {
    std::string_view home;      ///< file name in profiles/ without its ending
    std::string_view on;        ///< print date, ISO 8601
    std::string_view fires;     ///< edits, or words, with which the rule reports
    std::string_view silent;    ///< the nearest with which it does not
    std::string_view sheet;     ///< of a fragment of a template: the sheet that it stands on
    std::string_view audience;  ///< and for whom that is
    std::string_view edits;     ///< and what is changed in the home before
};

/// Everything about a rule that does not depend on a home. Baked from src/rules/book at build time.
struct RuleText {
    std::string_view name;     ///< "high-pressure-alarm-below-peak"
    std::string_view subject;  ///< book file: "alarms"
    Judges judges = Judges::profile;
    Severity severity = Severity::refuse;
    std::span<const std::string_view> stops;    ///< sheets that are not made; groups are spelt out
    bool stops_judged_sheet = false;            ///< stops the sheet that was judged, whichever it is
    std::span<const std::string_view> bold_on;  ///< sheets on which the gap itself prints in bold, accepted or not
    std::string_view says;                      ///< one sentence with {names} of the finding's numbers in it
    std::string_view why;
    std::string_view to_do;
    std::string_view source;
    std::string_view formula;  ///< may be empty
    RuleExample example;       ///< empty home: none
    ProfileCheck check = nullptr;
};

/// A number that is common practice only.
struct Threshold {
    std::string_view name;
    std::string_view value;
    std::string_view unit;
    std::string_view source;
    std::span<const std::string_view> rules;  ///< names of the rules that use it
};

/// All rules, by subject, in the order of the book.
std::span<const RuleText> rule_book();
/// The rule with this name; null when there is none.
const RuleText* find_rule(std::string_view name);
/// All thresholds that are common practice. The checks use them through "rules/thresholds.hpp", which the build writes.
std::span<const Threshold> thresholds();
/// Names of all sheets that a rule can stop.
std::span<const std::string_view> sheet_names();

}  // namespace ventfolio
