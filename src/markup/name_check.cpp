#include "markup/name_check.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {
namespace {

class NameCheck {
  public:
    NameCheck(Scope& scope, Faults& faults) : scope_{scope}, faults_{faults} {}

    void walk(const std::vector<TemplateNode>& nodes, bool printed) {
        for (const TemplateNode& node : nodes) {
            if (node.kind == TemplateNode::Kind::value) value(node, printed);
            if (node.kind == TemplateNode::Kind::section) section(node, printed);
            if (node.kind == TemplateNode::Kind::inverted) inverted(node, printed);
        }
    }

  private:
    void value(const TemplateNode& node, bool printed) {
        const Scope::Found found = scope_.find(node.name);
        if (found.answer == Scope::Answer::undeclared) return unknown(node);
        if (found.answer == Scope::Answer::unknown || found.data->value() != nullptr) return;
        if (!found.data->missing()) return not_printable(node, *found.data);
        if (!printed) return;
        faults_.refuse({"template-value-missing", node.span,
                        fmt::format("\"{}\" is to be printed, and this home has no value for it.", node.name),
                        "nothing to print", fmt::format("Put it between {{{{#{0}}}}} and {{{{/{0}}}}}.", node.name)});
    }

    void not_printable(const TemplateNode& node, const TemplateData& data) {
        const std::string_view kind = data.flag() ? "yes or no" : data.items() ? "a list" : "a group of values";
        faults_.refuse({"template-value-not-printable", node.span,
                        fmt::format("\"{}\" is {}, which cannot be printed.", node.name, kind), std::string{kind}});
    }

    void unknown(const TemplateNode& node) {
        const auto near = nearest(node.name, scope_.names_like(node.name));
        faults_.refuse({"template-name-unknown", node.span, fmt::format("There is no value called \"{}\".", node.name),
                        near ? fmt::format("the nearest is \"{}\"", *near) : "no such name"});
    }

    void section(const TemplateNode& node, bool printed) {
        const Scope::Found found = scope_.find(node.name);
        if (found.answer == Scope::Answer::undeclared) unknown(node);
        if (found.answer != Scope::Answer::found) return skipped(node);
        if (const TemplateData::Items* items = found.data->items()) return list(node, *items, printed);
        const bool shapeless = found.data->missing() && found.data->object() == nullptr;
        if (shapeless) siblings(node.children, node.name);
        if (shapeless && !prints(node.children, node.name)) return skipped(node);
        const bool shown = !found.data->missing() && (found.data->flag() == nullptr || *found.data->flag());
        scope_.push(*found.data);
        walk(node.children, printed && shown);
        scope_.pop();
    }

    /// Other forms of a field that a home lacks, such as `rate_brief` in a section for `rate`, stand beside it.
    void siblings(const std::vector<TemplateNode>& nodes, const std::string& field) {
        for (const TemplateNode& node : nodes) {
            if (node.kind == TemplateNode::Kind::value && node.name.starts_with(field + "_") &&
                scope_.find(node.name).answer == Scope::Answer::undeclared)
                unknown(node);
            siblings(node.children, field);
        }
    }

    void list(const TemplateNode& node, const TemplateData::Items& items, bool printed) {
        if (items.empty()) return skipped(node);
        for (const TemplateData& item : items) {
            scope_.push_item(item, &item == &items.front(), &item == &items.back());
            walk(node.children, printed);
            scope_.pop();
        }
    }

    void skipped(const TemplateNode& node) {
        scope_.push_unknown();
        walk(node.children, false);
        scope_.pop();
    }

    void inverted(const TemplateNode& node, bool printed) {
        const Scope::Found found = scope_.find(node.name);
        if (found.answer == Scope::Answer::undeclared) unknown(node);
        const bool shown = found.answer == Scope::Answer::found &&
                           (found.data->missing() || (found.data->flag() && !*found.data->flag()) ||
                            (found.data->items() && found.data->items()->empty()));
        scope_.push_nothing();
        walk(node.children, printed && shown);
        scope_.pop();
    }

    /// True if the nodes print the name itself, which is then a value and no object or list.
    static bool prints(const std::vector<TemplateNode>& nodes, std::string_view name) {
        return std::ranges::any_of(nodes, [&](const TemplateNode& node) {
            return node.kind == TemplateNode::Kind::value && (node.name == name || node.name == ".");
        });
    }

    Scope& scope_;
    Faults& faults_;
};

}  // namespace

void check_names(const std::vector<TemplateNode>& nodes, Scope& scope, Faults& faults) {
    NameCheck{scope, faults}.walk(nodes, true);
}

}  // namespace ventfolio
