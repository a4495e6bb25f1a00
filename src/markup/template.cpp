#include "markup/template.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <optional>

#include "markup/faults.hpp"
#include "markup/front_matter.hpp"
#include "markup/markdown_source.hpp"
#include "markup/tags.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kMostBytes = 256 * 1024;
constexpr std::size_t kDeepestSection = 32;

/// LF for line ends, no byte order mark.
std::string with_plain_line_ends(std::string text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    return with_replaced(std::move(text), "\r\n", "\n");
}

bool may_stand_in_a_template(char32_t point) {
    if (point < 0x20) return point == '\n';
    if (point >= 0x7F && point <= 0x9F) return false;
    return !(point >= 0xE000 && point <= 0xF8FF) && point < 0xF0000 && point != 0xFEFF && point != 0x2028 &&
           point != 0x2029;
}

/// True if every character may stand in a template. Faults give the first that may not.
bool check_characters(const SourceText& source, std::size_t file, Faults& faults) {
    constexpr std::string_view kRule = "template-character-not-allowed";
    if (source.text.size() > kMostBytes) {
        faults.refuse({kRule, {file, 0, 0}, "The file is longer than 256 KiB.", "too long"});
        return false;
    }
    if (const auto broken = first_invalid_utf8(source.text)) {
        faults.refuse({kRule, {file, *broken, *broken + 1}, "The file is not UTF-8 from here on.", "broken character"});
        return false;
    }
    std::size_t at = 0;
    for (const char32_t point : code_points(source.text)) {
        const std::size_t size = utf8(point).size();
        if (!may_stand_in_a_template(point)) {
            faults.refuse({kRule,
                           {file, at, at + size},
                           fmt::format("The character U+{:04X} may not stand in a template.", std::uint32_t{point}),
                           point == '\t' ? "a tab; use blanks" : "cannot be printed"});
            return false;
        }
        at += size;
    }
    return true;
}

class Reader {
  public:
    Reader(Template& into, const Partials& partials, Faults& faults)
        : template_{into}, partials_{partials}, faults_{faults} {}

    void read() {
        if (!check_characters(template_.files.front(), 0, faults_)) return;
        FrontMatter front = read_front_matter(template_.files.front(), faults_);
        template_.front_matter = std::move(front.lines);
        if (const FrontMatterLine* title = template_.front("title"))
            template_.title = nodes({0, title->place.begin, title->place.end});
        template_.body = nodes({0, front.body, template_.files.front().text.size()});
    }

  private:
    struct Open {
        TemplateNode section;
        TemplateSpan tag;
    };

    std::vector<TemplateNode> nodes(TemplateSpan range) {
        std::vector<Open> open{{}};
        MarkdownLine line;
        for (const TemplateToken& token : tokens(template_.files, range, faults_)) {
            if (token.kind != TemplateToken::Kind::words && !token.own_line) indent_before(token, range, open.back());
            add(token, range, line, open);
        }
        while (open.size() > 1) close_unclosed(open);
        return std::move(open.front().section.children);
    }

    void add(const TemplateToken& token, TemplateSpan range, MarkdownLine& line, std::vector<Open>& open) {
        using Kind = TemplateToken::Kind;
        switch (token.kind) {
            case Kind::words:
                return add_words(token.span, range, line, open.back());
            case Kind::value: {
                add_piece({TemplatePiece::Kind::value, token.span, {}}, open.back());
                open.back().section.children.push_back(
                    {TemplateNode::Kind::value, 0, word(token.name), token.name, {}});
                line.add("x");
                return;
            }
            case Kind::section:
            case Kind::inverted:
                return open_section(token, open);
            case Kind::close:
                return close_section(token, open);
            case Kind::partial:
                return add_partial(token, open.back());
            case Kind::comment:
                return;
        }
    }

    std::string word(TemplateSpan span) const {
        return template_.files[span.file].text.substr(span.begin, span.end - span.begin);
    }

    bool at_line_start(std::size_t at, TemplateSpan range) const {
        return at == range.begin || template_.files[range.file].text[at - 1] == '\n';
    }

    /// A partial's lines keep the indentation of its tag, also where a line begins with a tag of its own.
    void indent_before(const TemplateToken& token, TemplateSpan range, Open& into) {
        if (indent_.empty() || !at_line_start(token.span.begin, range)) return;
        add_piece({TemplatePiece::Kind::words, {token.span.file, token.span.begin, token.span.begin}, indent_}, into);
    }

    void add_piece(TemplatePiece piece, Open& into) {
        piece.line = partial_line_ > 0 ? partial_line_ : line_of(piece.span.begin);
        if (full(piece.span)) return;
        TemplateNode node;
        node.piece = template_.pieces.size();
        template_.pieces.push_back(std::move(piece));
        into.section.children.push_back(std::move(node));
    }

    /// The line of a byte of the template's own file.
    std::size_t line_of(std::size_t offset) {
        if (line_ends_.empty()) {
            const std::string& text = template_.files.front().text;
            for (std::size_t end = text.find('\n'); end != text.npos; end = text.find('\n', end + 1))
                line_ends_.push_back(end);
            line_ends_.push_back(text.size());
        }
        const auto end = std::ranges::lower_bound(line_ends_, offset);
        return static_cast<std::size_t>(end - line_ends_.begin()) + 1;
    }

    bool full(TemplateSpan span) {
        if (template_.pieces.size() < kMostTemplatePieces) return false;
        if (!std::exchange(told_full_, true))
            faults_.refuse({"template-too-large", span, "The template with its partials has too many lines.",
                            "from here on it is not read"});
        return true;
    }

    void add_words(TemplateSpan span, TemplateSpan range, MarkdownLine& line, Open& into) {
        const std::string_view text = template_.files[span.file].text;
        for (std::size_t begin = span.begin; begin < span.end;) {
            const std::size_t end = std::min(text.find('\n', begin), span.end - 1) + 1;
            std::string indent = at_line_start(begin, range) ? indent_ : std::string{};
            for (TemplatePiece piece : line.pieces({span.file, begin, end}, text)) {
                piece.indent = std::exchange(indent, {});
                add_piece(std::move(piece), into);
            }
            begin = end;
        }
    }

    void open_section(const TemplateToken& token, std::vector<Open>& open) {
        const bool inverted = token.kind == TemplateToken::Kind::inverted;
        if (open.size() > kDeepestSection)
            faults_.refuse({"template-too-large", token.span, "Sections are nested deeper than 32.", "too deep"});
        TemplateNode section{
            inverted ? TemplateNode::Kind::inverted : TemplateNode::Kind::section, 0, word(token.name), token.name, {}};
        open.push_back({std::move(section), token.span});
    }

    void close_section(const TemplateToken& token, std::vector<Open>& open) {
        const std::string name = word(token.name);
        const auto matches = [&](const Open& one) { return one.section.name == name; };
        if (std::none_of(open.begin() + 1, open.end(), matches)) {
            faults_.refuse({"template-section-unclosed", token.span,
                            open.size() > 1 ? fmt::format("This closes the section \"{}\", but \"{}\" is open.", name,
                                                          open.back().section.name)
                                            : fmt::format("This closes the section \"{}\", which is not open.", name),
                            "closes nothing"});
            return;
        }
        while (!matches(open.back())) close_unclosed(open);
        close_last(open);
    }

    void close_unclosed(std::vector<Open>& open) {
        const std::string& name = open.back().section.name;
        faults_.refuse({"template-section-unclosed", open.back().tag,
                        fmt::format("The section \"{}\" opens here and is not closed.", name), "not closed",
                        fmt::format("Close it with {{{{/{}}}}}.", name)});
        close_last(open);
    }

    static void close_last(std::vector<Open>& open) {
        TemplateNode section = std::move(open.back().section);
        open.pop_back();
        open.back().section.children.push_back(std::move(section));
    }

    void add_partial(const TemplateToken& token, Open& into) {
        const std::string name = word(token.name);
        const auto partial = partials_.find(name);
        if (partial == partials_.end()) return unknown_partial(name, token.span);
        if (std::ranges::find(in_partials_, name) != in_partials_.end()) {
            faults_.refuse({"template-partial-recursive", token.span,
                            fmt::format("The partial \"{}\" contains itself.", name), "contains itself"});
            return;
        }
        if (full(token.span)) return;
        const auto file = file_of(partial->second, token.own_line);
        if (!file) return;
        const bool outermost = in_partials_.empty();
        const std::string outer_indent = indent_;
        if (outermost) partial_line_ = line_of(token.span.begin);
        if (token.own_line) indent_ += token.indent;
        in_partials_.push_back(name);
        for (TemplateNode& node : nodes({*file, 0, template_.files[*file].text.size()}))
            into.section.children.push_back(std::move(node));
        in_partials_.pop_back();
        indent_ = outer_indent;
        if (outermost) partial_line_ = 0;
    }

    void unknown_partial(const std::string& name, TemplateSpan span) {
        std::vector<std::string> names;
        for (const auto& [known, file] : partials_) names.push_back(known);
        const auto near = nearest(name, names);
        faults_.refuse({"template-partial-unknown", span, fmt::format("There is no partial called \"{}\".", name),
                        near ? fmt::format("the nearest is \"{}\"", *near) : "no such partial"});
    }

    /// A partial whose last line has no line end would run into the next line of the template.
    std::optional<std::size_t> file_of(const SourceText& partial, bool own_line) {
        SourceText source{partial.name, with_plain_line_ends(partial.text)};
        if (own_line && !source.text.empty() && source.text.back() != '\n') source.text += '\n';
        const auto known = std::ranges::find_if(template_.files, [&](const SourceText& file) {
            return file.name == source.name && file.text == source.text;
        });
        const auto index = static_cast<std::size_t>(known - template_.files.begin());
        if (known != template_.files.end()) return index;
        template_.files.push_back(std::move(source));
        return check_characters(template_.files.back(), index, faults_) ? std::optional{index} : std::nullopt;
    }

    Template& template_;
    const Partials& partials_;
    Faults& faults_;
    std::vector<std::string> in_partials_;
    std::string indent_;
    std::size_t partial_line_ = 0;
    std::vector<std::size_t> line_ends_;
    bool told_full_ = false;
};

}  // namespace

const FrontMatterLine* Template::front(std::string_view key) const {
    const auto line = std::ranges::find(front_matter, key, &FrontMatterLine::key);
    return line == front_matter.end() ? nullptr : &*line;
}

Template parse_template(SourceText source, const Partials& partials, std::shared_ptr<const Pictures> pictures) {
    Template parsed;
    parsed.pictures = std::move(pictures);
    source.text = with_plain_line_ends(std::move(source.text));
    parsed.files.push_back(std::move(source));
    Faults faults{parsed.files};
    Reader{parsed, partials, faults}.read();
    parsed.findings = faults.take();
    return parsed;
}

}  // namespace ventfolio
