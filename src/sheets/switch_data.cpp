#include "sheets/switch_data.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

bool alike(const TemplateData& a, const TemplateData& b) {
    if (a.missing() || b.missing()) return a.missing() == b.missing();
    if (a.flag() && b.flag()) return *a.flag() == *b.flag();
    if (a.value() && b.value()) return a.value()->text() == b.value()->text();
    return a.value() == nullptr && b.value() == nullptr && a.flag() == nullptr && b.flag() == nullptr;
}

/// A part of a group; nothing where the group is absent, although its names are known.
const TemplateData* named(const TemplateData* of, const std::string& name) {
    if (of == nullptr || of->missing() || of->object() == nullptr) return nullptr;
    const auto found = of->object()->find(name);
    return found == of->object()->end() ? nullptr : &found->second;
}

using Alternatives = std::vector<const TemplateData*>;

bool differing(const Alternatives& parts) {
    return std::ranges::any_of(parts, [&](const TemplateData* part) {
        static const TemplateData kNothing;
        return !alike(part ? *part : kNothing, parts.front() ? *parts.front() : kNothing);
    });
}

bool used(const Alternatives& parts) {
    return std::ranges::any_of(parts, [](const TemplateData* part) { return part != nullptr && !part->missing(); });
}

/// Asks of each name that any of the groups has what its values are like.
TemplateData::Object asked(const Alternatives& all, bool (*question)(const Alternatives&)) {
    TemplateData::Object answers;
    for (const TemplateData* one : all) {
        if (one == nullptr || one->object() == nullptr) continue;
        for (const auto& [name, ignored] : *one->object()) {
            if (answers.contains(name)) continue;
            Alternatives parts;
            for (const TemplateData* other : all) parts.push_back(named(other, name));
            const auto is_group = [](const TemplateData* part) { return part != nullptr && part->object() != nullptr; };
            answers[name] = std::ranges::any_of(parts, is_group) ? TemplateData{asked(parts, question)}
                                                                 : TemplateData{question(parts)};
        }
    }
    return answers;
}

Alternatives alternatives(const TemplateData& prescriptions) {
    Alternatives all;
    for (const TemplateData& one : *prescriptions.items()) all.push_back(&one);
    return all;
}

}  // namespace

TemplateData differing_names(const TemplateData& prescriptions) {
    TemplateData::Object answers = asked(alternatives(prescriptions), differing);
    const auto alarms = answers.find("alarms");
    answers["any_alarm"] = alarms != answers.end() && alarms->second.object() != nullptr &&
                           std::ranges::any_of(*alarms->second.object(), [](const auto& one) {
                               return one.second.flag() != nullptr && *one.second.flag();
                           });
    return answers;
}

TemplateData names_in_use(const TemplateData& prescriptions) { return asked(alternatives(prescriptions), used); }

}  // namespace ventfolio
