#include "packet/cautions.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <map>

#include "markup/template_lines.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kLongestQuote = 60;
constexpr std::string_view kMark = "{{! caution";

bool holds(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

bool has_class(std::string_view heading, std::string_view name) {
    const std::size_t at = heading.find(name);
    if (at == heading.npos) return false;
    const std::size_t end = at + name.size();
    return end == heading.size() || heading[end] == ' ' || heading[end] == '}';
}

std::string key_of(const Caution& caution) { return caution.conditions + "\n" + caution.text; }

Mark mark_at(const std::string& file, Place place, std::string label) {
    Mark mark;
    mark.file = file;
    mark.place = place;
    mark.label = std::move(label);
    return mark;
}

std::string quoted(std::string text) {
    if (text.size() <= kLongestQuote) return text;
    text.resize(kLongestQuote);
    while (first_invalid_utf8(text)) text.pop_back();
    return text + " …";
}

Finding dropped(const Template& changed, const Caution& caution) {
    Finding finding;
    finding.rule = "template-caution-dropped";
    finding.message =
        fmt::format("This sheet lacks the caution \"{}\" of {}:{}{}.", quoted(caution.text), caution.file,
                    caution.place.line, caution.conditions.empty() ? "" : ", under " + caution.conditions);
    finding.marks = {mark_at(changed.name(), {1, 1, 0, 0}, "the changed sheet"),
                     mark_at(caution.file, caution.place, "the built-in caution")};
    return finding;
}

void check_sheet(const Template& changed, const Template& built_in, std::vector<Finding>& findings) {
    std::map<std::string, int> kept;
    for (const Caution& caution : cautions_of(changed)) ++kept[key_of(caution)];
    for (const Caution& caution : cautions_of(built_in)) {
        if (kept[key_of(caution)]-- > 0) continue;
        findings.push_back(dropped(changed, caution));
        return;
    }
}

}  // namespace

std::vector<Caution> cautions_of(const Template& sheet) {
    std::vector<Caution> cautions;
    bool in_section = false;
    for (const TemplateLine& line : lines_of(sheet)) {
        const SourceText& file = sheet.files[line.file];
        const bool heading = line.text.front() == '#';
        if (heading || line.text == "---")
            in_section = heading && (has_class(line.text, ".act") || has_class(line.text, ".banner"));
        const bool alone = line.text.front() == '>' || (heading && has_class(line.text, ".strip"));
        if (in_section || alone || holds(file.text, kMark))
            cautions.push_back({line.text, line.conditions, file.name, line.place});
    }
    return cautions;
}

void check_cautions(const Stationery& changed, const Stationery& built_in, std::vector<Finding>& findings) {
    for (const auto& [name, sheet] : built_in.sheets)
        if (const auto own = changed.sheets.find(name); own != changed.sheets.end())
            check_sheet(own->second, sheet, findings);
}

}  // namespace ventfolio
