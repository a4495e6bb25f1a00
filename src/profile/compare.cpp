#include "profile/compare.hpp"

#include <fmt/format.h>
#include <algorithm>

namespace ventfolio {
namespace {

/// A profile as a tree. The children of a group are what its struct declares, of a list its items; an item is a group
/// without a key.
struct Node {
    enum class Kind { field, group, list };
    Kind kind = Kind::group;
    std::string path;
    FieldInfo info;
    FieldState state = FieldState::absent;
    const FieldBase* field = nullptr;
    std::vector<Node> children;
};

class TreeBuilder final : public ConstVisitor {
  public:
    explicit TreeBuilder(Node& parent) : parent_{parent} {}

    void leaf(const FieldInfo& info, const FieldBase& field) override {
        add(Node::Kind::field, info, field.state).field = &field;
    }
    void group(const FieldInfo& info, const GroupBase& group) override {
        TreeBuilder inner{add(Node::Kind::group, info, group.state)};
        if (group.given()) visit(group, inner);
    }
    void list(const FieldInfo& info, const ListBase& list) override {
        Node& node = add(Node::Kind::list, info, list.state);
        for (std::size_t at = 0; at < list.size(); ++at) {
            node.children.push_back(
                {Node::Kind::group, fmt::format("{}.{}", node.path, at), info, FieldState::given, nullptr, {}});
            TreeBuilder inner{node.children.back()};
            visit(list, at, inner);
        }
    }

  private:
    Node& add(Node::Kind kind, const FieldInfo& info, FieldState state) {
        std::string path = parent_.path.empty() ? std::string{info.key} : fmt::format("{}.{}", parent_.path, info.key);
        parent_.children.push_back({kind, std::move(path), info, state, nullptr, {}});
        return parent_.children.back();
    }

    Node& parent_;
};

Node tree_of(const Profile& profile) {
    Node root;
    root.state = FieldState::given;
    TreeBuilder builder{root};
    visit(profile, builder);
    return root;
}

bool reads_alike(const Measure& a, const Measure& b, Zeros zeros) {
    return a == b && (zeros == Zeros::drop || a.number.as_labelled() == b.number.as_labelled());
}

bool reads_alike(const FieldBase& a, const FieldBase& b, Zeros zeros) {
    if (a.state != b.state) return false;
    if (!a.given()) return true;
    if (a.kind() == ValueKind::measure)
        return reads_alike(std::get<Measure>(a.value()), std::get<Measure>(b.value()), zeros);
    if (a.kind() == ValueKind::range) {
        const auto& [from, to] = std::get<MeasureRange>(a.value());
        const auto& [other_from, other_to] = std::get<MeasureRange>(b.value());
        return reads_alike(from, other_from, zeros) && reads_alike(to, other_to, zeros);
    }
    return a.value() == b.value();
}

const Node* first_given(const Node& item) {
    if (item.kind == Node::Kind::field) return item.state == FieldState::given ? &item : nullptr;
    for (const Node& child : item.children)
        if (const Node* found = first_given(child)) return found;
    return nullptr;
}

bool same_name(const Node& a, const Node& b) {
    const Node* name = first_given(a);
    const Node* other = first_given(b);
    if (name == nullptr || other == nullptr) return name == other;
    return name->info.key == other->info.key && reads_alike(*name->field, *other->field, name->info.zeros);
}

class Comparison {
  public:
    /// Of two nodes with one declaration. Null: the node is in something that this profile does not have; `instead` is
    /// then what that says (`none`, or absent).
    void nodes(const Node* was, const Node* now, FieldState instead) {
        const Node& either = now != nullptr ? *now : *was;
        const std::size_t before = found_.size();
        if (either.kind == Node::Kind::list)
            items(children_of(was), children_of(now));
        else if (either.kind == Node::Kind::group)
            members(was, now, instead);
        const bool told = found_.size() > before;
        if (!told && !alike(was, now))
            found_.push_back({either.path, now == nullptr, part(was, either, instead), part(now, either, instead)});
    }

    std::vector<Difference> take() { return std::move(found_); }

  private:
    static std::span<const Node> children_of(const Node* node) {
        return node == nullptr ? std::span<const Node>{} : std::span<const Node>{node->children};
    }

    void members(const Node* was, const Node* now, FieldState instead) {
        const auto before = children_of(was);
        const auto after = children_of(now);
        // One that is not given has no children, and answers for all of them.
        if (before.empty() && was != nullptr) instead = was->state;
        if (after.empty() && now != nullptr) instead = now->state;
        for (std::size_t at = 0; at < std::max(before.size(), after.size()); ++at)
            nodes(before.empty() ? nullptr : &before[at], after.empty() ? nullptr : &after[at], instead);
    }

    static bool alike(const Node* was, const Node* now) {
        if (was == nullptr || now == nullptr) return (was ? was : now)->state == FieldState::absent;
        if (was->kind == Node::Kind::field) return reads_alike(*was->field, *now->field, now->info.zeros);
        return was->state == now->state;
    }

    static std::optional<ComparedPart> part(const Node* node, const Node& other, FieldState instead) {
        const FieldState state = node != nullptr ? node->state : instead;
        if (state == FieldState::absent) return std::nullopt;
        const bool is_field = other.kind == Node::Kind::field;
        if (node == nullptr) return ComparedPart{other.path, other.info, state, is_field, nullptr};
        return ComparedPart{node->path, node->info, state, is_field, node->field};
    }

    static bool alike_throughout(const Node& a, const Node& b) {
        Comparison inner;
        inner.nodes(&a, &b, FieldState::absent);
        return inner.found_.empty();
    }

    /// For each item of `now` the one of `was` that it is; null for a new one.
    static std::vector<const Node*> matched(std::span<const Node> was, std::span<const Node> now) {
        std::vector<const Node*> partners(now.size(), nullptr);
        std::vector<bool> taken(was.size(), false);
        const auto match = [&](auto same) {
            for (std::size_t at = 0; at < now.size(); ++at)
                for (std::size_t from = 0; from < was.size() && partners[at] == nullptr; ++from)
                    if (!taken[from] && same(from, at)) {
                        partners[at] = &was[from];
                        taken[from] = true;
                    }
        };
        match([&](std::size_t from, std::size_t at) {
            return same_name(was[from], now[at]) && alike_throughout(was[from], now[at]);
        });
        match([&](std::size_t from, std::size_t at) { return same_name(was[from], now[at]); });
        match([](std::size_t from, std::size_t at) { return from == at; });
        return partners;
    }

    void items(std::span<const Node> was, std::span<const Node> now) {
        const std::vector<const Node*> partners = matched(was, now);
        for (std::size_t at = 0; at < now.size(); ++at) nodes(partners[at], &now[at], FieldState::absent);
        for (const Node& item : was)
            if (std::ranges::find(partners, &item) == partners.end()) nodes(&item, nullptr, FieldState::absent);
    }

    std::vector<Difference> found_;
};

}  // namespace

std::vector<Difference> compare(const Profile& was, const Profile& now) {
    const Node before = tree_of(was);
    const Node after = tree_of(now);
    Comparison comparison;
    comparison.nodes(&before, &after, FieldState::absent);
    return comparison.take();
}

}  // namespace ventfolio
