#include "profile/field_paths.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string below(const std::string& path, std::string_view key) {
    return path.empty() ? std::string{key} : fmt::format("{}.{}", path, key);
}

class Flattener final : public ConstVisitor {
  public:
    std::vector<FieldAt> fields;

    void leaf(const FieldInfo& info, const FieldBase& field) override {
        fields.push_back({below(path_, info.key), info, &field, reachable_});
    }
    void group(const FieldInfo& info, const GroupBase& group) override {
        within(below(path_, info.key), group.given(), [&] { visit(group, *this); });
    }
    void list(const FieldInfo& info, const ListBase& list) override {
        for (std::size_t index = 0; index < list.size(); ++index)
            within(fmt::format("{}.{}", below(path_, info.key), index), true, [&] { visit(list, index, *this); });
    }

  private:
    template <class Walk>
    void within(std::string path, bool given, Walk walk) {
        const std::string outer_path = std::exchange(path_, std::move(path));
        const bool outer_reachable = std::exchange(reachable_, reachable_ && given);
        walk();
        path_ = outer_path;
        reachable_ = outer_reachable;
    }

    std::string path_;
    bool reachable_ = true;
};

class Declarations final : public Visitor {
  public:
    std::vector<DeclaredField> fields;

    void leaf(const FieldInfo& info, FieldBase& field) override {
        fields.push_back({below(path_, info.key),
                          info,
                          field.kind(),
                          field.dimension(),
                          {field.choices().begin(), field.choices().end()}});
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        const std::string outer = std::exchange(path_, below(path_, info.key));
        group.describe(*this);
        path_ = outer;
    }
    void list(const FieldInfo& info, ListBase& list) override {
        const std::string outer = std::exchange(path_, below(path_, info.key) + ".N");
        list.describe_element(*this);
        path_ = outer;
    }

  private:
    std::string path_;
};

}  // namespace

std::vector<FieldAt> fields_shown(const std::function<void(ConstVisitor&)>& show) {
    Flattener flattener;
    show(flattener);
    return std::move(flattener.fields);
}

const FieldAt* find_field(std::span<const FieldAt> fields, std::string_view path) {
    const auto found = std::ranges::find(fields, path, &FieldAt::path);
    return found == fields.end() ? nullptr : &*found;
}

std::vector<DeclaredField> declared_fields(const std::function<void(Visitor&)>& blank) {
    Declarations declarations;
    blank(declarations);
    return std::move(declarations.fields);
}

std::string declared_path(std::string_view path) {
    std::vector<std::string> parts = split(path, '.');
    for (std::string& part : parts)
        if (!part.empty() && part.find_first_not_of("0123456789") == std::string::npos) part = "N";
    return joined(parts, ".");
}

}  // namespace ventfolio
