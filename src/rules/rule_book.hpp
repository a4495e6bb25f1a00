#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
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
    overlay,     ///< found where templates of a clinic or a translation are compared with the built-in ones
    document,    ///< a check over a finished sheet, in sheets/checks
    layout,      ///< found while a finished sheet is set on its pages
    acceptance,  ///< the list of accepted findings, after everything else
    update,      ///< a profile beside that of the packet that it follows, in revisions.cpp
};

/// One function of rules/; declared by the build for every rule of the book that judges the profile.
using ProfileCheck = void (*)(const Household&, Report&);

/// What the fragments of an example are.
enum class ExampleForm : std::uint8_t {
    edits,          ///< of a demo home, one `path: value` or `remove: path` a line
    profile,        ///< the text of a profile
    words,          ///< of a template, below front matter that names title and audience
    template_file,  ///< a whole file that takes the place of a built-in one
};

/// A stretch of a fragment, written once or many times over.
struct ExamplePart {
    std::string_view text;
    std::size_t times = 1;
};
using ExampleFragment = std::span<const ExamplePart>;
/// A fragment with its repeats written out.
std::string written_out(ExampleFragment fragment);

/// The fragments that `explain` shows and the tests run.
struct RuleExample {
    ExampleForm form = ExampleForm::edits;
    std::string_view home;      ///< file name in profiles/ without its ending; empty for the text of a profile
    std::string_view on;        ///< print date, ISO 8601
    ExampleFragment fires;      ///< with which the rule reports
    ExampleFragment silent;     ///< the nearest with which it does not
    std::string_view sheet;     ///< of words: the sheet that they stand on
    std::string_view audience;  ///< and for whom that is
    std::string_view file;      ///< of a file: its path below templates/
    std::string_view edits;     ///< of words and files: what is changed in the home before
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
    RuleExample example;
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
