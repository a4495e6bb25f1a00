#include "markup/attributes.hpp"

#include "markup/inline_runs.hpp"
#include "units/ascii.hpp"

namespace ventfolio {
namespace {

bool is_name_letter(char c) { return is_small_letter(c) || is_digit(c) || c == '-' || c == '_'; }

bool is_word_letter(char c) {
    return is_name_letter(c) || is_capital_letter(c) || c == '.' || c == '/' || c == ':' || c == '%' || c == ',';
}

class GroupReader {
  public:
    GroupReader(std::string_view flat, std::size_t begin) : flat_{flat}, at_{begin + 1} { group_.begin = begin; }

    std::optional<AttributeGroup> read() {
        bool any = false;
        for (;; any = true) {
            const bool blank = skip_blanks();
            if (at_ == flat_.size()) return std::nullopt;
            if (flat_[at_] == '}') break;
            if (any && !blank) return std::nullopt;
            if (!(flat_[at_] == '.' ? read_class() : read_option())) return std::nullopt;
        }
        group_.end = at_ + 1;
        return any ? std::optional{std::move(group_)} : std::nullopt;
    }

  private:
    bool skip_blanks() {
        const std::size_t before = at_;
        while (at_ < flat_.size() && flat_[at_] == ' ') ++at_;
        return at_ > before;
    }

    template <typename Letter>
    std::string take(Letter letter) {
        const std::size_t before = at_;
        while (at_ < flat_.size() && letter(flat_[at_])) ++at_;
        return std::string{flat_.substr(before, at_ - before)};
    }

    bool read_class() {
        ++at_;
        std::string name = take(is_name_letter);
        if (name.empty()) return false;
        group_.attributes.classes.push_back(std::move(name));
        return true;
    }

    bool read_option() {
        std::string key = take(is_name_letter);
        if (key.empty() || at_ == flat_.size() || flat_[at_] != '=') return false;
        ++at_;
        if (at_ < flat_.size() && flat_[at_] == '"') return read_quoted(std::move(key));
        std::string value = take(is_word_letter);
        if (value.empty() || key == "aside") return false;
        group_.attributes.options.emplace_back(std::move(key), std::move(value));
        return true;
    }

    bool read_quoted(std::string key) {
        const std::size_t close = flat_.find('"', at_ + 1);
        if (close == flat_.npos) return false;
        const std::size_t inner = at_ + 1;
        at_ = close + 1;
        if (key == "aside") {
            if (group_.has_aside) return false;
            group_.has_aside = true;
            group_.aside_begin = inner;
            group_.aside_end = close;
            return true;
        }
        std::string value{flat_.substr(inner, close - inner)};
        if (value.find(InlineRuns::kObject) != value.npos || value.find(InlineRuns::kEscaped) != value.npos)
            return false;
        group_.attributes.options.emplace_back(std::move(key), std::move(value));
        return true;
    }

    std::string_view flat_;
    std::size_t at_;
    AttributeGroup group_;
};

bool may_open_after(char before) { return before == ' ' || before == InlineRuns::kObject; }

}  // namespace

std::optional<AttributeGroup> attribute_group(std::string_view flat, std::size_t begin) {
    if (begin >= flat.size() || flat[begin] != '{') return std::nullopt;
    return GroupReader{flat, begin}.read();
}

TrailingGroup trailing_group(std::string_view flat) {
    while (flat.ends_with(' ')) flat.remove_suffix(1);
    TrailingGroup found;
    if (!flat.ends_with('}')) return found;
    for (std::size_t open = flat.find('{'); open != flat.npos; open = flat.find('{', open + 1)) {
        if (open > 0 && !may_open_after(flat[open - 1])) continue;
        found.group = attribute_group(flat, open);
        if (found.group && found.group->end == flat.size()) return {std::move(found.group), std::nullopt};
        found.group.reset();
        found.broken = open;
    }
    if (!found.broken && flat.rfind('{') != flat.npos) found.broken = flat.rfind('{');
    return found;
}

}  // namespace ventfolio
