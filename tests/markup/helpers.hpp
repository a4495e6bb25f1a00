#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <string_view>
#include <vector>

#include "markup/render.hpp"

/// Shared by the tests of this room.
namespace ventfolio::testing {

inline TemplateData value(std::string text, std::string field = "field") {
    PrintedValue printed;
    printed.field = std::move(field);
    printed.parts = {{PrintedPart::Kind::word, std::move(text)}};
    return printed;
}

inline TemplateData object(TemplateData::Object members) { return members; }
inline TemplateData list(TemplateData::Items items) { return items; }

inline Template parsed(std::string text, const Partials& partials = {}) {
    return parse_template({"sheet.md", std::move(text)}, partials);
}

inline Rendered rendered(std::string text, TemplateData::Object data = {}, const Partials& partials = {}) {
    return render(parsed(std::move(text), partials), TemplateData{std::move(data)});
}

/// "rule file:line:column" of each finding, one a line.
inline std::string places(const std::vector<Finding>& findings) {
    std::string all;
    for (const Finding& finding : findings) {
        const Mark& mark = finding.marks.front();
        all += fmt::format("{} {}:{}:{}\n", finding.rule, mark.file, mark.place.line, mark.place.column);
    }
    return all;
}

inline std::string shown(const Inlines& inlines) {
    std::string out;
    for (const Inline& piece : inlines) {
        std::string text;
        switch (piece.kind) {
            case Inline::Kind::text:
                text = piece.text;
                break;
            case Inline::Kind::value:
                text = "<" + piece.value.text() + ">";
                break;
            case Inline::Kind::line_break:
                text = "/";
                break;
            case Inline::Kind::figure:
                text = "(" + piece.text + ": " + piece.alternative + ")";
                break;
            case Inline::Kind::picture:
                text = "(picture " + piece.text + ": " + piece.alternative + ")";
                break;
            case Inline::Kind::check_box:
                text = "[ ]";
                break;
            case Inline::Kind::write_in:
                text = fmt::format("_{}_", piece.text.size());
                break;
        }
        out += piece.strong ? "**" + text + "**" : text;
    }
    return out;
}

inline std::string shown(const Attributes& attributes) {
    std::string out;
    for (const std::string& name : attributes.classes) out += " ." + name;
    for (const auto& [key, text] : attributes.options) out += " " + key + "=" + text;
    return out.empty() ? out : " {" + out.substr(1) + "}";
}

inline std::string shown(const TableRow& row) {
    std::string out = "|";
    for (const TableCell& cell : row.cells) out += shown(cell.inlines) + "|";
    return out;
}

inline std::string shown(const std::vector<Block>& blocks);

inline std::string shown(const Block& block) {
    const std::string attributes = shown(block.attributes);
    const std::string words = shown(block.inlines);
    switch (block.kind) {
        case Block::Kind::heading:
            return fmt::format("h{} {}{}{}", block.level, words, attributes,
                               block.aside.empty() ? "" : " aside " + shown(block.aside));
        case Block::Kind::paragraph:
            return "p " + words + attributes;
        case Block::Kind::list:
            return (block.ordered ? "ol" : "ul") + attributes + "(" + shown(block.children) + ")";
        case Block::Kind::item:
            return (block.task ? "task(" : "li(") + shown(block.children) + ")";
        case Block::Kind::call_out:
            return block.label + attributes + "(" + shown(block.children) + ")";
        case Block::Kind::rule:
            return "rule" + attributes;
        case Block::Kind::table:
            break;
    }
    std::string out = "table" + attributes + "(";
    for (const Alignment alignment : block.alignments) out += "alcr"[static_cast<int>(alignment)];
    out += " " + shown(block.head);
    for (const TableRow& row : block.rows) out += " " + shown(row);
    return out + ")";
}

/// The tree in one line, for comparison.
inline std::string shown(const std::vector<Block>& blocks) {
    std::string out;
    for (const Block& block : blocks) out += (out.empty() ? "" : "; ") + shown(block);
    return out;
}

}  // namespace ventfolio::testing
