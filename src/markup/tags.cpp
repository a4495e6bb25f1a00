#include "markup/tags.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <optional>

#include "units/ascii.hpp"

namespace ventfolio {
namespace {

using Kind = TemplateToken::Kind;

bool is_name(std::string_view name) {
    if (name == ".") return true;
    if (name.starts_with('.')) name.remove_prefix(1);  // of the innermost group alone: see scope.hpp
    if (name.empty() || name.front() == '.' || name.back() == '.' || name.find("..") != name.npos) return false;
    return std::ranges::all_of(name, [](char c) { return is_letter_or_digit(c) || c == '_' || c == '-' || c == '.'; });
}

bool is_partial_name(std::string_view name) {
    std::string without_folders{name};
    std::ranges::replace(without_folders, '/', '-');
    return name != "." && is_name(without_folders);
}

class Scanner {
  public:
    Scanner(std::string_view text, TemplateSpan range, Faults& faults) : text_{text}, range_{range}, faults_{faults} {}

    std::vector<TemplateToken> scan() {
        std::size_t at = range_.begin;
        while (at < range_.end) {
            const std::size_t open = std::min(text_.find("{{", at), range_.end);
            if (open > at) found_.push_back({Kind::words, span(at, open), span(at, open)});
            if (open == range_.end) break;
            at = tag(open);
        }
        leave_out_lines_of_tags();
        return std::move(found_);
    }

  private:
    TemplateSpan span(std::size_t begin, std::size_t end) const { return {range_.file, begin, end}; }

    /// Reads the tag at `open`; gives where the text goes on.
    std::size_t tag(std::size_t open) {
        const bool triple = text_.substr(open).starts_with("{{{");
        const std::string_view close = triple ? "}}}" : "}}";
        const std::size_t inner = open + close.size();
        const std::size_t shut = text_.find(close, inner);
        if (shut == text_.npos || shut + close.size() > range_.end) {
            faults_.refuse({"template-tag-unclosed", span(open, std::min(open + 2, range_.end)),
                            "A tag opens here and is not closed.", "not closed", "Close it with two braces: }}"});
            return range_.end;
        }
        const TemplateSpan whole = span(open, shut + close.size());
        if (triple)
            not_allowed(whole, "Three braces are not allowed: a value is always printed as itself.", "use two braces");
        else
            add_tag(whole, inner, shut);
        return whole.end;
    }

    void not_allowed(TemplateSpan whole, std::string message, std::string label) {
        faults_.refuse({"template-tag-not-allowed", whole, std::move(message), std::move(label)});
    }

    void add_tag(TemplateSpan whole, std::size_t inner, std::size_t shut) {
        Kind kind = Kind::value;
        switch (inner < shut ? text_[inner] : ' ') {
            case '#':
                kind = Kind::section;
                break;
            case '^':
                kind = Kind::inverted;
                break;
            case '/':
                kind = Kind::close;
                break;
            case '>':
                kind = Kind::partial;
                break;
            case '!':
                kind = Kind::comment;
                break;
            case '&':
                return not_allowed(whole, "The tag {{& }} is not allowed: a value is always printed as itself.",
                                   "leave out the &");
            case '=':
                return not_allowed(whole, "The braces of tags cannot be changed.", "leave this out");
            default:
                break;
        }
        const TemplateSpan name = without_blanks(kind == Kind::value ? inner : inner + 1, shut);
        const std::string_view word = text_.substr(name.begin, name.end - name.begin);
        const bool good = kind == Kind::comment || (kind == Kind::partial ? is_partial_name(word) : is_name(word));
        if (!good)
            return not_allowed(whole, word.empty() ? "This tag has no name." : "This tag does not hold a name.",
                               "a name is made of letters, digits, _ and -");
        found_.push_back({kind, whole, name});
    }

    TemplateSpan without_blanks(std::size_t begin, std::size_t end) const {
        const auto blank = [](char c) { return c == ' ' || c == '\n'; };
        while (begin < end && blank(text_[begin])) ++begin;
        while (end > begin && blank(text_[end - 1])) --end;
        return span(begin, end);
    }

    bool opens_line(std::size_t index) const {
        if (index == 0) return true;
        const TemplateSpan before = found_[index - 1].span;
        if (found_[index - 1].kind != Kind::words) return false;
        std::size_t at = before.end;
        while (at > before.begin && text_[at - 1] == ' ') --at;
        return at == range_.begin || text_[at - 1] == '\n';
    }

    bool only_blanks(TemplateSpan words) const {
        return text_.substr(words.begin, words.end - words.begin).find_first_not_of(' ') == std::string_view::npos;
    }

    bool is_silent(std::size_t index) const {
        return index < found_.size() && found_[index].kind != Kind::words && found_[index].kind != Kind::value;
    }

    /// Where the line that goes on at token `index` ends, if nothing but blanks is left of it.
    std::optional<std::size_t> end_of_blank_line(std::size_t index) const {
        if (index == found_.size()) return range_.end;
        if (found_[index].kind != Kind::words) return std::nullopt;
        const TemplateSpan words = found_[index].span;
        std::size_t at = words.begin;
        while (at < words.end && text_[at] == ' ') ++at;
        if (at == words.end) return index + 1 == found_.size() ? std::optional{at} : std::nullopt;
        return text_[at] == '\n' ? std::optional{at + 1} : std::nullopt;
    }

    void leave_out_lines_of_tags() {
        for (std::size_t first = 0; first < found_.size(); ++first) {
            if (!is_silent(first) || !opens_line(first)) continue;
            std::size_t last = first;
            for (;;) {
                if (is_silent(last + 1))
                    last += 1;
                else if (is_silent(last + 2) && only_blanks(found_[last + 1].span))
                    last += 2;
                else
                    break;
            }
            if (const auto end = end_of_blank_line(last + 1)) leave_out(first, last, *end);
            first = last;
        }
    }

    void leave_out(std::size_t first, std::size_t last, std::size_t end) {
        std::size_t begin = found_[first].span.begin;
        while (begin > range_.begin && text_[begin - 1] == ' ') --begin;
        const std::string indent{text_.substr(begin, found_[first].span.begin - begin)};
        if (first > 0) found_[first - 1].span.end = begin;
        for (std::size_t index = first; index <= last; ++index) {
            TemplateToken& token = found_[index];
            if (token.kind == Kind::words) token.span.end = token.span.begin;
            token.own_line = token.kind != Kind::words;
            token.indent = indent;
        }
        if (last + 1 < found_.size()) found_[last + 1].span.begin = end;
    }

    std::string_view text_;
    TemplateSpan range_;
    Faults& faults_;
    std::vector<TemplateToken> found_;
};

}  // namespace

std::vector<TemplateToken> tokens(const std::vector<SourceText>& files, TemplateSpan range, Faults& faults) {
    return Scanner{files[range.file].text, range, faults}.scan();
}

}  // namespace ventfolio
