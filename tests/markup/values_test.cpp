#include "markup/helpers.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Every position in which a value can stand.
constexpr std::string_view kEverywhere = R"(---
title: Card {{v}}
---
# {{v}} {.act aside="see {{v}} now"}

{{v}}

Before {{v}} after **{{v}}** and **bold {{v}} bold**
{{v}}

| {{v}} | b {{v}} |
|---|---|
| {{v}} | **{{v}}** |

- {{v}}
  1. x {{v}}
- [ ] {{v}}

> [!WARNING] {.half}
> {{v}} and {{v}}

{{#items}}
- {{.}}
{{/items}}
{{#v}}{{.}}{{/v}} {.x}
)";
constexpr std::size_t kPlaces = 19;

void collect(const Inlines& inlines, Inlines& out) {
    for (const Inline& piece : inlines)
        if (piece.kind == Inline::Kind::value) out.push_back(piece);
}

void collect(const TableRow& row, Inlines& out) {
    for (const TableCell& cell : row.cells) collect(cell.inlines, out);
}

void collect(const std::vector<Block>& blocks, Inlines& out) {
    for (const Block& block : blocks) {
        collect(block.inlines, out);
        collect(block.aside, out);
        collect(block.head, out);
        for (const TableRow& row : block.rows) collect(row, out);
        collect(block.children, out);
    }
}

Inlines values_of(const Rendered& sheet) {
    Inlines out;
    collect(sheet.title, out);
    collect(sheet.blocks, out);
    return out;
}

}  // namespace

// The words are signs of Mustache (github.com/mustache/spec), of CommonMark 0.30 (each construct of its sections 4 to
// 6) and of Unicode's line breaks (The Unicode Standard, 5.8).
TEST_CASE("any value comes back unchanged from every place, and changes nothing around it") {
    const Template sheet = parsed(std::string{kEverywhere});
    const auto tree_with = [&](const std::string& text) {
        return render(sheet, object({{"v", value(text)}, {"items", list({value(text)})}}));
    };
    const std::string usual = shown(tree_with("VALUE").blocks);
    CHECK(usual.find("<VALUE>") != std::string::npos);
    const std::vector<std::string> texts = {"",
                                            " ",
                                            "  x  ",
                                            "{{",
                                            "}}",
                                            "{{v}}",
                                            "{{{v}}}",
                                            "{{#v}}",
                                            "{{/v}}",
                                            "{{! v",
                                            "|",
                                            "a|b",
                                            "*",
                                            "**",
                                            "*a*",
                                            "_",
                                            "__a__",
                                            "___",
                                            "<b>",
                                            "<!--",
                                            "&amp;",
                                            "&nbsp;",
                                            "\\",
                                            "\\*",
                                            "[ ]",
                                            "[x]",
                                            "[!WARNING]",
                                            "[a](b)",
                                            "![a](b)",
                                            "[a]: b",
                                            "#",
                                            "# a",
                                            "- a",
                                            "1. a",
                                            "> a",
                                            "---",
                                            "===",
                                            "```",
                                            "`a`",
                                            "    a",
                                            "a\nb",
                                            "a\n\nb",
                                            "\n",
                                            "a\r\nb",
                                            "\t",
                                            "a  \nb",
                                            "{.act}",
                                            "{aside=\"x\"}",
                                            "\"",
                                            "'",
                                            "}",
                                            "a\u0085b",
                                            "a\u2028b",
                                            "\u00A0",
                                            "\u200B",
                                            "\uFEFF",
                                            "Nguyễn Thị Ánh",
                                            "N\u0067\u0075\u0079\u0065\u0302\u0303n",
                                            "Щербаков",
                                            "Παπαδόπουλος",
                                            "O'Brien-Šćepanović",
                                            "\uE000",
                                            "\U0001F600",
                                            std::string(10000, 'x'),
                                            std::string(5000, '|') + std::string(5000, '*')};
    for (const std::string& text : texts) {
        CAPTURE(text);
        const Rendered filled = tree_with(text);
        CHECK(places(filled.findings) == "");
        const Inlines values = values_of(filled);
        CHECK(values.size() == kPlaces);
        for (const Inline& piece : values) {
            CHECK(piece.value.text() == text);
            CHECK(piece.value.field == "field");
        }
        if (text.empty() || text == "x") continue;
        std::string expected = usual;
        for (std::size_t at = expected.find("<VALUE>"); at != std::string::npos; at = expected.find("<VALUE>", at))
            expected.replace(at, 7, "<" + text + ">"), at += text.size() + 2;
        CHECK(shown(filled.blocks) == expected);
    }
}

TEST_CASE("a value keeps its field, its parts and who may read it") {
    PrintedValue given;
    given.field = "prescriptions.0.rate";
    given.audiences = wall | crew;
    given.parts = {{PrintedPart::Kind::number, "12"}, {PrintedPart::Kind::unit, "\u00A0breaths per minute"}};
    given.not_recorded = true;
    const Rendered sheet = rendered("a **{{v}}**", {{"v", given}});
    const Inlines values = values_of(sheet);
    REQUIRE(values.size() == 1);
    CHECK(values.front().value == given);
    CHECK(values.front().strong);
}

TEST_CASE("thousands of different values keep apart") {
    TemplateData::Items items;
    for (int n = 0; n < 5000; ++n) items.push_back(value(fmt::format("v{}", n)));
    const Rendered sheet = rendered("{{#items}}\n- {{.}} {{.}}\n{{/items}}\n", {{"items", items}});
    const Inlines values = values_of(sheet);
    REQUIRE(values.size() == 10000);
    for (std::size_t n = 0; n < values.size(); ++n) CHECK(values[n].value.text() == fmt::format("v{}", n / 2));
}

TEST_CASE("more values than there are tokens are refused, not mixed up") {
    TemplateData::Items items;
    for (int n = 0; n < 65535; ++n) items.push_back(value("x"));
    CHECK(places(rendered("{{#items}}{{.}}{{/items}}", {{"items", items}}).findings) ==
          "template-too-large sheet.md:1:1\n");
}

// Our own addition to Mustache, which looks for a name in all sections around it.
TEST_CASE("a dot before a name finds it in the innermost group or item alone") {
    const TemplateData::Object home{
        {"place", value("home")},
        {"port", object({{"place", value("hose")}, {"none", TemplateData{}}})},
        {"filters", list({object({{"place", value("inlet")}}), object({{"place", value("outlet")}})})}};
    struct Row {
        const char* given;
        const char* printed;
    };
    const Row rows[] = {
        {"{{.place}}", "<home>"},
        {"{{#port}}{{place}} {{.place}}{{/port}}", "<hose> <hose>"},
        {"{{#filters}}{{.place}} {{/filters}}", "<inlet> <outlet>"},
        {"{{#filters}}{{#.place}}{{.place}} {{/.place}}{{/filters}}", "<inlet> <outlet>"},
        {"{{#port}}{{^.none}}{{.place}}{{/.none}}{{/port}}", "<hose>"},
        {"{{#filters}}{{#.last}}{{.place}}{{/.last}}{{/filters}}", "<outlet>"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.given});
        const Rendered sheet = rendered(row.given, home);
        CHECK_MESSAGE(sheet.findings.empty(), places(sheet.findings));
        REQUIRE(sheet.blocks.size() == 1);
        CHECK(shown(sheet.blocks.front().inlines) == row.printed);
    }
}
