#include <fmt/format.h>

#include <array>

#include "profile/field_paths.hpp"
#include "sheets/checks/checks.hpp"

/// Checks of the facts that a sheet gives away or restates.
namespace ventfolio::sheet_check {
namespace {

std::string_view readers(Audience audience) {
    switch (audience) {
        case wall:
            return "everyone who enters the room";
        case folder:
            return "readers of the folder";
        case crew:
            return "an emergency crew";
        case wallet:
            return "whoever opens the wallet";
        case utility:
            return "the power company";
        case fire:
            return "the fire service";
        case nobody:
            break;
    }
    return "nobody";
}

void report_misplaced(const JudgedDocument& sheet, const PrintedValue& value, std::size_t line,
                      DocumentReport& report) {
    if ((value.audiences & sheet.audience) != 0) return;
    report.at(
        line,
        {{"fact", value.field}, {"sheet", sheet.document.sheet}, {"readers", std::string{readers(sheet.audience)}}},
        value.field);
}

void misplaced_values(const JudgedDocument& sheet, DocumentReport& report) {
    for (const PrintedValue& value : sheet.document.identifiers) report_misplaced(sheet, value, 0, report);
    for (const Passage& passage : sheet.passages)
        for (const ValueSpan& span : passage.values) report_misplaced(sheet, *span.value, span.line, report);
}

/// Digits of a code do not belong into a message either.
void access_codes(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Sentence& sentence : sheet.sentences) {
        const auto said = sheet.phrases.find(Saying::access_code, sentence);
        if (!said) continue;
        const PrintedValue* value = value_at(sentence.values, said->begin);
        if (value == nullptr) value = value_at(sentence.values, said->end - 1);
        report.at(sentence.line,
                  {{"fact", "A code that opens the home"},
                   {"sheet", sheet.document.sheet},
                   {"readers", std::string{readers(sheet.audience)}}},
                  value ? value->field : std::string{});
    }
}

}  // namespace

void rated_battery_time_printed(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Sentence& sentence : sheet.sentences) {
        const auto said = sheet.phrases.find(Saying::rated_time, sentence);
        if (said) {
            report.at(sentence, said->begin, {{"minutes", sentence.text.substr(said->begin, said->end - said->begin)}});
            continue;
        }
        for (const ValueSpan& span : sentence.values)
            if (declared_path(span.value->field) == "batteries.N.rated_time")
                report.at(sentence, span.begin, {{"minutes", span.value->text()}});
    }
}

void treatment_limit_restated(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Sentence& sentence : sheet.sentences)
        if (const auto said = sheet.phrases.find(Saying::treatment_limit, sentence)) report.at(sentence, said->begin);
}

void private_fact_in_wrong_place(const JudgedDocument& sheet, DocumentReport& report) {
    misplaced_values(sheet, report);
    access_codes(sheet, report);
}

}  // namespace ventfolio::sheet_check
