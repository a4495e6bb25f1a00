#include "markup/helpers.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

struct Example {
    std::string_view given;
    std::string_view expected;
};

void check(std::initializer_list<Example> examples, const TemplateData::Object& data = {}) {
    for (const auto& [given, expected] : examples) {
        CAPTURE(given);
        const Rendered sheet = rendered(std::string{given}, data);
        CHECK(places(sheet.findings) == "");
        CHECK(shown(sheet.blocks) == expected);
    }
}

}  // namespace

// Source: CommonMark 0.30 and the GitHub Flavored Markdown specification 0.29, the examples by number, words from
// memory.
TEST_CASE("headings, paragraphs, breaks and lines across are those of CommonMark") {
    check({
        {"# foo\n## foo\n### foo\n#### foo\n##### foo\n###### foo\n",
         "h1 foo; h2 foo; h3 foo; h4 foo; h5 foo; h6 foo"},             // CM 62
        {"## foo ##\n  ###   bar    ###\n", "h2 foo; h3 bar"},          // CM 71
        {"aaa\n\nbbb\n", "p aaa; p bbb"},                               // CM 219
        {"aaa\nbbb\n\nccc\nddd\n", "p aaa bbb; p ccc ddd"},             // CM 220
        {"  aaa\n bbb\n", "p aaa bbb"},                                 // CM 222
        {"foo  \nbaz\n", "p foo/baz"},                                  // CM 633
        {"foo\\\nbaz\n", "p foo/baz"},                                  // CM 634
        {"foo       \n     bar\n", "p foo/bar"},                        // CM 637
        {"foo \n baz\n", "p foo baz"},                                  // CM 649
        {"***\n---\n", "rule; rule"},                                   // CM 43, without underscores
        {"- foo\n***\n- bar\n", "ul(li(p foo)); rule; ul(li(p bar))"},  // CM 57
        {"**foo bar**\n", "p **foo bar**"},                             // CM 378
        {"foo**bar**\n", "p foo**bar**"},                               // CM 381
        {"__foo bar__\n", "p **foo bar**"},                             // CM 382
        {"\\*not bold\\* \\# \\[a\\] \\|\n", "p *not bold* # [a] |"},   // CM 12 ff.
    });
}

TEST_CASE("lists are those of CommonMark") {
    check({
        {"- foo\n- bar\n+ baz\n", "ul(li(p foo); li(p bar)); ul(li(p baz))"},            // CM 301
        {"1. a\n2. b\n\n   c\n", "ol(li(p a); li(p b; p c))"},                           // after CM 256
        {"- foo\n  - bar\n    - baz\n", "ul(li(p foo; ul(li(p bar; ul(li(p baz))))))"},  // CM 294, shorter
        {"- foo\n-\n- bar\n", "ul(li(p foo); li(); li(p bar))"},                         // CM 281
        {"4. a\n5. b\n", "ol {start=4}(li(p a); li(p b))"},                              // CM 305
        {"1. Chest moving?\n   - Yes: call\n   - No: bag\n",
         "ol(li(p Chest moving?; ul(li(p Yes: call); li(p No: bag))))"},
    });
}

TEST_CASE("task lists are those of GitHub Flavored Markdown") {
    check({
        {"- [ ] foo\n- [ ] bar\n", "ul(task(p foo); task(p bar))"},  // GFM 279, with empty boxes
        {"- [ ] foo\n  - [ ] bar\n  - [ ] baz\n- [ ] bim\n",
         "ul(task(p foo; ul(task(p bar); task(p baz))); task(p bim))"},  // GFM 280, with empty boxes
        {"1. [ ] one\n2. two\n", "ol(task(p one); li(p two))"},
        {"> [!NOTICE]\n> - [ ] **a** {.x}\n", "NOTICE(ul(task(p **a** {.x})))"},
    });
}

TEST_CASE("tables are those of GitHub Flavored Markdown") {
    check({
        {"| foo | bar |\n| --- | --- |\n| baz | bim |\n", "table(aa |foo|bar| |baz|bim|)"},         // GFM 198
        {"| abc | defghi |\n:-: | -----------:\nbar | baz\n", "table(cr |abc|defghi| |bar|baz|)"},  // GFM 199
        {"| f\\|oo  |\n| ------ |\n| b **\\|** im |\n", "table(a |f|oo| |b **|** im|)"},            // GFM 200, no code
        {"| abc | def |\n| --- | --- |\n| bar | baz |\n\nbar\n",
         "table(aa |abc|def| |bar|baz|); p bar"},                                   // after GFM 202
        {"| abc | def |\n| --- | --- |\n", "table(aa |abc|def|)"},                  // GFM 205
        {"| abc | def |\n| --- | --- |\n| bar |\n", "table(aa |abc|def| |bar||)"},  // GFM 204, first row
        {"| | |\n|---|:--|\n| a | |\n| | |\n", "table(al ||| |a|| |||)"},
        {"| a |\n|---|\n| [ ] yes [ ] no ____ |\n", "table(a |a| |[ ] yes [ ] no _4_|)"},
    });
}

TEST_CASE("words in braces at the end are attributes") {
    check(
        {
            {"## Low pressure {.act .half span=8}\n", "h2 Low pressure {.act .half span=8}"},
            {"## Low {aside=\"now **{{p}}** or\" .act} ##\n", "h2 Low {.act} aside now **<12>** or"},
            {"## Low {aside=\"a } b\"}\n", "h2 Low aside a } b"},
            {"Plain words. {.small}\n", "p Plain words. {.small}"},
            {"two\nlines {.small\nspan=4}\n", "p two lines {.small span=4}"},
            {"{{p}} {.big}\n", "p <12> {.big}"},
            {"- a {.x}\n- b\n", "ul(li(p a {.x}); li(p b))"},
            {"{.log rows=14}\n\n| a |\n|---|\n", "table {.log rows=14}(a |a|)"},
            {"{.two}\n\n- a\n\nb\n", "ul {.two}(li(p a)); p b"},
            {"{.two}\n\nb {.three}\n", "p b {.two .three}"},
            {"![Hoses](figure:hookup){.wide}\n", "p (hookup: Hoses) {.wide}"},
            {"a {b} c\n", "p a {b} c"},
            {"a \\{.b}\n", "p a {.b}"},
            {"## {.act}\n", "h2  {.act}"},
            {"## A {note=\"two words\"}\n", "h2 A {note=two words}"},
        },
        {{"p", value("12")}});
}

TEST_CASE("a quote that opens with a marker is a call-out") {
    check({
        {"> [!WARNING]\n> Do not stop.\n", "WARNING(p Do not stop.)"},
        {"> [!WARNING] Do not stop.\n", "WARNING(p Do not stop.)"},
        {"> [!DANGER] {.half span=4}\n> No. {.x}\n>\n> - a\n", "DANGER {.half span=4}(p No. {.x}; ul(li(p a)))"},
        {"> [!SAFETY INSTRUCTIONS]\n>\n> ## a\n", "SAFETY INSTRUCTIONS(h2 a)"},
        {"{.wide}\n\n> [!NOTICE]\n> a\n", "NOTICE {.wide}(p a)"},
    });
}

TEST_CASE("lines to write on, boxes and figures") {
    check({
        {"Name: ____ Date ______\n", "p Name: _4_ Date _6_"},
        {"___\n", "p _3_"},
        {"(____) and (____)\n", "p (_4_) and (_4_)"},
        {"**Name ____**\n",
         "p **Name **"
         "**_4_**"},
        {"one __ two _ three\n", "p one __ two _ three"},
        {"Taken down [ ] yes [ ]\n", "p Taken down [ ] yes [ ]"},
        {"See ![How   the hose  goes ](figure:hose/a-1) here\n", "p See (hose/a-1: How the hose goes) here"},
        {"a&nbsp;b &amp; &lt; &gt; &quot;\n", "p a\u00A0b & < > \""},
    });
    const Rendered escaped = rendered("\\[ ] \\___\n");
    REQUIRE(escaped.blocks.size() == 1);
    REQUIRE(escaped.blocks.front().inlines.size() == 1);
    CHECK(escaped.blocks.front().inlines.front().kind == Inline::Kind::text);
    CHECK(escaped.blocks.front().inlines.front().text == "[ ] ___");
}

TEST_CASE("words are joined where they are alike, with one blank between") {
    const Rendered sheet = rendered("one   two\n three\u00A0 **four**\nfive  \nsix");
    REQUIRE(sheet.blocks.size() == 1);
    const Inlines& words = sheet.blocks.front().inlines;
    REQUIRE(words.size() == 5);
    CHECK(words[0].text == "one two three\u00A0 ");
    CHECK(words[1].text == "four");
    CHECK(words[1].strong);
    CHECK(words[2].text == " five");
    CHECK(words[3].kind == Inline::Kind::line_break);
    CHECK(words[4].text == "six");
}

TEST_CASE("front matter gives the title, with its values, and keeps the other keys as written") {
    const Rendered sheet =
        rendered("---\n# note\ntitle: \"1. Card for {{who}}: **bed**\"\npaper: letter\npages: 2\n\n---\nwords\n",
                 {{"who", value("Ann")}});
    CHECK(places(sheet.findings) == "");
    CHECK(shown(sheet.title) == "1. Card for <Ann>: **bed**");
    CHECK(sheet.front_matter == std::vector<std::pair<std::string, std::string>>{
                                    {"title", "1. Card for Ann: bed"}, {"paper", "letter"}, {"pages", "2"}});
    CHECK(shown(sheet.blocks) == "p words");
    const Template known = parsed("---\npages: 2\n---\n");
    REQUIRE(known.front("pages") != nullptr);
    CHECK(known.front("pages")->place.line == 2);
    CHECK(known.front("pages")->place.column == 8);
    CHECK(known.front("title") == nullptr);
}

TEST_CASE("a sheet made for each item of a list sees the item's names first") {
    const TemplateData data = object({{"name", value("home")}, {"who", value("Ann")}});
    const TemplateData item = object({{"name", value("bed")}});
    const Template sheet = parsed("---\ntitle: {{name}}\nfor_each: places\n---\n{{name}} {{who}}");
    CHECK(shown(render(sheet, data, &item).blocks) == "p <bed> <Ann>");
    CHECK(shown(render(sheet, data, &item).title) == "<bed>");
    CHECK(shown(render(sheet, data).blocks) == "p <home> <Ann>");
}

TEST_CASE("line ends and a byte order mark of other systems change nothing") {
    const TemplateData::Object data = {{"a", true}};
    CHECK(shown(rendered("\xEF\xBB\xBF---\r\ntitle: T\r\n---\r\n{{#a}}\r\n- x\r\n{{/a}}\r\n- y\r\n", data).blocks) ==
          "ul(li(p x); li(p y))");
}

// The expected words are those a reader of the template would say; CommonMark 0.30, 6.2, would print the stars.
TEST_CASE("bold type does not depend on what a home hides inside it") {
    const TemplateData::Object data = {{"on", true}, {"off", false}, {"v", value("V")}};
    check(
        {
            {"**{{#on}}Mask off. {{/on}}{{#off}}Bag.{{/off}}** Look.\n", "p **Mask off.** Look."},
            {"**{{#off}}Mask. {{/off}} Bag.** Look.\n", "p **Bag.** Look."},
            {"a **{{#off}}Mask. {{/off}}** b\n", "p a b"},
            {"a **{{#off}}Mask.{{/off}} {{#off}}Bag.{{/off}}** b **c**\n", "p a b **c**"},
            {"1. **{{#off}}x{{/off}}** b\n   c\n", "ol(li(p b c))"},
            {"| a | **{{#off}}x{{/off}}** |\n|---|---|\n| **{{v}} ** | b |\n", "table(aa |a|| |**<V>**|b|)"},
            {"**a\nb** c **d **\n", "p **a b** c **d**"},
            {"\\*\\* a **b**\n", "p ** a **b**"},
            {"a\n\n****\n\nb\n", "p a; rule; p b"},
            {"a\n\n***\n\n** b **\n", "p a; rule; p **b**"},
        },
        data);
}
