#include "sheets/document_checks.hpp"

#include <fmt/format.h>

namespace ventfolio {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// "5.0", "12.50": the digits behind the point at `at` end in a zero.
bool has_trailing_zero(std::string_view text, std::size_t at) {
    std::size_t end = at + 1;
    while (end < text.size() && is_digit(text[end])) ++end;
    const bool goes_on = end + 1 < text.size() && text[end] == '.' && is_digit(text[end + 1]);  // "1.2.0", no number
    return end > at + 1 && text[end - 1] == '0' && !goes_on;
}

/// What makes a number in running text misreadable; empty when nothing does.
/// Source: list of error-prone notations, Institute for Safe Medication Practices (as quoted).
std::string misreading(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char before = at > 0 ? text[at - 1] : ' ';
        const char after = at + 1 < text.size() ? text[at + 1] : ' ';
        if (text[at] == '.' && is_digit(after) && !is_digit(before)) return "a number ten times as large";
        if (text[at] == '.' && is_digit(before) && has_trailing_zero(text, at)) return "a number ten times as large";
        if ((text[at] == '<' || text[at] == '>') && (is_digit(after) || after == ' '))
            return "a digit, or its opposite";
    }
    return {};
}

class DocumentCheck {
  public:
    DocumentCheck(const Document& document, Audience audience, std::vector<Finding>& findings)
        : document_{document}, audience_{audience}, findings_{findings} {}

    void blocks(const std::vector<Block>& blocks) {
        for (const Block& block : blocks) {
            inlines(block.inlines);
            inlines(block.aside);
            row(block.head);
            for (const TableRow& one : block.rows) row(one);
            this->blocks(block.children);
        }
    }
    void inlines(const Inlines& inlines) {
        for (const Inline& piece : inlines) {
            if (piece.kind == Inline::Kind::value) value(piece.value, piece.line);
            if (piece.kind == Inline::Kind::text) text(piece);
        }
    }
    void value(const PrintedValue& value, std::size_t line) {
        if (value.audiences & audience_) return;
        Finding& finding = refuse("private-fact-in-wrong-place", line, value.field,
                                  fmt::format("{} must not stand on {}.", value.field, document_.sheet));
        finding.to_do = "Take it out of the template; a sheet may show only fields meant for its readers.";
    }

  private:
    void row(const TableRow& row) {
        for (const TableCell& cell : row.cells) inlines(cell.inlines);
    }
    void text(const Inline& piece) {
        const std::string misread = misreading(piece.text);
        if (misread.empty()) return;
        refuse("misreadable-number", piece.line, "", fmt::format("\"{}\" can be misread as {}.", piece.text, misread));
    }
    Finding& refuse(std::string_view rule, std::size_t line, std::string field, std::string message) {
        Finding finding;
        finding.rule = rule;
        finding.severity = Severity::refuse;
        finding.message = std::move(message);
        Mark mark;
        mark.file = document_.template_file;
        mark.place.line = line;
        mark.place.column = line > 0 ? 1 : 0;
        mark.field = std::move(field);
        finding.marks.push_back(std::move(mark));
        findings_.push_back(std::move(finding));
        return findings_.back();
    }

    const Document& document_;
    Audience audience_;
    std::vector<Finding>& findings_;
};

}  // namespace

void check_document(const Document& document, Audience audience, std::vector<Finding>& findings) {
    DocumentCheck check{document, audience, findings};
    for (const PrintedValue& value : document.identifiers) check.value(value, 0);
    check.inlines(document.title);
    check.blocks(document.blocks);
}

}  // namespace ventfolio
