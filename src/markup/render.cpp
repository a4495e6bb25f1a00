#include "markup/render.hpp"

#include <fmt/format.h>

#include "markup/expansion.hpp"
#include "markup/faults.hpp"
#include "markup/markdown.hpp"
#include "markup/name_check.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

void render_checked(const Template& from, const std::vector<const TemplateData*>& data, Rendered& out, Faults& faults) {
    out.title = parse_words(Expansion{from, from.title, data, faults}, faults);
    out.blocks = parse_blocks(Expansion{from, from.body, data, faults}, faults);
    for (const FrontMatterLine& line : from.front_matter)
        out.front_matter.emplace_back(line.key, line.key == "title" ? plain_text(out.title) : line.value);
}

bool opens_section(const TemplateData& data) {
    if (const bool* flag = data.flag()) return *flag;
    if (const TemplateData::Items* items = data.items()) return !items->empty();
    return !data.missing();
}

Finding unknown_condition(const Template& from, const FrontMatterLine& line, const std::string& name,
                          const Scope& scope) {
    Finding finding;
    finding.rule = "template-name-unknown";
    finding.message = fmt::format("There is no value called \"{}\".", name);
    const auto near = nearest(name, scope.names_like(name));
    Mark mark;
    mark.file = from.name();
    mark.place = line.place;
    mark.label = near ? fmt::format("the nearest is \"{}\"", *near) : "no such name";
    finding.marks.push_back(std::move(mark));
    return finding;
}

}  // namespace

bool applies(const Template& from, const TemplateData& data, std::vector<Finding>& findings) {
    const FrontMatterLine* condition = from.front("only_if");
    if (condition == nullptr) return true;
    Scope scope;
    scope.push(data);
    bool all = true;
    for (const std::string& name : split(condition->value, ' ')) {
        if (name.empty()) continue;
        const Scope::Found found = scope.find(name);
        if (found.answer == Scope::Answer::undeclared)
            findings.push_back(unknown_condition(from, *condition, name, scope));
        all = all && found.answer == Scope::Answer::found && opens_section(*found.data);
    }
    return all;
}

Rendered render(const Template& from, const TemplateData& data, const TemplateData* item) {
    Rendered out;
    out.findings = from.findings;
    if (!out.findings.empty()) return out;
    Faults faults{from.files};
    std::vector<const TemplateData*> levels{&data};
    if (item != nullptr) levels.push_back(item);
    Scope scope;
    for (const TemplateData* level : levels) scope.push(*level);
    check_names(from.title, scope, faults);
    check_names(from.body, scope, faults);
    if (faults.empty()) render_checked(from, levels, out, faults);
    out.findings = faults.take();
    return out;
}

}  // namespace ventfolio
