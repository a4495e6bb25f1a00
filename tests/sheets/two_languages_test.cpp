#include "sheets/two_languages.hpp"

#include <doctest/doctest.h>

using namespace ventfolio;

namespace {

Inline words(std::string text, bool strong = false) {
    Inline piece;
    piece.text = std::move(text);
    piece.strong = strong;
    return piece;
}

Inline of_kind(Inline::Kind kind) {
    Inline piece;
    piece.kind = kind;
    return piece;
}

Inline value(std::string number, std::string unit) {
    Inline piece = of_kind(Inline::Kind::value);
    piece.value.field = "prescriptions.0.rate";
    piece.value.parts = {{PrintedPart::Kind::number, std::move(number)},
                         {PrintedPart::Kind::unit, "\u00A0" + std::move(unit)}};
    return piece;
}

Block paragraph(Inlines inlines, std::size_t line = 0) {
    Block block;
    block.inlines = std::move(inlines);
    block.line = line;
    return block;
}

Block heading(std::string text, std::string look) {
    Block block = paragraph({words(std::move(text))});
    block.kind = Block::Kind::heading;
    block.level = 2;
    block.attributes.classes = {std::move(look)};
    return block;
}

Document sheet(std::string language, std::vector<Block> blocks) {
    Document document;
    document.name = "bedside-card/bed";
    document.template_file = "templates/" + language + "/bedside-card.md";
    document.language = std::move(language);
    document.front_matter = {{"pages", "2"}};
    document.blocks = std::move(blocks);
    return document;
}

/// What a passage says; "/" for a line end, "_" for a line to write on, "[]" for a box, {…} around the second language.
std::string said(const Inlines& inlines) {
    std::string text;
    bool second = false;
    for (const Inline& piece : inlines) {
        if (piece.second != second) text += piece.second ? "{" : "}";
        second = piece.second;
        text += piece.kind == Inline::Kind::line_break  ? "|"
                : piece.kind == Inline::Kind::write_in  ? "_"
                : piece.kind == Inline::Kind::check_box ? "[]"
                                                        : plain_text({piece});
    }
    return text + (second ? "}" : "");
}

std::string joined(Inlines first, Inlines second) {
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", {paragraph(std::move(first))}),
                                       sheet("es", {paragraph(std::move(second))}), findings);
    REQUIRE(both.has_value());
    return said(both->blocks.front().inlines);
}

}  // namespace

TEST_CASE("each passage stands in the first language, and under it in the second") {
    const auto box = [] { return of_kind(Inline::Kind::check_box); };
    const auto line = [] { return of_kind(Inline::Kind::write_in); };
    struct Row {
        Inlines first;
        Inlines second;
        const char* both;
    };
    const Row rows[] = {
        {{words("Hose off.")}, {words("Quite la manguera.")}, "Hose off.|{Quite la manguera.}"},
        {{words("Dell")}, {words("Dell")}, "Dell"},
        {{value("14", "breaths per minute")}, {value("14", "por minuto")}, "14\u00A0breaths per minute|{por minuto}"},
        {{value("30", "cmH2O")}, {value("30", "cmH2O")}, "30\u00A0cmH2O"},
        {{value("14", "breaths per minute")},
         {value("16", "por minuto")},
         "14\u00A0breaths per minute|{16\u00A0por minuto}"},
        {{box(), words(" Yes "), box(), words(" No")},
         {box(), words(" Sí "), box(), words(" No")},
         "[] Yes / {Sí} [] No"},
        {{words("Name "), line()}, {words("Nombre "), line()}, "Name / {Nombre} _"},
        {{words("Suction")}, {}, "Suction"},
    };
    for (const Row& row : rows) CHECK(joined(row.first, row.second) == row.both);
}

TEST_CASE("a telephone number stands once, with its name and its reasons in both languages beside it") {
    const auto call = [](std::string name, std::string reason) {
        return std::vector<Block>{heading("", "calls"),
                                  paragraph({words(std::move(name), true), words(" 911 "), words(std::move(reason))})};
    };
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", call("Emergency", "not waking")),
                                       sheet("es", call("Emergencia", "no despierta")), findings);
    REQUIRE(both.has_value());
    CHECK(said(both->blocks[1].inlines) == "Emergency / {Emergencia} 911 not waking / {no despierta}");
}

namespace {

Inline name(std::string text, bool strong = false) {
    Inline piece = of_kind(Inline::Kind::value);
    piece.value.field = "contacts.prescriber_on_call.name";
    piece.value.parts = {{PrintedPart::Kind::word, std::move(text)}};
    piece.strong = strong;
    return piece;
}

Inline range(std::string from, std::string word, std::string to, std::string unit) {
    Inline piece = value(std::move(to), std::move(unit));
    piece.value.parts.insert(piece.value.parts.begin(), {{PrintedPart::Kind::number, std::move(from)},
                                                         {PrintedPart::Kind::word, " " + std::move(word) + " "}});
    return piece;
}

/// What the last passage of a section of this look says in both.
std::string joined_in(const std::string& look, Inlines first, Inlines second) {
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", {heading("", look), paragraph(std::move(first))}),
                                       sheet("es", {heading("", look), paragraph(std::move(second))}), findings);
    REQUIRE(both.has_value());
    return said(both->blocks.back().inlines);
}

std::string joined_in_cell(Inlines first, Inlines second) {
    const auto table = [](Inlines inlines) {
        Block block;
        block.kind = Block::Kind::table;
        block.rows = {{{TableCell{std::move(inlines)}}, 0}};
        return block;
    };
    std::vector<Finding> findings;
    const auto both =
        in_two_languages(sheet("en", {table(std::move(first))}), sheet("es", {table(std::move(second))}), findings);
    REQUIRE(both.has_value());
    return said(both->blocks.back().rows.front().cells.front().inlines);
}

}  // namespace

TEST_CASE("what both say alike stands once: a name, a number, a place, an answer") {
    CHECK(joined_in("calls", {name("Dr. Q", true), words(", on call ", true), value("555", "0111")},
                    {words("Guardia: ", true), name("Dr. Q", true), words(" "), value("555", "0111")}) ==
          "Dr. Q, on call / {Guardia} 555\u00A00111");
    CHECK(joined_in("signs", {name("6 h"), words(": half is used")}, {name("6 h"), words(": se usó la mitad")}) ==
          "6 h: half is used / {se usó la mitad}");
    CHECK(joined_in("signs", {words("Yes", true), words(" "), name("looks up")},
                    {words("Sí", true), words(" "), name("looks up")}) == "Yes / {Sí} looks up");
    CHECK(joined_in_cell({range("440", "to", "520", "mL"), words(", usual")},
                         {range("440", "a", "520", "mL"), words(", normal")}) == "440 to 520\u00A0mL, usual|{normal}");
    CHECK(joined_in_cell({range("94", "to", "97", "%"), words(", "), name("room air")},
                         {range("94", "a", "97", "%"), words(", "), name("room air")}) == "94 to 97\u00A0%, room air");
    CHECK(joined_in_cell({range("94", "to", "97", "%")}, {range("93", "a", "97", "%")}) ==
          "94 to 97\u00A0%|{93 a 97\u00A0%}");
    CHECK(joined_in_cell({name("Dr. Q"), words(", on call")}, {name("Dr. Q"), words(", de guardia")}) ==
          "Dr. Q, on call / {de guardia}");

    Block first = heading("", "place");
    first.inlines = {name("BED", true), words(" Connect")};
    Block second = first;
    second.inlines[1].text = " Conecte";
    std::vector<Finding> findings;
    CHECK(said(in_two_languages(sheet("en", {first}), sheet("es", {second}), findings)->blocks[0].inlines) ==
          "BED Connect|{Conecte}");
}

TEST_CASE("the title of a sheet in two languages names its place or its number once") {
    const auto title = [](Inlines first, Inlines second) {
        Document english = sheet("en", {});
        Document spanish = sheet("es", {});
        english.title = std::move(first);
        spanish.title = std::move(second);
        std::vector<Finding> findings;
        return said(in_two_languages(english, spanish, findings)->title);
    };
    CHECK(title({words("Hook-up: "), name("BED")}, {words("Conexión: "), name("BED")}) == "Hook-up / {Conexión}: BED");
    CHECK(title({words("Alarm chart 2: LOW PRESSURE")}, {words("Hoja 2: PRESIÓN BAJA")}) ==
          "Alarm chart 2: LOW PRESSURE / {PRESIÓN BAJA}");
    CHECK(title({words("Supplies")}, {words("Materiales")}) == "Supplies / {Materiales}");
}

TEST_CASE("a line that is bold in both languages is bold to its end, so that it still heads its rows") {
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", {paragraph({words("Measured", true)})}),
                                       sheet("es", {paragraph({words("Medido", true)})}), findings);
    REQUIRE(both.has_value());
    for (const Inline& piece : both->blocks.front().inlines) CHECK(piece.strong);
}

TEST_CASE("an option of words stands in both languages, one of numbers as the second has set it") {
    const auto head = [](std::string span, std::string yes) {
        Block block = heading("Renew by", "tight");
        block.attributes.options = {{"span", std::move(span)}, {"yes", std::move(yes)}};
        return block;
    };
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", {head("3", "Yes")}), sheet("es", {head("4", "Sí")}), findings);
    REQUIRE(both.has_value());
    CHECK(both->blocks[0].attributes.option("span") == "4");
    CHECK(both->blocks[0].attributes.option("yes") == "Yes / Sí");
}

TEST_CASE("a sheet in two languages may take twice the sides, and knows both") {
    std::vector<Finding> findings;
    const auto both = in_two_languages(sheet("en", {}), sheet("es", {}), findings);
    REQUIRE(both.has_value());
    CHECK(both->front("pages") == "4");
    CHECK(both->language == "en");
    CHECK(both->second_language == "es");
}

TEST_CASE("twins that are built differently are not joined, and both lines are named") {
    Block list;
    list.kind = Block::Kind::list;
    list.line = 9;
    struct Row {
        std::vector<Block> first;
        std::vector<Block> second;
        std::size_t line_of_second;
        std::size_t line_of_first;
    };
    const Row rows[] = {
        {{paragraph({words("a")}, 7)}, {list}, 9, 7},
        {{paragraph({words("a")}, 7), paragraph({words("b")}, 8)}, {paragraph({words("a")}, 7)}, 7, 8},
    };
    for (const Row& row : rows) {
        std::vector<Finding> findings;
        CHECK(!in_two_languages(sheet("en", row.first), sheet("es", row.second), findings));
        REQUIRE(findings.size() == 1);
        const Finding& finding = findings.front();
        CHECK(finding.rule == "template-translation-incomplete");
        REQUIRE(finding.marks.size() == 2);
        CHECK(finding.marks[0].file == "templates/es/bedside-card.md");
        CHECK(finding.marks[0].place.line == row.line_of_second);
        CHECK(finding.marks[1].file == "templates/en/bedside-card.md");
        CHECK(finding.marks[1].place.line == row.line_of_first);
    }
}
