#include "markup/helpers.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

void add_line(std::string& out, std::string_view what, std::size_t line) { out += fmt::format("{} {}\n", what, line); }

void add_lines(std::string& out, const Inlines& inlines) {
    for (const Inline& piece : inlines) {
        const std::string words = shown(Inlines{piece});
        add_line(out, "\"" + words + "\"", piece.line);
    }
}

void add_lines(std::string& out, const TableRow& row) {
    add_line(out, "row", row.line);
    for (const TableCell& cell : row.cells) add_lines(out, cell.inlines);
}

/// Each node with its line, one a line.
void add_lines(std::string& out, const std::vector<Block>& blocks) {
    constexpr std::string_view kNames[] = {"heading", "paragraph", "list", "item", "table", "call-out", "rule"};
    for (const Block& block : blocks) {
        add_line(out, kNames[static_cast<std::size_t>(block.kind)], block.line);
        add_lines(out, block.inlines);
        add_lines(out, block.aside);
        add_lines(out, block.children);
        if (block.kind != Block::Kind::table) continue;
        add_lines(out, block.head);
        for (const TableRow& row : block.rows) add_lines(out, row);
    }
}

std::string lines_of(const Rendered& sheet) {
    CHECK(places(sheet.findings) == "");
    std::string out;
    add_lines(out, sheet.blocks);
    return out;
}

}  // namespace

// The lines are counted by hand.
TEST_CASE("every node knows its line of the template") {
    const Rendered sheet = rendered(
        "---\n"                             // 1
        "title: T\n"                        // 2
        "---\n"                             // 3
        "{{! a note\n"                      // 4
        "}}\n"                              // 5
        "# Head {{v}} {.x aside=\"as\"}\n"  // 6
        "\n"                                // 7
        "words\n"                           // 8
        "**bold**\n"                        // 9
        "{{v}} end\\\n"                     // 10
        "last ____\n"                       // 11
        "\n"                                // 12
        "---\n"                             // 13
        "\n"                                // 14
        "> [!WARNING]\n"                    // 15
        ">\n"                               // 16
        "> quoted\n"                        // 17
        "> ***\n"                           // 18
        "\n"                                // 19
        "{{#on}}\n"                         // 20
        "- [ ] one\n"                       // 21
        "{{/on}}\n"                         // 22
        "{{#off}}\n"                        // 23
        "- two\n"                           // 24
        "{{/off}}\n"                        // 25
        "- three\n"                         // 26
        "\n"                                // 27
        "  ![alt](figure:f)\n"              // 28
        "-\n"                               // 29
        "-\n",                              // 30
        {{"v", value("V")}, {"on", true}, {"off", false}});
    CHECK(lines_of(sheet) ==
          "heading 6\n\"Head \" 6\n\"<V>\" 6\n\"as\" 6\n"
          "paragraph 8\n\"words \" 8\n\"**bold**\" 9\n\" \" 9\n\"<V>\" 10\n\" end\" 10\n\"/\" 10\n\"last \" "
          "11\n\"_4_\" 11\n"
          "rule 13\n"
          "call-out 15\nparagraph 17\n\"quoted\" 17\nrule 18\n"
          "list 21\nitem 21\nparagraph 21\n\"one\" 21\nitem 26\nparagraph 26\n\"three\" 26\n"
          "paragraph 28\n\"(f: alt)\" 28\nitem 29\nitem 30\n");
}

TEST_CASE("every row of a table knows its line, also empty ones and those of a list") {
    const Rendered sheet = rendered(
        "a\n"                // 1
        "\n"                 // 2
        "| | |\n"            // 3
        "|---|---|\n"        // 4
        "| | |\n"            // 5
        "{{#rows}}\n"        // 6
        "| {{.}} | [ ] |\n"  // 7
        "| | |\n"            // 8
        "{{/rows}}\n"        // 9
        "| | x |\n"          // 10
        "\n"                 // 11
        "| h |\n"            // 12
        "|---|\n"            // 13
        "\n"                 // 14
        "***\n",             // 15
        {{"rows", list({value("1"), value("2")})}});
    CHECK(lines_of(sheet) ==
          "paragraph 1\n\"a\" 1\n"
          "table 3\nrow 3\nrow 5\nrow 7\n\"<1>\" 7\n\"[ ]\" 7\nrow 8\nrow 7\n\"<2>\" 7\n\"[ ]\" 7\nrow 8\nrow "
          "10\n\"x\" 10\n"
          "table 12\nrow 12\n\"h\" 12\nrule 15\n");
}

TEST_CASE("words of a partial have the line of the tag in the template that brings them in") {
    const Partials partials = {{"a", {"a.md", "one\n\n{{> b}}\n"}}, {"b", {"b.md", "\n\n- two {{v}}\n"}}};
    const Rendered sheet = rendered("x\n\n{{> a}}\n\ny\n", {{"v", value("V")}}, partials);
    CHECK(lines_of(sheet) ==
          "paragraph 1\n\"x\" 1\nparagraph 3\n\"one\" 3\nlist 3\nitem 3\nparagraph 3\n\"two \" 3\n\"<V>\" 3\n"
          "paragraph 5\n\"y\" 5\n");
}
