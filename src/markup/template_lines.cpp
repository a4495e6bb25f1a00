#include "markup/template_lines.hpp"

#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string with_single_blanks(std::string_view text) {
    std::string out;
    for (const std::string& word : split(text, ' '))
        if (!word.empty()) out += (out.empty() ? "" : " ") + word;
    return out;
}

class LineReader {
  public:
    explicit LineReader(const Template& sheet) : template_{sheet} {}

    std::vector<TemplateLine> read() {
        walk(template_.body);
        end_line();
        return std::move(lines_);
    }

  private:
    void walk(const std::vector<TemplateNode>& nodes) {
        for (const TemplateNode& node : nodes) {
            switch (node.kind) {
                case TemplateNode::Kind::piece:
                    piece(template_.pieces[node.piece]);
                    break;
                case TemplateNode::Kind::value:
                    if (trimmed(line_).empty()) start(node.span);
                    line_ += "{{" + node.name + "}}";
                    break;
                case TemplateNode::Kind::section:
                    section(node, "#");
                    break;
                case TemplateNode::Kind::inverted:
                    section(node, "^");
                    break;
            }
        }
    }

    /// A section inside a line belongs to its words, one around whole lines to their conditions.
    void section(const TemplateNode& node, const std::string& sign) {
        const bool inside = !trimmed(line_).empty();
        if (inside) line_ += "{{" + sign + node.name + "}}";
        conditions_.push_back(sign + node.name);
        walk(node.children);
        conditions_.pop_back();
        if (inside) line_ += "{{/" + node.name + "}}";
    }

    void piece(const TemplatePiece& one) {
        if (one.span.begin == one.span.end) return;
        const std::string& file = template_.files[one.span.file].text;
        const std::string text = file.substr(one.span.begin, one.span.end - one.span.begin);
        if (trimmed(line_).empty() && !trimmed(text).empty()) start(one.span);
        line_ += with_replaced(text, "\n", "");
        if (text.ends_with('\n')) end_line();
    }

    void start(TemplateSpan span) {
        begun_ = span;
        begun_in_ = joined(conditions_, " ");
    }

    void end_line() {
        std::string text = with_single_blanks(line_);
        line_.clear();
        if (text.empty()) return;
        const Place place = template_.files[begun_.file].place(begun_.begin, begun_.end);
        lines_.push_back({std::move(text), begun_in_, begun_.file, place});
    }

    const Template& template_;
    std::vector<TemplateLine> lines_;
    std::vector<std::string> conditions_;
    std::string line_;
    TemplateSpan begun_;
    std::string begun_in_;
};

void add_names(const std::vector<TemplateNode>& nodes, std::vector<UsedName>& names) {
    for (const TemplateNode& node : nodes) {
        if (node.kind == TemplateNode::Kind::piece) continue;
        const char* sign = node.kind == TemplateNode::Kind::section    ? "#"
                           : node.kind == TemplateNode::Kind::inverted ? "^"
                                                                       : "";
        const std::string name = sign + node.name;
        if (std::ranges::find(names, name, &UsedName::name) == names.end()) names.push_back({name, node.span});
        add_names(node.children, names);
    }
}

}  // namespace

std::vector<TemplateLine> lines_of(const Template& sheet) { return LineReader{sheet}.read(); }

std::vector<UsedName> names_in(const Template& sheet) {
    std::vector<UsedName> names;
    add_names(sheet.title, names);
    add_names(sheet.body, names);
    return names;
}

}  // namespace ventfolio
