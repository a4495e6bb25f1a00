#include "packet/template_check.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <string_view>

#include "packet/documents.hpp"
#include "packet/drawn_sheets.hpp"
#include "rules/judge.hpp"
#include "sheets/checks/checks.hpp"
#include "sheets/checks/reading_counts.hpp"

namespace ventfolio {
namespace {

bool for_those_at_home(const Template& sheet) {
    const FrontMatterLine* audience = sheet.front("audience");
    return audience != nullptr && (audience->value == "wall" || audience->value == "folder");
}

/// Blanks in the place of tags: the names of values are not read.
std::string without_tags(std::string_view line) {
    std::string text{line};
    for (std::size_t open = text.find("{{"); open != text.npos; open = text.find("{{", open)) {
        const std::size_t end = std::min(text.find("}}", open), text.size() - 2) + 2;
        std::fill(text.begin() + static_cast<std::ptrdiff_t>(open), text.begin() + static_cast<std::ptrdiff_t>(end),
                  ' ');
    }
    return text;
}

void check_line(const SourceText& file, std::size_t number, const PlainWords& plain, std::vector<Finding>& findings) {
    const std::string_view line = file.line(number);
    const auto hard = plain.first_in(without_tags(line));
    if (!hard) return;
    Finding finding;
    finding.rule = "word-hard-to-read";
    finding.severity = Severity::warn;
    finding.message = fmt::format("\"{}\" is a hard word; a plainer one is \"{}\".", hard->word, hard->better);
    Mark mark;
    mark.file = file.name;
    const auto begin = static_cast<std::size_t>(line.data() - file.text.data()) + hard->at;
    mark.place = file.place(begin, begin + hard->word.size());
    finding.marks.push_back(std::move(mark));
    findings.push_back(std::move(finding));
}

void add_figure(const Document& document, const Household& home, const Stationery& stationery,
                std::map<ReadSheet, double>& figures) {
    const Audience audience = audience_from(document.front("audience").value_or("")).value_or(wall);
    const sheet_check::JudgedDocument judged{document, audience, home, stationery.of(document.sheet).phrases};
    const auto figure = sheet_check::reading_figure(judged);
    if (!figure) return;
    double& hardest = figures.try_emplace({document.language, document.sheet}, figure->value).first->second;
    hardest = document.language.starts_with("en") ? std::max(hardest, figure->value) : std::min(hardest, figure->value);
}

}  // namespace

void check_plain_words(const Stationery& stationery, std::vector<Finding>& findings) {
    for (const auto& [name, sheet] : stationery.sheets) {
        if (!for_those_at_home(sheet)) continue;
        for (const SourceText& file : sheet.files) {
            const auto lines = static_cast<std::size_t>(std::ranges::count(file.text, '\n')) + 1;
            for (std::size_t line = 1; line <= lines; ++line) check_line(file, line, stationery.plain, findings);
        }
    }
    leave_one_of_each(findings);
}

TemplateCheck check_templates_with(const SourceText& profile, Date on, const Stationery& stationery,
                                   const PrintOrder& order, Measurer& measurer) {
    TemplateCheck check;
    const CheckedHome home = check_home(profile, on, &stationery.region);
    if (!home.readable) {
        check.findings = home.findings;
        return check;
    }
    const Household household{home.profile, on};
    const PageSetup setup = order.setup(stationery);
    std::vector<Document> documents =
        make_documents(household, home.findings, stationery, stationery.in_order(), check.findings);
    for (const Document& document : documents)
        if (stationery.under(document.sheet) == nullptr) add_figure(document, household, stationery, check.figures);
    draw_sheets(std::move(documents), household, stationery, setup, measurer, check.findings);
    leave_one_of_each(check.findings);
    return check;
}

}  // namespace ventfolio
