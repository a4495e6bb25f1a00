#include "markup/render.hpp"

#include "markup/expansion.hpp"
#include "markup/faults.hpp"
#include "markup/markdown.hpp"
#include "markup/name_check.hpp"

namespace ventfolio {
namespace {

void render_checked(const Template& from, const std::vector<const TemplateData*>& data, Rendered& out, Faults& faults) {
    out.title = parse_words(Expansion{from, from.title, data, faults}, faults);
    out.blocks = parse_blocks(Expansion{from, from.body, data, faults}, faults);
    for (const FrontMatterLine& line : from.front_matter)
        out.front_matter.emplace_back(line.key, line.key == "title" ? plain_text(out.title) : line.value);
}

}  // namespace

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
