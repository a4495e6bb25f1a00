#include "rules/report_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "rules/rule_book.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kLongestQuote = 160;
constexpr std::size_t kBeforeCaret = 60;

/// A letter that would move the cursor, hide text or turn its direction must not reach a terminal.
bool unprintable(char32_t letter) {
    return letter < 0x20 || (letter >= 0x7f && letter < 0xa0) || (letter >= 0x200e && letter <= 0x200f) ||
           (letter >= 0x2028 && letter <= 0x202e) || (letter >= 0x2066 && letter <= 0x2069);
}

std::string_view colour_of(Severity severity) {
    constexpr std::array<std::string_view, 4> kColours{"\x1b[36m", "\x1b[33m", "\x1b[35m", "\x1b[31m"};
    return kColours[static_cast<std::size_t>(severity)];
}

/// One source line cut to letters, each with the terminal cells it takes.
struct QuotedLine {
    std::vector<std::string> letters;
    std::vector<std::size_t> cells;  ///< column before each letter, from 0
    std::size_t width = 0;
};

QuotedLine quoted_line(std::string_view line) {
    QuotedLine quoted;
    if (first_invalid_utf8(line)) line = line.substr(0, *first_invalid_utf8(line));
    for (const char32_t point : code_points(line)) {
        const std::string letter = unprintable(point) ? "?" : utf8(point);
        quoted.cells.push_back(quoted.width);
        quoted.width += display_cells(letter);
        quoted.letters.push_back(letter);
    }
    return quoted;
}

/// Where the values of a YAML line begin: after indentation, dashes and the first key.
std::size_t value_column(std::string_view line) {
    const auto content = line.find_first_not_of(" -");
    if (content == std::string_view::npos) return line.size();
    const auto colon = line.find(": ", content);
    if (colon != std::string_view::npos) return display_cells(line.substr(0, colon + 2));
    return line.ends_with(':') ? display_cells(line) : display_cells(line.substr(0, content));
}

struct CaretSpan {
    std::size_t from;  ///< column from 0
    std::size_t to;
};

void mask_values(QuotedLine& quoted, std::string_view line, CaretSpan caret, bool caret_is_public) {
    const std::size_t begin = value_column(line);
    for (std::size_t at = 0; at < quoted.letters.size(); ++at) {
        const std::size_t column = quoted.cells[at];
        const bool shown = column < begin || quoted.letters[at] == " " ||
                           (caret_is_public && column >= caret.from && column < caret.to);
        if (!shown) quoted.letters[at] = std::string(display_cells(quoted.letters[at]), '*');
    }
}

std::string text_between(const QuotedLine& quoted, std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t at = 0; at < quoted.letters.size(); ++at)
        if (quoted.cells[at] >= from && quoted.cells[at] < to) out += quoted.letters[at];
    return out;
}

/// The source line and the carets below it; nothing for a mark without a place.
std::string quote(const Mark& mark, std::span<const SourceText> sources, const ReportStyle& style) {
    const SourceText* source = source_named(sources, mark.file);
    if (!mark.place.known() || source == nullptr) return {};
    const std::string_view line = source->line(mark.place.line);
    if (style.mask && line.starts_with('#'))  // nothing but asterisks would be left of a comment
        return mark.label.empty() ? std::string{} : fmt::format("      | {}\n", mark.label);
    QuotedLine quoted = quoted_line(line);
    CaretSpan caret{mark.place.column - 1, mark.place.column};
    if (mark.place.end > mark.place.begin) {
        const std::string_view marked =
            std::string_view{source->text}.substr(mark.place.begin, mark.place.end - mark.place.begin);
        const auto first_line = marked.substr(0, marked.find_first_of("\r\n"));
        caret.to =
            caret.from + std::max<std::size_t>(1, first_invalid_utf8(first_line) ? 1 : display_cells(first_line));
    }
    if (style.mask) mask_values(quoted, line, caret, !mark.field.empty() && (style.mask(mark.field) & wall) != 0);
    const std::size_t from = caret.from > kBeforeCaret && quoted.width > kLongestQuote ? caret.from - kBeforeCaret : 0;
    const std::size_t to = from + kLongestQuote;
    caret.to = std::max(caret.from + 1, std::min(caret.to, to));
    std::string carets(caret.from - from, ' ');
    carets += '^';
    carets.append(caret.to - caret.from - 1, '~');
    if (!mark.label.empty()) carets += " " + mark.label;
    return fmt::format("{:5} | {}\n      | {}\n", mark.place.line, text_between(quoted, from, to), carets);
}

/// The message without the values of private fields that the finding points at.
std::string masked_message(const Finding& finding, std::span<const SourceText> sources, const ReportStyle& style) {
    return style.mask ? without_private_values(finding.message, finding, sources, style.mask) : finding.message;
}

std::string place_of(const Mark& mark) {
    if (!mark.place.known()) return mark.file;
    return fmt::format("{}:{}:{}", mark.file, mark.place.line, mark.place.column);
}

void append_text(std::string& out, std::string_view head, std::string_view text, const ReportStyle& style) {
    if (text.empty()) return;
    constexpr std::size_t kIndent = 10;
    out += fmt::format("  {:<8}{}\n", head, wrapped(text, kIndent, kIndent, style.width));
}

/// The rule's texts, in full only where the report has not given them before.
void append_texts(std::string& out, const Finding& finding, bool first_of_rule, const ReportStyle& style) {
    const RuleText* rule = find_rule(finding.rule);
    const bool own = !finding.to_do.empty();
    if (first_of_rule) append_text(out, "why:", rule ? rule->why : "", style);
    if (own || first_of_rule)
        append_text(out, "do:", own || !rule ? std::string_view{finding.to_do} : rule->to_do, style);
    if (first_of_rule) append_text(out, "source:", rule ? rule->source : "", style);
}

void append_finding(std::string& out, const Finding& finding, bool first_of_rule, std::span<const SourceText> sources,
                    const ReportStyle& style) {
    const std::string_view reset = style.colour ? "\x1b[0m" : "";
    if (!finding.marks.empty()) out += place_of(finding.marks.front()) + ": ";
    out += fmt::format("{}{}{}{}: {} [{}]\n", style.colour ? colour_of(finding.severity) : "",
                       name_of(finding.severity), finding.accepted ? " (accepted)" : "", reset,
                       masked_message(finding, sources, style), finding.rule);
    for (std::size_t at = 0; at < finding.marks.size(); ++at) {
        const Mark& mark = finding.marks[at];
        if (at > 0 && mark.file != finding.marks.front().file) out += fmt::format("   in {}\n", mark.file);
        out += quote(mark, sources, style);
    }
    if (style.texts) append_texts(out, finding, first_of_rule, style);
}

}  // namespace

std::string wrapped(std::string_view text, std::size_t first_column, std::size_t indent, std::size_t width) {
    std::string out;
    std::size_t column = first_column;
    bool line_start = true;
    for (const std::string& word : split(text, ' ')) {
        const std::size_t cells = display_cells(word);
        if (!line_start && column + 1 + cells > width) {
            out += "\n" + std::string(indent, ' ');
            column = indent;
            line_start = true;
        }
        if (!line_start) {
            out += ' ';
            ++column;
        }
        out += word;
        column += cells;
        line_start = false;
    }
    return out;
}

std::string summary_line(std::span<const Finding> findings) {
    std::vector<std::string> parts;
    for (const Severity severity : {Severity::refuse, Severity::acknowledge, Severity::warn, Severity::note}) {
        const auto count = std::ranges::count(findings, severity, &Finding::severity);
        const auto accepted = std::ranges::count_if(
            findings, [&](const Finding& finding) { return finding.severity == severity && finding.accepted; });
        if (count == 0) continue;
        parts.push_back(fmt::format("{} {}", count, name_of(severity)));
        if (accepted > 0) parts.back() += fmt::format(" ({} accepted)", accepted);
    }
    return parts.empty() ? "no findings" : joined(parts, ", ");
}

std::string report_text(std::span<const Finding> findings, std::span<const SourceText> sources,
                        const ReportStyle& style) {
    std::string out;
    std::set<std::string_view> explained;
    for (const Finding& finding : findings)
        append_finding(out, finding, explained.insert(finding.rule).second, sources, style);
    return style.summary ? out + summary_line(findings) + "\n" : out;
}

}  // namespace ventfolio
