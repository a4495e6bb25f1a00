#include "sheets/checking_data.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "profile/field_paths.hpp"
#include "profile/refusal.hpp"
#include "rules/judge.hpp"
#include "rules/report.hpp"
#include "rules/rule_book.hpp"
#include "rules/workings.hpp"
#include "sheets/printed_numbers.hpp"
#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Cited from the rule book or the calculators' book.
TemplateData said(const char* name, std::string text) {
    PrintedValue value = calculated(name, folder, plain_parts(std::move(text)));
    value.quoted = true;
    return value;
}

TemplateData as_quoted(const TemplateData& data) {
    if (data.value() == nullptr) return data;
    PrintedValue value = *data.value();
    value.quoted = true;
    return value;
}

TemplateData counted(const char* name, std::size_t number) {
    return calculated(name, folder, {{PrintedPart::Kind::number, fmt::format("{}", number)}});
}

/// "2026-02-03" in a message, as paper writes it.
std::string with_printed_dates(std::string text, const Printer& printer) {
    constexpr std::size_t kIsoDate = 10;
    for (std::size_t at = 0; at + kIsoDate <= text.size(); ++at) {
        const bool inside_word = at > 0 && is_digit(text[at - 1]);
        const auto date = inside_word ? std::nullopt : Date::parse(std::string_view{text}.substr(at, kIsoDate));
        if (!date) continue;
        const std::string shown = printer.date(*date);
        text.replace(at, kIsoDate, shown);
        at += shown.size() - 1;
    }
    return text;
}

class Record {
  public:
    Record(const Household& home, const Printer& printer) : printer_{printer}, fields_{fields_of(home.profile)} {}

    TemplateData item(const Finding& finding) const {
        const RuleText* rule = find_rule(finding.rule);
        const bool own = !finding.to_do.empty() || rule == nullptr;
        const std::string_view key = finding.accepted                            ? "accepted"
                                     : finding.severity == Severity::acknowledge ? "acknowledge"
                                                                                 : "warn";
        TemplateData::Object item;
        item["kind"] = said("finding-kind", std::string{printer_.words().at(fmt::format("findings.{}", key))});
        item["rule"] = said("finding-rule", finding.rule);
        item["message"] = said("finding", shown(finding.message, finding));
        item["to_do"] = said("finding-to-do", shown(own ? finding.to_do : std::string{rule->to_do}, finding));
        item["is_accepted"] = finding.accepted;
        return item;
    }

  private:
    /// Without the values that may not stand in the folder.
    std::string shown(std::string text, const Finding& finding) const {
        for (const Mark& mark : finding.marks) {
            const FieldAt* at = find_field(fields_, mark.field);
            if (at == nullptr || !at->field->given() || (at->info.on & folder) != 0) continue;
            text = with_replaced(std::move(text), written(*at->field), printer_.words().at("findings.private"));
        }
        return with_printed_numbers(with_printed_dates(std::move(text), printer_), printer_.region().numbers);
    }

    const Printer& printer_;
    std::vector<FieldAt> fields_;
};

bool listed(const Finding& finding) { return finding.severity != Severity::note; }

void add_found(TemplateData::Object& data, const Household& home, const Printer& printer,
               std::span<const Finding> findings) {
    const Record record{home, printer};
    TemplateData::Items items;
    // What a clinician must mean comes before what is merely unusual.
    for (const Severity severity : {Severity::refuse, Severity::acknowledge, Severity::warn})
        for (const Finding& finding : findings)
            if (finding.severity == severity) items.push_back(record.item(finding));
    data["found"] = std::move(items);
    const auto count = [&](auto test) { return static_cast<std::size_t>(std::ranges::count_if(findings, test)); };
    data["count_refused"] = counted("refused", count(refuses));
    data["count_to_accept"] = counted(
        "to-accept", count([](const Finding& one) { return one.severity == Severity::acknowledge && !one.accepted; }));
    data["count_accepted"] = counted("accepted", count([](const Finding& one) { return listed(one) && one.accepted; }));
    data["count_warnings"] =
        counted("warnings", count([](const Finding& one) { return one.severity == Severity::warn && !one.accepted; }));
    data["count_rules"] = counted("rules", rule_book().size());
}

bool is_about(const Finding& finding, const Household& home, const Field<std::string>& prescription) {
    if (!prescription.given()) return true;
    for (std::size_t at = 0; at < home.profile.prescriptions.size(); ++at) {
        if (!home.profile.prescriptions[at].id.is(*prescription)) continue;
        const std::string prefix = fmt::format("prescriptions.{}.", at);
        return std::ranges::any_of(finding.marks, [&](const Mark& mark) { return mark.field.starts_with(prefix); });
    }
    return false;
}

void add_acceptances(TemplateData::Object& data, const Household& home, std::span<const Finding> findings) {
    TemplateData::Items items = *data.at("accepted").items();
    for (std::size_t at = 0; at < items.size(); ++at) {
        const Acceptance& acceptance = home.profile.accepted[at];
        bool fires = false;
        bool counts = false;
        for (const Finding& finding : findings) {
            if (!acceptance.rule.is(finding.rule) || !is_about(finding, home, acceptance.prescription)) continue;
            fires = true;
            counts = counts || finding.accepted;
        }
        TemplateData::Object& item = *items[at].object();
        for (const char* name : {"rule", "reason"}) item[name] = as_quoted(item.at(name));
        item["counts"] = counts;
        item["counts_no_more"] = fires && !counts;
        item["finds_nothing"] = !fires;
    }
    data["accepted"] = std::move(items);
}

void add_workings(TemplateData::Object& data, const Household& home, const Printer& printer) {
    TemplateData::Items items;
    for (const Working& working : workings(home)) {
        const CalculatorText& calculator = *working.calculation.calculator;
        TemplateData::Object item;
        item["what"] = said("working", std::string{printer.words().at(fmt::format("workings.{}", calculator.name))});
        item["about"] = working.about.empty() ? TemplateData{} : said("working-about", working.about);
        item["worked"] = said(
            "working-worked",
            with_printed_numbers(with_printed_dates(working.calculation.worked, printer), printer.region().numbers));
        item["source"] = said("working-source", std::string{calculator.source});
        items.emplace_back(std::move(item));
    }
    data["workings"] = std::move(items);
}

}  // namespace

void add_checking_data(TemplateData::Object& data, const Household& home, const Printer& printer,
                       std::span<const Finding> findings) {
    data["two_people_checked"] = double_checked(*home.profile.orders);
    add_found(data, home, printer, findings);
    add_acceptances(data, home, findings);
    add_workings(data, home, printer);
}

}  // namespace ventfolio
