#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheets/template_data.hpp"

namespace ventfolio {

/// The data that a name can mean at one place of a template: the sections that are open there, innermost first.
///
/// Names are found as the Mustache specification says ("Dotted Names - Context Precedence"): the part before the first
/// dot in the innermost level that has it, the rest below that and nowhere else. Items of a list also have the flags
/// `first` and `last`.
///
/// A dot before a name is our own addition: `.position` is found in the innermost group or item alone. Without the dot,
/// a name that this one lacks would be looked for in those around it, and the exhalation port be where the person lies.
class Scope {
  public:
    enum class Answer {
        found,
        undeclared,  ///< no open section declares it
        unknown,     ///< a section that this home has no data for may declare it
    };
    struct Found {
        Answer answer = Answer::undeclared;
        const TemplateData* data = nullptr;
    };

    void push(const TemplateData& data) { levels_.push_back({&data, Level::Kind::plain}); }
    void push_item(const TemplateData& data, bool first, bool last) {
        levels_.push_back({&data, Level::Kind::item, first, last});
    }
    /// A section without data of its own, such as an inverted one.
    void push_nothing() { levels_.push_back({nullptr, Level::Kind::nothing}); }
    /// A section that is skipped for this home, and whose names cannot be known.
    void push_unknown() { levels_.push_back({nullptr, Level::Kind::unknown}); }
    void pop() { levels_.pop_back(); }

    Found find(std::string_view name) const;
    /// All names that can be written here in place of `name`; for dotted names, those at the end of its path.
    std::vector<std::string> names_like(std::string_view name) const;

  private:
    struct Level {
        enum class Kind { plain, item, nothing, unknown };
        const TemplateData* data;
        Kind kind;
        bool first = false;
        bool last = false;
    };

    static const TemplateData* in_level(const Level& level, std::string_view name);
    Found find_first(std::string_view name) const;
    Found find_own(std::string_view name) const;

    std::vector<Level> levels_;
};

}  // namespace ventfolio
