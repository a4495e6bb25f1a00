#include "markup/scope.hpp"

namespace ventfolio {
namespace {

const TemplateData kTrue{true};
const TemplateData kFalse{false};
const TemplateData kMissing;

const TemplateData* member(const TemplateData& data, std::string_view name) {
    const TemplateData::Object* object = data.object();
    if (object == nullptr) return nullptr;
    const auto found = object->find(name);
    return found == object->end() ? nullptr : &found->second;
}

}  // namespace

const TemplateData* Scope::in_level(const Level& level, std::string_view name) {
    if (const TemplateData* found = member(*level.data, name)) return found;
    if (level.kind != Level::Kind::item) return nullptr;
    if (name == "first") return level.first ? &kTrue : &kFalse;
    if (name == "last") return level.last ? &kTrue : &kFalse;
    return nullptr;
}

Scope::Found Scope::find_first(std::string_view name) const {
    bool doubtful = false;
    for (auto level = levels_.rbegin(); level != levels_.rend() && !doubtful; ++level) {
        if (level->kind == Level::Kind::nothing) continue;
        if (level->kind == Level::Kind::unknown)
            doubtful = true;
        else if (name == ".")
            return {Answer::found, level->data};
        else if (const TemplateData* found = in_level(*level, name))
            return {Answer::found, found};
    }
    return {doubtful ? Answer::unknown : Answer::undeclared, nullptr};
}

Scope::Found Scope::find_own(std::string_view name) const {
    for (auto level = levels_.rbegin(); level != levels_.rend(); ++level) {
        if (level->kind == Level::Kind::unknown) return {Answer::unknown, nullptr};
        if (level->kind == Level::Kind::nothing || level->data->object() == nullptr) continue;
        const TemplateData* found = in_level(*level, name);
        return {found == nullptr ? Answer::undeclared : Answer::found, found};
    }
    return {};
}

Scope::Found Scope::find(std::string_view name) const {
    if (name == ".") return find_first(name);
    const bool own = name.starts_with('.');
    if (own) name.remove_prefix(1);
    const std::string_view first = name.substr(0, name.find('.'));
    Found found = own ? find_own(first) : find_first(first);
    while (found.answer == Answer::found && name.find('.') != name.npos) {
        name.remove_prefix(name.find('.') + 1);
        if (found.data->missing() && found.data->object() == nullptr) return {Answer::found, &kMissing};
        found.data = member(*found.data, name.substr(0, name.find('.')));
        if (found.data == nullptr) found.answer = Answer::undeclared;
    }
    return found;
}

std::vector<std::string> Scope::names_like(std::string_view name) const {
    std::vector<std::string> names;
    if (name != "." && name.starts_with('.')) name.remove_prefix(1);
    const std::size_t dot = name.rfind('.');
    if (name != "." && dot != name.npos) {
        const std::string path{name.substr(0, dot)};
        const Found found = find(path);
        const TemplateData::Object* object = found.answer == Answer::found ? found.data->object() : nullptr;
        if (object != nullptr) {
            for (const auto& [key, data] : *object) names.push_back(path + "." + key);
            return names;
        }
    }
    bool in_item = false;
    for (const Level& level : levels_) {
        in_item = in_item || level.kind == Level::Kind::item;
        if (level.data == nullptr || level.data->object() == nullptr) continue;
        for (const auto& [key, data] : *level.data->object()) {
            names.push_back(key);
            if (data.object() == nullptr) continue;
            for (const auto& [below, deep] : *data.object()) names.push_back(key + "." + below);
        }
    }
    if (in_item) names.insert(names.end(), {"first", "last"});
    return names;
}

}  // namespace ventfolio
