#include "rules/explain.hpp"

#include <fmt/format.h>
#include <array>

#include <algorithm>
#include <vector>

#include "rules/report_text.hpp"
#include "rules/rule_book.hpp"
#include "rules/shown_example.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kLimits =
    "A rule says what disagrees with what; it never decides treatment. The prescriber's orders, the device's "
    "instructions and local protocol come first.";

std::string effect(const RuleText& rule) {
    switch (rule.severity) {
        case Severity::note:
            return "terminal only";
        case Severity::warn:
            return "prints; stands on the verification sheet";
        case Severity::acknowledge:
            return "every page is marked \"not yet checked\" until a clinician accepts it";
        case Severity::refuse:
            break;
    }
    if (rule.stops_judged_sheet) return "the sheet that it judges is not made";
    if (rule.stops.size() == sheet_names().size()) return "no sheet is made";
    std::vector<std::string> names{rule.stops.begin(), rule.stops.end()};
    return "not made: " + joined(names, ", ");
}

void paragraph(std::string& out, std::string_view head, std::string_view text, std::size_t width) {
    if (text.empty()) return;
    constexpr std::size_t kIndent = 12;
    out += fmt::format("  {:<10}{}\n", head, wrapped(text, kIndent, kIndent, width));
}

/// Lines with an indent; blank ones are kept where they mean something, but for the last.
std::string block(std::string_view text, bool blank_lines = true) {
    std::vector<std::string> lines = split(text, '\n');
    while (!lines.empty() && lines.back().empty()) lines.pop_back();
    std::string out;
    for (const std::string& line : lines)
        if (!line.empty())
            out += "      " + line + "\n";
        else if (blank_lines)
            out += "\n";
    return out;
}

void append_thresholds(std::string& out, const RuleText& rule) {
    for (const Threshold& one : thresholds())
        if (std::ranges::find(one.rules, rule.name) != one.rules.end())
            out += fmt::format("    {} = {} {} ({})\n", one.name, one.value, one.unit, one.source);
}

/// "reports it with" and what the fragment is.
std::string with_what(const RuleExample& example) {
    switch (example.form) {
        case ExampleForm::edits:
            return "with";
        case ExampleForm::profile:
            break;
        case ExampleForm::words:
            return fmt::format("with these words on {} ({})", example.sheet, example.audience);
        case ExampleForm::template_file:
            return fmt::format("with this as templates/{}", example.file);
    }
    return "with this text";
}

void append_example(std::string& out, const RuleText& rule) {
    const RuleExample& example = rule.example;
    const bool blank_lines = example.form != ExampleForm::edits;
    if (example.form == ExampleForm::profile)
        out += "  example:  a profile";
    else if (rule.judges == Judges::update)
        out += fmt::format("  example:  profiles/{0}.yaml after a packet made of it", example.home);
    else
        out += fmt::format("  example:  profiles/{}.yaml on {}", example.home, example.on);
    if (!example.edits.empty()) out += fmt::format(", with\n{}   ", block(example.edits, false));
    out += fmt::format(" reports it {}\n{}    and does not with\n{}", with_what(example),
                       block(shown_fragment(example.fires), blank_lines),
                       block(shown_fragment(example.silent), blank_lines));
}

}  // namespace

std::optional<std::string> explain_rule(std::string_view name, std::size_t width) {
    const RuleText* rule = find_rule(name);
    if (rule == nullptr) return std::nullopt;
    std::string out = fmt::format("{} ({})\n", rule->name, name_of(rule->severity));
    paragraph(out, "effect:", effect(*rule), width);
    paragraph(out, "says:", rule->says, width);
    paragraph(out, "why:", rule->why, width);
    paragraph(out, "formula:", rule->formula, width);
    paragraph(out, "do:", rule->to_do, width);
    paragraph(out, "source:", rule->source, width);
    append_thresholds(out, *rule);
    append_example(out, *rule);
    return out + wrapped(kLimits, 0, 0, width) + "\n";
}

std::optional<std::string> nearest_rule(std::string_view name) {
    std::vector<std::string> names;
    for (const RuleText& rule : rule_book()) names.emplace_back(rule.name);
    return nearest(name, names);
}

std::string list_rules() {
    constexpr std::array<std::string_view, 8> kJudges{"reading", "profile", "template",   "template",
                                                      "sheet",   "sheet",   "acceptance", "update"};
    std::string out;
    for (const RuleText& rule : rule_book())
        out += fmt::format("{:<46} {:<12} {:<10} {}\n", rule.name, name_of(rule.severity),
                           kJudges.at(static_cast<std::size_t>(rule.judges)), rule.subject);
    return out;
}

}  // namespace ventfolio
