#include "sheets/profile_data.hpp"

#include <string>

#include "units/text.hpp"

namespace ventfolio {
namespace {

class DataVisitor final : public ConstVisitor {
  public:
    /// `owed`: missing expected fields print NOT RECORDED here; not so in a group that the home simply does not have.
    DataVisitor(const Printer& printer, std::string path, bool owed)
        : printer_{printer}, path_{std::move(path)}, owed_{owed} {}

    void leaf(const FieldInfo& info, const FieldBase& field) override {
        const std::string key{info.key};
        if (field.kind() == ValueKind::flag) return flag(info, field);
        // A section `{{#x}}` is for homes that have x: `none` is an answer, but no x.
        put(key, field.is_none() ? TemplateData{} : content(info, field, UnitForm::full));
        if (info.none) put(key + "_or_none", content(info, field, UnitForm::full));
        put(key + "_or_ask", printer_.print(field, info, path_to(key)));
        if (field.kind() == ValueKind::text || field.kind() == ValueKind::choice ||
            field.kind() == ValueKind::text_list)
            put(key + "_sentence", field.is_none() ? TemplateData{} : at_start(content(info, field, UnitForm::full)));
        if (field.kind() == ValueKind::date) put(key + "_brief", content(info, field, UnitForm::brief));
        if (field.kind() == ValueKind::measure || field.kind() == ValueKind::range) {
            put(key + "_brief", content(info, field, UnitForm::brief));
            put(key + "_number", content(info, field, UnitForm::number_only));
        }
        for (std::size_t at = 0; at < field.choices().size(); ++at)
            put(key + "_is_" + std::string{field.choices()[at]},
                field.given() && std::get<Choice>(field.value()).index == at);
        if (info.none) put(key + "_is_none", field.is_none());
        if (info.off) put(key + "_is_off", field.is_off());
    }

    void group(const FieldInfo& info, const GroupBase& group) override {
        const std::string key{info.key};
        const bool owed = group.given() || (owed_ && !group.is_none() && info.grade != Grade::optional);
        DataVisitor inner{printer_, path_to(key), owed};
        visit(group, inner);
        put(key, group.given() ? TemplateData{std::move(inner.data)} : TemplateData::absent(std::move(inner.data)));
        if (info.none) put(key + "_is_none", group.is_none());
    }

    void list(const FieldInfo& info, const ListBase& list) override {
        const std::string key{info.key};
        TemplateData::Items items;
        for (std::size_t at = 0; at < list.size(); ++at) {
            DataVisitor inner{printer_, path_to(key) + "." + std::to_string(at), true};
            visit(list, at, inner);
            items.emplace_back(std::move(inner.data));
        }
        put(key, std::move(items));
        put(key + "_not_recorded", list_not_recorded(info, list));
        if (info.none) put(key + "_is_none", list.is_none());
    }

    TemplateData::Object data;

  private:
    /// As it stands at the start of a sentence.
    static TemplateData at_start(TemplateData content) {
        if (!content.value() || content.value()->parts.empty()) return content;
        PrintedValue value = *content.value();
        value.parts.front().text = sentence_start(value.parts.front().text);
        return value;
    }

    std::string path_to(const std::string& key) const { return path_.empty() ? key : path_ + "." + key; }
    void put(std::string key, TemplateData content) { data.insert_or_assign(std::move(key), std::move(content)); }

    /// A list has no audience of its own. That it was never asked for may be known to everyone.
    TemplateData list_not_recorded(const FieldInfo& info, const ListBase& list) const {
        const bool asked_for = info.grade != Grade::optional;
        if (!owed_ || !asked_for || list.given() || list.is_none()) return {};
        PrintedValue value = printer_.not_recorded(info, path_to(std::string{info.key}));
        value.audiences = PrintedValue{}.audiences;
        return value;
    }

    TemplateData content(const FieldInfo& info, const FieldBase& field, UnitForm form) const {
        if (!field.missing()) return printer_.print(field, info, path_to(std::string{info.key}), form);
        const bool asked_for = info.grade != Grade::optional || field.state == FieldState::unknown;
        if (owed_ && asked_for) return printer_.not_recorded(info, path_to(std::string{info.key}));
        return {};
    }

    /// A flag guards sections; whether it was recorded at all is a name of its own, for the lines that say so.
    void flag(const FieldInfo& info, const FieldBase& field) {
        const std::string key{info.key};
        put(key, field.given() ? TemplateData{std::get<bool>(field.value())} : TemplateData{});
        const bool owed =
            owed_ && field.missing() && (info.grade != Grade::optional || field.state == FieldState::unknown);
        put(key + "_not_recorded", owed ? TemplateData{printer_.not_recorded(info, path_to(key))} : TemplateData{});
        if (info.none) put(key + "_is_none", field.is_none());
    }

    const Printer& printer_;
    std::string path_;
    bool owed_;
};

}  // namespace

TemplateData::Object profile_data(const Profile& profile, const Printer& printer) {
    DataVisitor visitor{printer, {}, true};
    visit(profile, visitor);
    return std::move(visitor.data);
}

}  // namespace ventfolio
