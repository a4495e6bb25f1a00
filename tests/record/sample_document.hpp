#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sheets/document.hpp"

/// One document with every kind of block and inline in it, and a walk over all its words that shares nothing with the
/// code under test.
namespace ventfolio::sample {

inline Inline piece(Inline::Kind kind, std::string words = {}, std::string alternative = {}) {
    Inline part;
    part.kind = kind;
    part.text = std::move(words);
    part.alternative = std::move(alternative);
    return part;
}

inline Inline text(std::string words) { return piece(Inline::Kind::text, std::move(words)); }

inline PrintedValue printed(std::string field, std::vector<PrintedPart> parts) {
    PrintedValue value;
    value.field = std::move(field);
    value.parts = std::move(parts);
    return value;
}

inline Inline value(std::string number, std::string unit) {
    Inline part = piece(Inline::Kind::value);
    part.value = printed("prescriptions.day.setting",
                         {{PrintedPart::Kind::number, std::move(number)}, {PrintedPart::Kind::unit, std::move(unit)}});
    return part;
}

inline Block block(Block::Kind kind, Inlines inlines = {}, std::vector<Block> children = {}) {
    Block made;
    made.kind = kind;
    made.inlines = std::move(inlines);
    made.children = std::move(children);
    return made;
}

inline Block paragraph(Inlines inlines) { return block(Block::Kind::paragraph, std::move(inlines)); }

inline Block heading(int level, std::string words) {
    Block made = block(Block::Kind::heading, {text(std::move(words))});
    made.level = level;
    return made;
}

inline Block item(std::string words, bool task = false) {
    Block made = block(Block::Kind::item, {}, {paragraph({text(std::move(words))})});
    made.task = task;
    return made;
}

inline Block call_out(std::string label, std::string words) {
    Block made = block(Block::Kind::call_out, {}, {paragraph({text(std::move(words))})});
    made.label = std::move(label);
    return made;
}

inline TableRow row(Inline first, Inline second) {
    TableRow made;
    made.cells = {TableCell{{std::move(first)}}, TableCell{{std::move(second)}}};
    return made;
}

inline Block table() {
    Block made = block(Block::Kind::table);
    made.head = row(text("Setting"), text("Value"));
    made.rows = {row(text("Rate"), value("14", "\u00A0/min")), row(text("Volume"), value("450", "\u00A0mL"))};
    return made;
}

inline Inline picture(std::string path, std::string digest) {
    Inline made = piece(Inline::Kind::picture, std::move(path), "Our clinic");
    made.picture = std::make_shared<const Picture>(Picture{1, 1, "x", std::move(digest)});
    return made;
}

inline Document document() {
    Document sheet;
    sheet.name = "bedside-card/bed";
    sheet.sheet = "bedside-card";
    sheet.place = "bed";
    sheet.language = "en";
    sheet.template_file = "en/bedside-card.md";
    sheet.title = {text("Bedside card")};
    sheet.identifiers = {printed("person.name", {{PrintedPart::Kind::word, "Ada Oduya"}}),
                         printed("record_number", {{PrintedPart::Kind::word, "V-0412"}})};
    Block first = heading(1, "If the chest is not moving");
    first.attributes = {.classes = {"act"}, .options = {{"span", "8"}, {"tone", "strong words"}}};
    first.aside = {text("Act now")};
    Block steps = block(Block::Kind::list, {}, {item("Bag"), item("Call", true)});
    steps.ordered = true;
    sheet.blocks = {first,
                    paragraph({text("High pressure"), value("35", "\u00A0cmH2O"), piece(Inline::Kind::line_break),
                               text("Date"), piece(Inline::Kind::write_in, "____"), piece(Inline::Kind::check_box),
                               piece(Inline::Kind::figure, "hookup", "Hose to tube")}),
                    steps,
                    call_out("WARNING", "Deflate the cuff first"),
                    block(Block::Kind::rule),
                    table()};
    return sheet;
}

using EachText = std::function<void(std::string&)>;

inline void each_text(Inlines& inlines, const EachText& visit) {
    for (Inline& part : inlines) {
        if (part.kind == Inline::Kind::text || part.kind == Inline::Kind::figure) visit(part.text);
        if (part.kind == Inline::Kind::figure) visit(part.alternative);
        for (PrintedPart& stretch : part.value.parts) visit(stretch.text);
    }
}

inline void each_text(Block& block, const EachText& visit) {
    if (!block.label.empty()) visit(block.label);
    for (auto& [key, words] : block.attributes.options)
        if (key != "span") visit(words);
    each_text(block.inlines, visit);
    each_text(block.aside, visit);
    for (TableCell& cell : block.head.cells) each_text(cell.inlines, visit);
    for (TableRow& row : block.rows)
        for (TableCell& cell : row.cells) each_text(cell.inlines, visit);
    for (Block& child : block.children) each_text(child, visit);
}

inline void each_text(Document& document, const EachText& visit) {
    each_text(document.title, visit);
    for (PrintedValue& identifier : document.identifiers)
        for (PrintedPart& stretch : identifier.parts) visit(stretch.text);
    for (Block& block : document.blocks) each_text(block, visit);
}

}  // namespace ventfolio::sample
