#include "profile/starter.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <vector>

#include "profile/field_list.hpp"
#include "profile/read_value.hpp"

namespace ventfolio {
namespace {

enum class Fill { empty, examples };

/// Writes one group; each of its parts is put down with its grade, so that the essential ones can go first.
class StarterWriter final : public Visitor {
  public:
    StarterWriter(Fill fill, bool in_use, std::string indent)
        : fill_{fill}, in_use_{in_use}, indent_{std::move(indent)} {}

    void leaf(const FieldInfo& info, FieldBase& field) override {
        std::string value = fill_ == Fill::examples ? example_of(info, field) : "";
        add(info, comment_for(info, field), value.empty() ? "" : " " + value, "");
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        StarterWriter below{fill_, in_use(info), indent_ + "  "};
        group.describe(below);
        add(info, heading_for(info), "", below.text());
    }
    void list(const FieldInfo& info, ListBase& list) override {
        StarterWriter below{fill_, in_use(info), indent_ + "    "};
        list.describe_element(below);
        add(info, heading_for(info), "", line(in_use(info), indent_ + "  ", "-") + below.text());
    }

    std::string text() {
        std::ranges::stable_sort(parts_, std::ranges::greater{}, &Part::grade);
        std::string text;
        for (const Part& part : parts_) text += part.text;
        return text;
    }

  private:
    struct Part {
        Grade grade;
        std::string text;
    };

    bool in_use(const FieldInfo& info) const {
        return in_use_ && (fill_ == Fill::examples || info.grade == Grade::essential);
    }
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
        return fmt::format("{}# {} ({}).{}\n", indent_, info.help.empty() ? info.key : info.help, name_of(info.grade),
                           answers(info));
    }
    std::string comment_for(const FieldInfo& info, const FieldBase& field) const {
        const DeclaredField declared{
            {}, info, field.kind(), field.dimension(), {field.choices().begin(), field.choices().end()}};
        return fmt::format(
            "{}# {} ({}; {}).{}{}\n", indent_, info.help.empty() ? info.key : info.help, name_of(info.grade),
            what_it_takes(declared),
            info.example.empty() ? "" : fmt::format(" Example: {}{}", info.example, info.none || info.off ? "." : ""),
            answers(info));
    }
    void add(const FieldInfo& info, const std::string& comment, const std::string& value, const std::string& below) {
        const bool top = indent_.empty();
        parts_.push_back(
            {info.grade, fmt::format("{}{}{}{}", top ? "\n" : "", comment,
                                     line(in_use(info), indent_, fmt::format("{}:{}", info.key, value)), below)});
    }

    Fill fill_;
    bool in_use_;
    std::string indent_;
    std::vector<Part> parts_;
};

constexpr std::string_view kHead =
    "# Profile of one home. Fill in the keys that are not behind a #: nothing is printed without them.\n"
    "# Every other key can be used too: take away the # in front of it and of the group that it stands in,\n"
    "# and write its value. A key that is expected and not used prints as NOT RECORDED.\n"
    "# Numbers carry their unit, as the device or the order shows it. If nobody knows an answer, write unknown.\n"
    "# Blanks in front of a key matter; tabs are not accepted.\n";

std::string written(const std::function<void(Visitor&)>& blank, Fill fill) {
    StarterWriter writer{fill, true, ""};
    blank(writer);
    return std::string{kHead} + writer.text();
}

}  // namespace

std::string starter_profile(const std::function<void(Visitor&)>& blank) { return written(blank, Fill::empty); }
std::string example_profile(const std::function<void(Visitor&)>& blank) { return written(blank, Fill::examples); }

}  // namespace ventfolio
