#include "markup/markdown_source.hpp"

#include <algorithm>

#include "units/ascii.hpp"

namespace ventfolio {
namespace {

bool is_escaped(std::string_view line, std::size_t at) {
    std::size_t backslashes = 0;
    while (backslashes < at && line[at - 1 - backslashes] == '\\') ++backslashes;
    return backslashes % 2 == 1;
}

/// How many letters a list mark takes ("- ", "12. "); 0 where there is none.
std::size_t list_mark(std::string_view text) {
    std::size_t digits = 0;
    while (digits < text.size() && is_digit(text[digits])) ++digits;
    const std::string_view marks = digits > 0 ? ".)" : "-*+";
    if (digits + 1 >= text.size() || marks.find(text[digits]) == marks.npos) return 0;
    return text[digits + 1] == ' ' ? digits + 2 : 0;
}

}  // namespace

void MarkdownLine::add(std::string_view words) {
    const std::size_t line_end = words.rfind('\n');
    if (line_end == words.npos)
        before_ += words;
    else
        before_ = words.substr(line_end + 1);
}

bool MarkdownLine::opens_task(std::string_view before) const {
    const std::string all = before_ + std::string{before};
    std::string_view rest = all;
    bool in_item = false;
    while (!rest.empty()) {
        const std::size_t mark = list_mark(rest);
        if (mark == 0 && rest.front() != ' ' && rest.front() != '>') return false;
        in_item = in_item || mark > 0;
        rest.remove_prefix(std::max<std::size_t>(mark, 1));
    }
    return in_item;
}

std::vector<TemplatePiece> MarkdownLine::pieces(TemplateSpan span, std::string_view file) {
    const std::string_view line = file.substr(span.begin, span.end - span.begin);
    std::vector<TemplatePiece> found;
    std::size_t done = 0;
    const auto cut = [&](TemplatePiece::Kind kind, std::size_t begin, std::size_t end) {
        if (begin > done)
            found.push_back({TemplatePiece::Kind::words, {span.file, span.begin + done, span.begin + begin}, {}});
        if (end > begin) found.push_back({kind, {span.file, span.begin + begin, span.begin + end}, {}});
        done = end;
    };
    for (std::size_t at = 0; at < line.size(); ++at) {
        const std::string_view rest = line.substr(at);
        if (rest.starts_with("___") && !is_escaped(line, at)) {
            cut(TemplatePiece::Kind::write_in, at, at + std::min(rest.find_first_not_of('_'), rest.size()));
            at = done - 1;
        } else if (rest.starts_with("[ ]") && !is_escaped(line, at) && !rest.starts_with("[ ](")) {
            if (rest.size() > 3 && rest[3] == ' ' && opens_task(line.substr(0, at))) continue;
            cut(TemplatePiece::Kind::check_box, at, at + 3);
            at = done - 1;
        }
    }
    cut(TemplatePiece::Kind::words, line.size(), line.size());
    add(line);
    return found;
}

}  // namespace ventfolio
