#include "rules/report_json.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "rules/rule_book.hpp"

namespace ventfolio {
namespace {

using Json = nlohmann::ordered_json;

Json mark_json(const Mark& mark) {
    Json out{{"file", mark.file}};
    if (mark.place.known()) {
        out["line"] = mark.place.line;
        out["column"] = mark.place.column;
        out["begin"] = mark.place.begin;
        out["end"] = mark.place.end;
    }
    if (!mark.field.empty()) out["field"] = mark.field;
    if (!mark.label.empty()) out["label"] = mark.label;
    return out;
}

Json finding_json(const Finding& finding) {
    Json out{{"rule", finding.rule},         {"severity", name_of(finding.severity)},
             {"accepted", finding.accepted}, {"message", finding.message},
             {"marks", Json::array()},       {"numbers", Json::object()}};
    for (const Mark& mark : finding.marks) out["marks"].push_back(mark_json(mark));
    for (const auto& [name, value] : finding.numbers) out["numbers"][name] = value;
    const RuleText* rule = find_rule(finding.rule);
    out["why"] = rule ? std::string{rule->why} : std::string{};
    out["to_do"] = finding.to_do.empty() && rule ? std::string{rule->to_do} : finding.to_do;
    out["source"] = rule ? std::string{rule->source} : std::string{};
    out["stops"] = Json::array();
    if (rule)
        for (const std::string_view sheet : rule->stops) out["stops"].push_back(std::string{sheet});
    return out;
}

}  // namespace

Json report_json(std::span<const Finding> findings) {
    Json out{{"findings", Json::array()}, {"counts", Json::object()}};
    for (const Finding& finding : findings) out["findings"].push_back(finding_json(finding));
    for (const Severity severity : {Severity::refuse, Severity::acknowledge, Severity::warn, Severity::note})
        out["counts"][std::string{name_of(severity)}] = std::ranges::count(findings, severity, &Finding::severity);
    return out;
}

}  // namespace ventfolio
