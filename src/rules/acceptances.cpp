#include "rules/acceptances.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "rules/explain.hpp"
#include "rules/judge.hpp"
#include "rules/rule_book.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

bool has_figure(const std::pair<std::string, std::string>& number) {
    return number.first != "rx" && number.second.find_first_of("0123456789") != std::string::npos;
}

/// The finding points at something of the prescription with this id.
bool is_about(const Finding& finding, const Household& home, const std::string& id) {
    for (std::size_t at = 0; at < home.profile.prescriptions.size(); ++at) {
        if (!home.profile.prescriptions[at].id.is(id)) continue;
        const std::string prefix = fmt::format("prescriptions.{}.", at);
        return std::ranges::any_of(finding.marks, [&](const Mark& mark) { return mark.field.starts_with(prefix); });
    }
    return false;
}

const std::string* number_of(const Finding& finding, std::string_view name) {
    const auto found = std::ranges::find(finding.numbers, name, &std::pair<std::string, std::string>::first);
    return found == finding.numbers.end() ? nullptr : &found->second;
}

/// Why an acceptance of this rule does not count for this finding, and where that stands.
struct Objection {
    const AcceptedNumber* number = nullptr;
    std::string reason;
};

std::optional<Objection> objection(const Acceptance& acceptance, const Finding& finding) {
    for (const AcceptedNumber& covered : acceptance.covers) {
        if (!covered.name || !covered.value) continue;
        const std::string* now = number_of(finding, *covered.name);
        if (now == nullptr) return Objection{&covered, fmt::format("the finding has no number {}", *covered.name)};
        if (*now != *covered.value)
            return Objection{&covered, fmt::format("no longer counts: {} is now {}", *covered.name, *now)};
    }
    if (!acceptance.covers.empty() || std::ranges::none_of(finding.numbers, has_figure)) return std::nullopt;
    const auto figure = *std::ranges::find_if(finding.numbers, has_figure);
    return Objection{
        nullptr, fmt::format("does not count until it covers a number, such as {}: {}", figure.first, figure.second)};
}

void object(Finding& finding, const Acceptance& acceptance, const Objection& objection, const FieldIndex& index,
            const std::string& file) {
    const FieldRecord& record = index.of(objection.number ? &objection.number->value : &acceptance.rule);
    finding.marks.push_back({file, record.place, record.path, objection.reason});
    finding.to_do =
        fmt::format("Ask {} to look again; then write what is accepted, with today's numbers, under covers.",
                    acceptance.by.or_else("the clinician"));
}

/// Whether the acceptance found something to accept.
bool apply(const Acceptance& acceptance, const Household& home, const FieldIndex& index, const std::string& file,
           std::vector<Finding>& findings) {
    bool fires = false;
    for (Finding& finding : findings) {
        if (finding.rule != *acceptance.rule || finding.accepted) continue;
        if (acceptance.prescription && !is_about(finding, home, *acceptance.prescription)) continue;
        fires = true;
        if (const auto against = objection(acceptance, finding))
            object(finding, acceptance, *against, index, file);
        else
            finding.accepted = true;
    }
    return fires;
}

class AcceptanceReport {
  public:
    AcceptanceReport(const FieldIndex& index, const std::string& file, std::vector<Finding>& findings)
        : index_{index}, file_{file}, findings_{findings} {}

    void add(std::string_view rule, const Acceptance& acceptance, std::string label, std::string to_do = {}) {
        Report report{*find_rule(rule), index_, file_, findings_};
        report.at(acceptance.rule, std::move(label)).with("rule", acceptance.rule).to_do(std::move(to_do));
        report.finish();
    }

  private:
    const FieldIndex& index_;
    const std::string& file_;
    std::vector<Finding>& findings_;
};

}  // namespace

void apply_acceptances(const Household& home, const FieldIndex& index, const std::string& file,
                       std::vector<Finding>& findings) {
    AcceptanceReport report{index, file, findings};
    for (const Acceptance& acceptance : home.profile.accepted) {
        if (!acceptance.rule) continue;
        const RuleText* rule = find_rule(*acceptance.rule);
        if (rule == nullptr) {
            const auto meant = nearest_rule(*acceptance.rule);
            report.add("acceptance-of-unknown-rule", acceptance, "no such rule",
                       meant ? fmt::format("Write {} if that is meant.", *meant) : std::string{});
        } else if (rule->severity == Severity::refuse) {
            report.add("acceptance-of-refusal", acceptance, "a refusal");
        } else if (!apply(acceptance, home, index, file, findings)) {
            report.add("acceptance-without-finding", acceptance, "does not fire");
        }
    }
}

}  // namespace ventfolio
