#include "profile/starter.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "profile/field_list.hpp"
#include "profile/read_value.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

enum class Fill { empty, examples };

/// Whether a group has a key that must be filled in.
bool has_essential_key(GroupBase& group) {
    struct Search final : Visitor {
        bool found = false;
        void leaf(const FieldInfo& info, FieldBase&) override { look(info); }
        void group(const FieldInfo& info, GroupBase&) override { look(info); }
        void list(const FieldInfo& info, ListBase&) override { look(info); }
        void look(const FieldInfo& info) { found = found || info.grade == Grade::essential; }
    } search;
    group.describe(search);
    return search.found;
}

/// A line of words, not a key behind a #.
bool explains(std::string_view line) {
    const auto at = line.find_first_not_of(' ');
    return at != std::string_view::npos && line.substr(at).starts_with("# ");
}

/// Writes one group; each of its parts is put down with its grade, so that the essential ones can go first.
class StarterWriter final : public Visitor {
  public:
    /// `least`: from which grade on keys are in use; nothing for a group that is not in use itself.
    StarterWriter(Fill fill, std::optional<Grade> least, std::string indent)
        : fill_{fill}, least_{least}, indent_{std::move(indent)} {}

    void leaf(const FieldInfo& info, FieldBase& field) override {
        std::string value = fill_ == Fill::examples ? example_of(info, field) : "";
        if (in_use(info)) ++to_fill_;
        add(info, comment_for(info, field), value.empty() ? "" : " " + value, "");
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        const Grade least = has_essential_key(group) ? Grade::essential : Grade::expected;
        StarterWriter below{fill_, in_use(info) ? std::optional{least} : std::nullopt, indent_ + "  "};
        group.describe(below);
        to_fill_ += below.to_fill_;
        add(info, heading_for(info), "", below.text());
    }
    void list(const FieldInfo& info, ListBase& list) override {
        StarterWriter below{fill_, in_use(info) ? std::optional{Grade::essential} : std::nullopt, indent_ + "    "};
        list.describe_element(below);
        to_fill_ += below.to_fill_;
        add(info, heading_for(info), "", line(in_use(info), indent_ + "  ", "-") + below.text());
    }

    std::string text(std::string_view before_the_rest = "") {
        std::ranges::stable_sort(parts_, std::ranges::greater{}, &Part::grade);
        std::map<std::string, std::string_view> explained;
        std::string text;
        for (const Part& part : parts_) {
            if (part.grade != Grade::essential) text += std::exchange(before_the_rest, "");
            if (indent_.empty()) text += '\n';
            // A group of the same keys is explained once among its neighbours.
            const Inside inside = inside_of(part.below);
            const auto [first, is_new] = explained.emplace(inside.words, part.key);
            const bool again = !is_new && !inside.words.empty();
            text += indent_ + part.comment + (again ? fmt::format(" Same keys as {}.", first->second) : "") + "\n";
            text += part.line + (again ? inside.keys : part.below);
        }
        return text;
    }
    /// How many values are to be written by hand.
    std::size_t to_fill() const { return to_fill_; }

  private:
    struct Part {
        Grade grade;
        std::string_view key;
        std::string comment;
        std::string line;
        std::string below;
    };
    /// The lines of a group, told apart.
    struct Inside {
        std::string words;
        std::string keys;
    };

    static Inside inside_of(std::string_view below) {
        Inside inside;
        for (const std::string& one : split(below, '\n'))
            if (!one.empty()) (explains(one) ? inside.words : inside.keys) += one + "\n";
        return inside;
    }

    bool in_use(const FieldInfo& info) const { return least_ && (fill_ == Fill::examples || info.grade >= *least_); }
    static std::string line(bool used, std::string_view indent, std::string_view text) {
        return fmt::format("{}{}{}\n", indent, used ? "" : "#", text);
    }
    static std::string example_of(const FieldInfo& info, const FieldBase& field) {
        if (!info.example.empty()) return std::string{info.example};
        return field.choices().empty() ? "unknown" : std::string{field.choices().front()};
    }
    static std::string answers(const FieldInfo& info) {
        return fmt::format("{}{}", info.none ? " Or none." : "", info.off ? " Or off." : "");
    }

    std::string heading_for(const FieldInfo& info) const {
        const bool blank_none = info.none && in_use(info);
        return fmt::format(
            "# {} ({}).{}", info.help.empty() ? info.key : info.help, name_of(info.grade),
            blank_none ? " Or none: write it behind the colon and delete the keys inside." : answers(info));
    }
    static std::string comment_for(const FieldInfo& info, const FieldBase& field) {
        const DeclaredField declared{
            {}, info, field.kind(), field.dimension(), {field.choices().begin(), field.choices().end()}};
        const std::string_view help = info.help.empty() ? info.key : info.help;
        const std::string takes = what_it_takes(declared);
        const bool said = help.find(takes) != std::string_view::npos;  // "neck_tube, mask or mouthpiece"
        return fmt::format(
            "# {} ({}{}).{}{}", help, name_of(info.grade), said ? "" : "; " + takes,
            info.example.empty() ? "" : fmt::format(" Example: {}{}", info.example, info.none || info.off ? "." : ""),
            answers(info));
    }
    void add(const FieldInfo& info, std::string comment, const std::string& value, std::string below) {
        parts_.push_back({info.grade, info.key, std::move(comment),
                          line(in_use(info), indent_, fmt::format("{}:{}", info.key, value)), std::move(below)});
    }

    Fill fill_;
    std::optional<Grade> least_;
    std::string indent_;
    std::vector<Part> parts_;
    std::size_t to_fill_ = 0;
};

constexpr std::string_view kHead =
    "# Profile of one home.\n"
    "# 1. Fill in the {} blanks: keys without a # that have nothing behind the colon and nothing inside. All are in "
    "the\n"
    "#    first part of this file. Nothing is printed without them. If nobody knows an answer, write unknown.\n"
    "# 2. Run `ventfolio check` on this file. It names each blank that is left, by line and column. When none is left, "
    "it\n"
    "#    names what your answers ask for: a mode, for example, asks for its settings.\n"
    "# 3. To use a key that has a #, take the # away, there and from the group around it, and write its value.\n"
    "#    An expected key that is not used prints as NOT RECORDED.\n"
    "# Numbers carry their unit, as the device or the order shows it: 21 cmH2O, never 21 alone.\n"
    "# Blanks in front of a key matter: leave them as they are. Tabs are not accepted.\n"
    "# Put a text that holds a # or a colon in quotation marks: \"12 Mill Lane #4\".\n"
    "# An editor that knows JSON Schema explains and completes the keys while you type. Run\n"
    "# `ventfolio schema > profile.schema.json` in this folder, and write this as the first line, with one # in "
    "front:\n"
    "# # yaml-language-server: $schema=profile.schema.json\n";

constexpr std::string_view kEndOfBlanks =
    "\n"
    "# ======== End of the first part: all blanks stand above this line. ========\n";

std::string written(const std::function<void(Visitor&)>& blank, Fill fill) {
    StarterWriter writer{fill, Grade::essential, ""};
    blank(writer);
    return fmt::format(kHead, writer.to_fill()) + writer.text(kEndOfBlanks);
}

}  // namespace

std::string starter_profile(const std::function<void(Visitor&)>& blank) { return written(blank, Fill::empty); }
std::string example_profile(const std::function<void(Visitor&)>& blank) { return written(blank, Fill::examples); }

}  // namespace ventfolio
