#include "rules/field_index.hpp"

#include "profile/profile.hpp"

namespace ventfolio {
namespace {

/// Walks a profile and hands every field, group and list to `Note` with its path and the nearest known place.
template <class Note>
class Walk final : public ConstVisitor {
  public:
    explicit Walk(Note note) : note_{note} {}

    void leaf(const FieldInfo& info, const FieldBase& field) override {
        note_(static_cast<const void*>(&field),
              FieldRecord{path_of(info), known(field.place), info.on, info.zeros, &field});
    }
    void group(const FieldInfo& info, const GroupBase& group) override {
        note_(static_cast<const void*>(&group),
              FieldRecord{path_of(info), known(group.place), info.on, info.zeros, nullptr});
        enter(path_of(info), known(group.place), [&](ConstVisitor& visitor) {
            ConstView view{visitor};
            const_cast<GroupBase&>(group).describe(view);
        });
    }
    void list(const FieldInfo& info, const ListBase& list) override {
        note_(static_cast<const void*>(&list),
              FieldRecord{path_of(info), known(list.place), info.on, info.zeros, nullptr});
        for (std::size_t at = 0; at < list.size(); ++at)
            enter(path_of(info) + "." + std::to_string(at), known(list.place_of(at)),
                  [&](ConstVisitor& visitor) { visit(list, at, visitor); });
    }

  private:
    std::string path_of(const FieldInfo& info) const { return prefix_ + std::string{info.key}; }
    Place known(const Place& place) const { return place.known() ? place : around_; }

    template <class Inside>
    void enter(const std::string& path, Place place, Inside inside) {
        const std::string prefix = std::exchange(prefix_, path + ".");
        const Place around = std::exchange(around_, place);
        inside(*this);
        prefix_ = prefix;
        around_ = around;
    }

    Note note_;
    std::string prefix_;
    Place around_{};
};

/// Looks for one field by the steps of its path in a profile that may be empty.
class Search final : public Visitor {
  public:
    explicit Search(std::string_view path) : rest_{path} {}
    Audiences found = nobody;

    void leaf(const FieldInfo& info, FieldBase&) override {
        if (info.key == rest_) found = info.on;
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        descend(info, [&] { group.describe(*this); });
    }
    void list(const FieldInfo& info, ListBase& list) override {
        descend(info, [&] {
            const auto dot = rest_.find('.');
            if (dot == std::string_view::npos) return;
            rest_.remove_prefix(dot + 1);
            list.describe_element(*this);
        });
    }

  private:
    template <class Inside>
    void descend(const FieldInfo& info, Inside inside) {
        if (!rest_.starts_with(info.key)) return;
        const std::string_view all = rest_;
        rest_.remove_prefix(info.key.size());
        if (rest_.empty()) found = info.on;
        if (rest_.starts_with('.')) {
            rest_.remove_prefix(1);
            inside();
        }
        rest_ = all;
    }

    std::string_view rest_;
};

}  // namespace

void FieldIndex::walk() const {
    constexpr std::size_t kUsualFields = 2048;
    records_.reserve(kUsualFields);
    const auto note = [this](const void* thing, FieldRecord record) { records_.emplace(thing, std::move(record)); };
    Walk walk{note};
    visit(profile_, walk);
}

const FieldRecord& FieldIndex::of(const void* thing) const {
    static const FieldRecord nowhere{};
    if (records_.empty()) walk();
    const auto found = records_.find(thing);
    return found == records_.end() ? nowhere : found->second;
}

Audiences audiences_of(std::string_view path) {
    Profile empty;
    Search search{path};
    empty.describe(search);
    return search.found;
}

}  // namespace ventfolio
