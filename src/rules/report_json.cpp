#include "rules/report_json.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "rules/field_index.hpp"
#include "rules/judge.hpp"
#include "rules/rule_book.hpp"

namespace ventfolio {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array kSeverities{Severity::refuse, Severity::acknowledge, Severity::warn, Severity::note};

Json mark_json(const Mark& mark, const std::string& label) {
    Json out{{"file", mark.file}};
    if (mark.place.known()) {
        out["line"] = mark.place.line;
        out["column"] = mark.place.column;
        out["begin"] = mark.place.begin;
        out["end"] = mark.place.end;
    }
    if (!mark.field.empty()) out["field"] = mark.field;
    if (!label.empty()) out["label"] = label;
    return out;
}

Json finding_json(const Finding& finding, const Privacy* privacy) {
    const auto shown = [&](const std::string& text) {
        if (privacy == nullptr) return text;
        return without_private_values(text, finding, privacy->sources, privacy->audiences);
    };
    Json out{{"rule", finding.rule},         {"severity", name_of(finding.severity)},
             {"accepted", finding.accepted}, {"message", shown(finding.message)},
             {"marks", Json::array()},       {"numbers", Json::object()}};
    for (const Mark& mark : finding.marks) out["marks"].push_back(mark_json(mark, shown(mark.label)));
    for (const auto& [name, value] : finding.numbers) out["numbers"][name] = shown(value);
    const RuleText* rule = find_rule(finding.rule);
    out["why"] = rule ? std::string{rule->why} : std::string{};
    out["to_do"] = finding.to_do.empty() && rule ? std::string{rule->to_do} : shown(finding.to_do);
    out["source"] = rule ? std::string{rule->source} : std::string{};
    out["stops"] = Json::array();
    if (rule)
        for (const std::string_view sheet : rule->stops) out["stops"].push_back(std::string{sheet});
    return out;
}

Json counts_json(std::span<const Finding> findings) {
    Json out = Json::object();
    for (const Severity severity : kSeverities)
        out[std::string{name_of(severity)}] = std::ranges::count(findings, severity, &Finding::severity);
    return out;
}

Json file_json(const FileReport& file) {
    Json out{{"file", file.file}, {"state", name_of(file.state)}};
    if (file.state == FileReport::State::unusable) {
        out["message"] = file.message;
        return out;
    }
    out["counts"] = counts_json(file.findings);
    out["accepted"] = std::ranges::count(file.findings, true, &Finding::accepted);
    out["stopped_sheets"] = Json::array();
    for (const std::string& sheet : stopped_sheets(file.findings)) out["stopped_sheets"].push_back(sheet);
    return out;
}

}  // namespace

std::string_view name_of(FileReport::State state) {
    constexpr std::array<std::string_view, 3> kNames{"ready", "stopped", "unusable"};
    return kNames[static_cast<std::size_t>(state)];
}

Json report_json(std::span<const Finding> findings, const Privacy* privacy) {
    Json out{{"findings", Json::array()}, {"counts", counts_json(findings)}};
    for (const Finding& finding : findings) out["findings"].push_back(finding_json(finding, privacy));
    return out;
}

Json check_json(const CheckReport& report) {
    Json out{{"schema", "urn:ventfolio:check:1"}, {"on", report.on.iso()},   {"strict", report.strict},
             {"masked", !report.unmasked},        {"status", report.status}, {"files", Json::array()},
             {"findings", Json::array()}};
    std::vector<Finding> all;
    for (const FileReport& file : report.files) {
        out["files"].push_back(file_json(file));
        const Privacy privacy{std::span{&file.source, 1}, audiences_of};
        for (const Finding& finding : file.findings) {
            Json one{{"profile", file.file}};
            one.update(finding_json(finding, report.unmasked ? nullptr : &privacy));
            out["findings"].push_back(std::move(one));
        }
        all.insert(all.end(), file.findings.begin(), file.findings.end());
    }
    out["counts"] = counts_json(all);
    return out;
}

}  // namespace ventfolio
