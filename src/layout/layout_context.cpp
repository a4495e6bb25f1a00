#include "layout/layout_context.hpp"

#include <fmt/format.h>

namespace ventfolio {

Finding& LayoutContext::refuse(std::string_view rule, std::string message, std::size_t line, std::string field) {
    Finding finding;
    finding.rule = rule;
    finding.severity = Severity::refuse;
    finding.message = std::move(message);
    Mark mark;
    mark.file = document.template_file;
    mark.place.line = line;
    mark.place.column = line > 0 ? 1 : 0;
    mark.field = std::move(field);
    finding.marks.push_back(std::move(mark));
    findings.push_back(std::move(finding));
    return findings.back();
}

void LayoutContext::refuse_unprinted(std::string_view what, std::size_t line, std::string field) {
    refuse("part-without-place",
           fmt::format("On {}, {} has no place where it stands, and would not be printed.", document.sheet, what), line,
           std::move(field));
}

}  // namespace ventfolio
