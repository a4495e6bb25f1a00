#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "rules/field_index.hpp"
#include "rules/rule_book.hpp"

namespace ventfolio {

/// Anything of a profile that a finding can point at.
struct Spot {
    const void* address;
    bool absent;  ///< its key is not written
    Spot(const FieldBase& field) : address{&field}, absent{field.state == FieldState::absent} {}
    Spot(const GroupBase& group) : address{&group}, absent{group.state == FieldState::absent} {}
    Spot(const ListBase& list) : address{&list}, absent{list.state == FieldState::absent} {}
};

/// A finding being written by a check.
class Draft {
  public:
    Draft(std::vector<Finding>& findings, std::size_t at, const FieldIndex& index, const std::string& file)
        : findings_{&findings}, at_{at}, index_{&index}, file_{&file} {}

    /// A further field at odds, with a few words for its caret line. One that is not written is named there, since the
    /// caret stands at what is around it.
    Draft& also(Spot spot, std::string label = {});
    /// A number that led to the finding; replaces {name} in the rule's sentence.
    Draft& with(std::string name, std::string text);
    /// The field's value as it was written, or "not recorded", "none", "off".
    Draft& with(std::string name, const FieldBase& field);
    /// Only where what to do depends on the home.
    Draft& to_do(std::string text);

  private:
    Finding& finding() { return (*findings_)[at_]; }

    std::vector<Finding>* findings_;
    std::size_t at_;
    const FieldIndex* index_;
    const std::string* file_;
};

/// Where a check reports. Rule name, severity and sentence come from the book, so a check cannot contradict them.
class Report {
  public:
    Report(const RuleText& rule, const FieldIndex& index, const std::string& file, std::vector<Finding>& findings)
        : rule_{rule}, index_{index}, file_{file}, findings_{findings}, first_{findings.size()} {}

    /// Starts a finding at a field, group or list of the profile.
    Draft at(Spot spot, std::string label = {});
    /// Writes the sentences of all findings of this check.
    void finish();

  private:
    const RuleText& rule_;
    const FieldIndex& index_;
    const std::string& file_;
    std::vector<Finding>& findings_;
    std::size_t first_;
};

/// A field's value as it was written, for messages: "35 cmH2O", "2026-02-03", "off", "not recorded".
std::string written(const FieldBase& field, Zeros zeros = Zeros::drop);
/// A sentence of the book with its {names} replaced.
std::string filled(std::string_view sentence, const Finding& finding);

}  // namespace ventfolio
