#include "judged_fragment.hpp"

#include <fmt/format.h>

#include <set>
#include <stdexcept>

#include "packet/cautions.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/reading_limits.hpp"
#include "packet/sheet_furniture.hpp"
#include "packet/template_check.hpp"
#include "packet/translation.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

std::string file_with(const Fragment& fragment) {
    return fmt::format("---\ntitle: Sheet\naudience: {}\n---\n\n{}\n", fragment.audience, fragment.words);
}

std::string path_of(std::string_view sheet) { return fmt::format("en/{}.md", sheet); }

/// The built-in files with one of them replaced.
Stationery stationery_with(const std::string& path, std::string text, std::vector<Finding>& findings) {
    TemplateFiles files = built_in_files();
    if (!files.contains(path)) throw std::runtime_error{"there is no built-in file " + path};
    files[path] = std::move(text);
    return read_stationery(files, "en", "us", findings);
}

CheckedHome readable_home(const Fragment& fragment) {
    CheckedHome checked = check_home(edited_profile(fragment.home, fragment.edits), *Date::parse(fragment.on));
    if (!checked.readable) throw std::runtime_error{checked.findings.front().message};
    return checked;
}

const RuleText& rule_of(const RuleExample& example) {
    for (const RuleText& rule : rule_book())
        if (&rule.example == &example) return rule;
    throw std::runtime_error{"an example of no rule"};
}

/// A file in the place of a built-in one, beside the built-in stationery: what this one rule says.
std::vector<Finding> judged_overlay(const RuleText& rule, const RuleExample& example, const std::string& text) {
    std::vector<Finding> findings;
    const Stationery changed = stationery_with(std::string{example.file}, text, findings);
    check_cautions(changed, stationery(), findings);
    compare_translation(stationery(), changed, findings);
    check_plain_words(changed, findings);
    compare_reading_limits(changed, stationery(), findings);
    std::erase_if(findings, [&](const Finding& finding) { return finding.rule != rule.name; });
    return findings;
}

/// Sheets of a home, judged, and set on pages where `laid_out` says so.
std::size_t add_findings(const Fragment& fragment, const Stationery& own, const std::vector<std::string>& sheets,
                         bool laid_out, std::vector<Finding>& findings) {
    const CheckedHome checked = readable_home(fragment);
    const Household home{checked.profile, *Date::parse(fragment.on)};
    const std::vector<Document> documents = make_documents(home, checked.findings, own, sheets, findings);
    static Measurer measurer;
    for (const Document& document : documents)
        if (laid_out) lay_out(document, furniture_for(document, home, own, "000000"), {}, measurer, findings);
    return documents.size();
}

}  // namespace

std::vector<Finding> judged_fragment(const Fragment& fragment) {
    std::vector<Finding> findings;
    const std::string sheet{fragment.sheet};
    Stationery own = stationery();
    own.sheets.clear();
    own.sheets.emplace(sheet, parse_template({"own/" + sheet + ".md", file_with(fragment)}, {}));
    if (add_findings(fragment, own, {sheet}, false, findings) == 0) throw std::runtime_error{findings.front().message};
    return findings;
}

std::vector<Finding> judged_example(const RuleExample& example, ExampleFragment fragment) {
    const std::string text = written_out(fragment);
    if (rule_of(example).judges == Judges::overlay) return judged_overlay(rule_of(example), example, text);
    const Fragment words{example.home, example.edits, example.sheet, example.audience, text, example.on};
    const bool whole_file = example.form == ExampleForm::template_file;
    std::vector<Finding> findings;
    Stationery own = whole_file ? stationery_with(std::string{example.file}, text, findings)
                                : stationery_with(path_of(example.sheet), file_with(words), findings);
    if (!findings.empty()) return findings;
    // Words stand alone: the leaves of their sheet are other templates.
    const std::string leaves = std::string{example.sheet} + "/";
    if (!whole_file) std::erase_if(own.sheets, [&](const auto& one) { return one.first.starts_with(leaves); });
    const std::vector<std::string> sheets =
        whole_file ? own.in_order() : std::vector<std::string>{std::string{example.sheet}};
    add_findings(words, own, sheets, true, findings);
    return findings;
}

std::string rules_of(const std::vector<Finding>& findings) {
    std::set<std::string> names;
    for (const Finding& finding : findings) names.insert(finding.rule);
    return joined(std::vector<std::string>{names.begin(), names.end()}, " ");
}

}  // namespace ventfolio::testing
