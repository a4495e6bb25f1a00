#include "packet/translation.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <set>

#include "markup/template_lines.hpp"
#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

Finding fault(std::string message, const std::string& file, Place place, std::string label = {}) {
    Finding finding;
    finding.rule = "template-translation-incomplete";
    finding.message = std::move(message);
    Mark mark;
    mark.file = file;
    mark.place = place;
    mark.label = std::move(label);
    finding.marks.push_back(std::move(mark));
    return finding;
}

/// A section of a sheet by what stands in it.
struct Section {
    enum Part { ordered, bullet, row, call_out, part_count };
    std::string classes;  ///< of its heading: "{.act span=}" without what is read
    std::string conditions;
    std::array<std::size_t, part_count> counts{};
    std::size_t file = 0;
    Place place;
};
constexpr std::array<const char*, Section::part_count> kPartNames{"numbered items", "items", "rows of tables",
                                                                  "lines of call-outs"};

/// The words in braces after a heading, without what is printed of them: `{.ladder yes=}` of `{.ladder yes="Yes"}`. How
/// many columns a section takes follows from its words, so that is left out, too: `{.tight span=}` of `{.tight
/// span=5}`.
std::string classes_of(std::string_view heading) {
    const std::size_t open = heading.rfind(" {");
    if (open == heading.npos || heading.substr(open).starts_with(" {{")) return {};
    std::string classes;
    bool quoted = false;
    for (const char letter : heading.substr(open + 1)) {
        if (letter == '"') quoted = !quoted;
        const bool columns = is_digit(letter) && classes.ends_with("span=");
        if (letter != '"' && !quoted && !columns) classes += letter;
    }
    return classes;
}

std::optional<Section::Part> part_of(std::string_view line) {
    if (line.starts_with("- ") || line.starts_with("* ")) return Section::bullet;
    if (line.starts_with("|")) return Section::row;
    if (line.starts_with(">")) return Section::call_out;
    const std::size_t digits = line.find_first_not_of("0123456789");
    if (digits != 0 && digits != line.npos && line.substr(digits).starts_with(". ")) return Section::ordered;
    return std::nullopt;
}

std::vector<Section> sections_of(const Template& sheet) {
    std::vector<Section> sections(1);
    sections.back().place = {1, 1, 0, 0};
    for (const TemplateLine& line : lines_of(sheet)) {
        if (line.text.front() == '#')
            sections.push_back({classes_of(line.text), line.conditions, {}, line.file, line.place});
        else if (const auto part = part_of(line.text))
            ++sections.back().counts[*part];
    }
    return sections;
}

/// Only the first difference: what follows it would differ, too.
void compare_sections(const Template& first, const Template& translation, std::vector<Finding>& findings) {
    const std::vector<Section> was = sections_of(first);
    const std::vector<Section> now = sections_of(translation);
    for (std::size_t at = 0; at < std::min(was.size(), now.size()); ++at) {
        const auto tell = [&](const std::string& what) {
            findings.push_back(fault(
                fmt::format("This section has {}, {}:{}.", what, first.files[was[at].file].name, was[at].place.line),
                translation.files[now[at].file].name, now[at].place));
        };
        if (was[at].classes != now[at].classes || was[at].conditions != now[at].conditions)
            return tell(fmt::format("\"{}\" under \"{}\", the first language \"{}\" under \"{}\"", now[at].classes,
                                    now[at].conditions, was[at].classes, was[at].conditions));
        for (std::size_t part = 0; part < Section::part_count; ++part)
            if (was[at].counts[part] != now[at].counts[part])
                return tell(fmt::format("{} {}, the first language {}", now[at].counts[part], kPartNames[part],
                                        was[at].counts[part]));
    }
    if (was.size() != now.size())
        findings.push_back(
            fault(fmt::format("This sheet has {} sections, the first language {}.", now.size() - 1, was.size() - 1),
                  translation.name(), {1, 1, 0, 0}));
}

/// What one has and the other has not, where the one has it.
void compare_names(const Template& one, const Template& other, const std::string& lacks,
                   std::vector<Finding>& findings) {
    std::set<std::string> known;
    for (const UsedName& name : names_in(other)) known.insert(name.name);
    for (const UsedName& name : names_in(one)) {
        if (known.contains(name.name)) continue;
        const SourceText& file = one.files[name.span.file];
        findings.push_back(fault(fmt::format("\"{}\" stands here, and {} does not use it.", name.name, lacks),
                                 file.name, file.place(name.span.begin, name.span.end)));
    }
}

void compare_words(const Stationery& one, const Stationery& other, std::vector<Finding>& findings) {
    for (const std::string& key : one.words.keys())
        if (!key.starts_with("names.") && !other.words.find(key))
            findings.push_back(fault(fmt::format("The word \"{}\" is missing; {} has it.", key, one.words.file()),
                                     other.words.file(), {1, 1, 0, 0}));
}

}  // namespace

void compare_translation(const Stationery& first, const Stationery& translation, std::vector<Finding>& findings) {
    compare_words(first, translation, findings);
    compare_words(translation, first, findings);
    for (const auto& [name, sheet] : first.sheets) {
        const auto own = translation.sheets.find(name);
        if (own == translation.sheets.end()) {
            findings.push_back(
                fault(fmt::format("There is no {} in the language \"{}\".", name, translation.words.language()),
                      sheet.name(), {1, 1, 0, 0}));
            continue;
        }
        compare_names(sheet, own->second, own->second.name(), findings);
        compare_names(own->second, sheet, sheet.name(), findings);
        compare_sections(sheet, own->second, findings);
    }
    for (const auto& [name, sheet] : translation.sheets)
        if (!first.sheets.contains(name))
            findings.push_back(fault(fmt::format("The first language has no {}.", name), sheet.name(), {1, 1, 0, 0}));
}

}  // namespace ventfolio
