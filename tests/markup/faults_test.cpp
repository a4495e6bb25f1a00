#include "markup/helpers.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

TemplateData::Object home() {
    return {{"name", value("Ann")},
            {"spo2", {}},
            {"on", true},
            {"off", false},
            {"bag", object({{"size", value("1 L")}, {"mask", {}}})},
            {"phones", list({object({{"number", value("555-0101")}}), object({{"number", value("555-0102")}})})},
            {"none", list({})}};
}

const Partials kPartials = {{"steps", {"partials/steps.md", "One {{nam}}\n"}},
                            {"loop", {"partials/loop.md", "a\n{{> loop-b}}\n"}},
                            {"loop-b", {"partials/loop-b.md", "{{> loop}}"}},
                            {"open", {"partials/open.md", "\n  {{#on}}x"}},
                            {"broken", {"partials/broken.md", "a\n\xFF"}}};

struct Example {
    std::string_view given;
    std::vector<std::string> expected;
};

void check(std::initializer_list<Example> examples) {
    for (const auto& [given, expected] : examples) {
        CAPTURE(given);
        std::string lines;
        for (const std::string& line : expected) lines += line + "\n";
        CHECK(places(rendered(std::string{given}, home(), kPartials).findings) == lines);
    }
}

}  // namespace

// The rules are this project's own; the places are counted by hand.
TEST_CASE("a name that the data does not have is refused at its place") {
    check({
        {"a {{nam}}", {"template-name-unknown sheet.md:1:5"}},
        {"a\n  {{ bag.sise }}\n", {"template-name-unknown sheet.md:2:6"}},
        {"ấ é {{nam}}", {"template-name-unknown sheet.md:1:7"}},
        {"{{#nam}}x{{/nam}}", {"template-name-unknown sheet.md:1:4"}},
        {"{{^nam}}x{{/nam}}", {"template-name-unknown sheet.md:1:4"}},
        {"{{#phones}}{{nummer}}{{/phones}}", {"template-name-unknown sheet.md:1:14"}},
        {"{{#phones}}{{name}}{{first.x}}{{/phones}}", {"template-name-unknown sheet.md:1:22"}},
        {"{{first}}", {"template-name-unknown sheet.md:1:3"}},
        {"{{name.x}}", {"template-name-unknown sheet.md:1:3"}},
        {"{{.name}} {{.nam}}", {"template-name-unknown sheet.md:1:13"}},
        {"{{#phones}}{{name}} {{.name}}{{/phones}}", {"template-name-unknown sheet.md:1:23"}},
        {"{{#bag}}{{^x}}{{.name}}{{/x}}{{/bag}}",
         {"template-name-unknown sheet.md:1:12", "template-name-unknown sheet.md:1:17"}},
        {"{{#bag}}{{bag.x}} {{x}}{{/bag}}",
         {"template-name-unknown sheet.md:1:11", "template-name-unknown sheet.md:1:21"}},
        {"---\ntitle: Card {{nam}}\n---\n", {"template-name-unknown sheet.md:2:15"}},
        {"x\n\n{{> steps}}", {"template-name-unknown partials/steps.md:1:7"}},
    });
}

TEST_CASE("names inside sections that are skipped are refused as far as they can be known") {
    check({
        {"{{#off}}{{nam}}{{/off}}", {"template-name-unknown sheet.md:1:11"}},
        {"{{^on}}{{nam}}{{/on}}", {"template-name-unknown sheet.md:1:10"}},
        {"{{#spo2}}{{spo2}} {{nam}}{{/spo2}}", {"template-name-unknown sheet.md:1:21"}},
        {"{{#spo2}}{{.}} {{nam}}{{/spo2}}", {"template-name-unknown sheet.md:1:18"}},
        {"{{#off}}{{bag}}{{/off}}", {"template-value-not-printable sheet.md:1:11"}},
        {"{{#off}}{{spo2}}{{/off}}", {}},
        // What stands in an empty list, or behind a name without a value, cannot be known.
        {"{{#none}}{{anything}}{{/none}}", {}},
        {"{{#spo2}}{{anything}}{{/spo2}}", {}},
        {"{{#bag.mask}}{{anything}}{{/bag.mask}}", {}},
        {"{{#bag.mask.size}}x{{/bag.mask.size}}", {}},
    });
}

TEST_CASE("the message names the nearest name") {
    const auto label = [](std::string text) {
        const Rendered sheet = rendered(std::move(text), home(), kPartials);
        REQUIRE(sheet.findings.size() == 1);
        CHECK(sheet.findings.front().severity == Severity::refuse);
        return sheet.findings.front().marks.front().label;
    };
    CHECK(label("{{nmae}}") == "the nearest is \"name\"");
    CHECK(label("{{bag.sise}}") == "the nearest is \"bag.size\"");
    CHECK(label("{{bga.size}}") == "the nearest is \"bag.size\"");
    CHECK(label("{{#phones}}{{numbr}}{{/phones}}") == "the nearest is \"number\"");
    CHECK(label("{{#phones}}{{#lst}}x{{/lst}}{{/phones}}") == "the nearest is \"last\"");
    CHECK(label("{{> stepps}}") == "the nearest is \"steps\"");
    CHECK(label("{{zzzzzz}}") == "no such name");
    CHECK(label("---\ntitel: x\n---\n") == "the nearest is \"title\"");
}

TEST_CASE("what cannot be printed is refused at its place") {
    check({
        {"{{spo2}}", {"template-value-missing sheet.md:1:3"}},
        {"{{#spo2}}{{spo2}}{{/spo2}}", {}},
        {"{{^spo2}}{{spo2}}{{/spo2}}", {"template-value-missing sheet.md:1:12"}},
        {"{{#bag}}\n{{mask}}\n{{/bag}}", {"template-value-missing sheet.md:2:3"}},
        {"{{bag.mask}}", {"template-value-missing sheet.md:1:3"}},
        {"{{bag.mask.x}}", {"template-value-missing sheet.md:1:3"}},
        {"{{bag}}", {"template-value-not-printable sheet.md:1:3"}},
        {"{{phones}}", {"template-value-not-printable sheet.md:1:3"}},
        {"{{on}}", {"template-value-not-printable sheet.md:1:3"}},
        {"{{#phones}}{{.}}{{/phones}}", {"template-value-not-printable sheet.md:1:14"}},
    });
}

TEST_CASE("tags that are not allowed or not closed are refused at their place") {
    check({
        {"a {{{name}}}", {"template-tag-not-allowed sheet.md:1:3"}},
        {"a\n {{& name}}", {"template-tag-not-allowed sheet.md:2:2"}},
        {"{{=<% %>=}}", {"template-tag-not-allowed sheet.md:1:1"}},
        {"{{}} {{ }}", {"template-tag-not-allowed sheet.md:1:1", "template-tag-not-allowed sheet.md:1:6"}},
        {"{{#}}x", {"template-tag-not-allowed sheet.md:1:1"}},
        {"{{first name}}", {"template-tag-not-allowed sheet.md:1:1"}},
        {"{{name.}} {{a..b}} {{..a}}",
         {"template-tag-not-allowed sheet.md:1:1", "template-tag-not-allowed sheet.md:1:11",
          "template-tag-not-allowed sheet.md:1:20"}},
        {"x {{name", {"template-tag-unclosed sheet.md:1:3"}},
        {"x {{name}", {"template-tag-unclosed sheet.md:1:3"}},
        {"x {{", {"template-tag-unclosed sheet.md:1:3"}},
        {"x {{{name}} y", {"template-tag-unclosed sheet.md:1:3"}},
        {"---\ntitle: {{name\n---\n}}", {"template-tag-unclosed sheet.md:2:8"}},
        {"a\n{{#on}}\nb", {"template-section-unclosed sheet.md:2:1"}},
        {"a {{/on}}", {"template-section-unclosed sheet.md:1:3"}},
        {"{{#on}}{{#off}}{{/on}}", {"template-section-unclosed sheet.md:1:8"}},
        {"{{#on}}{{/off}}{{/on}}", {"template-section-unclosed sheet.md:1:8"}},
        {"{{> stps}}", {"template-partial-unknown sheet.md:1:1"}},
        {"{{> loop}}", {"template-partial-recursive partials/loop-b.md:1:1"}},
        {"{{> open}}{{/on}}",
         {"template-section-unclosed partials/open.md:2:3", "template-section-unclosed sheet.md:1:11"}},
    });
}

TEST_CASE("characters that may not stand in a template are refused at their place") {
    check({
        {"a\tb", {"template-character-not-allowed sheet.md:1:2"}},
        {"a\n\x01", {"template-character-not-allowed sheet.md:2:1"}},
        {"a\rb", {"template-character-not-allowed sheet.md:1:2"}},
        {"a\n\xC3", {"template-character-not-allowed sheet.md:2:1"}},
        {"ab\u0085", {"template-character-not-allowed sheet.md:1:3"}},
        {"ab\uE000", {"template-character-not-allowed sheet.md:1:3"}},
        {"ab\U000F0001", {"template-character-not-allowed sheet.md:1:3"}},
        {"ab\U00100000", {"template-character-not-allowed sheet.md:1:3"}},
        {"\n{{> broken}}", {"template-character-not-allowed partials/broken.md:2:1"}},
    });
    CHECK(places(parsed(std::string(256 * 1024 + 1, 'x')).findings) == "template-character-not-allowed sheet.md:1:1\n");
    CHECK(parsed(std::string(256 * 1024, 'x')).findings.empty());
}

TEST_CASE("front matter that cannot be read is refused at its place") {
    check({
        {"---\ntitle: a\nauthor: b\n---\n", {"template-front-matter-unknown sheet.md:3:1"}},
        {"---\n title\n---\n", {"template-front-matter-unreadable sheet.md:2:1"}},
        {"---\n: x\n---\n", {"template-front-matter-unreadable sheet.md:2:1"}},
        {"---\npages: 1\npages: 2\n---\n", {"template-front-matter-unreadable sheet.md:3:1"}},
        {"---\npages: 1\n", {"template-front-matter-unreadable sheet.md:1:1"}},
        {"---", {"template-front-matter-unreadable sheet.md:1:1"}},
    });
}

TEST_CASE("Markdown that this paper does not use is refused at its place") {
    const std::string rule = "template-markdown-not-allowed sheet.md:";
    check({
        {"a *b* c", {rule + "1:3"}},
        {"a _b_ c", {rule + "1:3"}},
        {"a ***b*** c", {rule + "1:3"}},
        {"x\ny `b`", {rule + "2:3"}},
        {"```\nb\n```", {rule + "1:1"}},
        {"a\n\n~~~\n\n~~~\n", {rule + "3:1"}},
        {"a [b](http://x)", {rule + "1:3"}},
        {"a [](b)", {rule + "1:3"}},
        {"see <http://example.org>", {rule + "1:5"}},
        {"a <b>c</b>", {rule + "1:3", rule + "1:7"}},
        {"a\n\n<div>\nx\n</div>", {rule + "3:1", rule + "5:1"}},
        {"<!-- note -->", {rule + "1:1"}},
        {"a\n\n> b", {rule + "3:3"}},
        {"> [!Warning]\n> b", {rule + "1:3"}},
        {"> - [!WARNING]", {rule + "1:3"}},
        {"a\n\nb\n---\n", {rule + "3:1"}},
        {"b\n===\n", {rule + "1:1"}},
        {"2 * 3", {rule + "1:3"}},
        {"**{{name}}:**x", {rule + "1:1", rule + "1:12"}},
        {"a `b", {rule + "1:3"}},
        {"| a |\n| b |\n", {rule + "1:1", rule + "1:5", rule + "2:1", rule + "2:5"}},
        {"- [x] done", {rule + "1:3"}},
        {"![a](http://x/y.png)", {rule + "1:1"}},
        {"![a](figure:)", {rule + "1:1"}},
        {"![a](figure:x \"words\")", {rule + "1:1"}},
        {"b ![a](figure:{{name}})", {rule + "1:3"}},
        {"b ![a {{name}}](figure:x)", {rule + "1:3"}},
        {"b ![a](figure:x y)", {rule + "1:6"}},
        {"a &copy; b", {rule + "1:3"}},
        {"a &#65; b", {rule + "1:3"}},
        {"---\ntitle: a *b*\n---\n", {rule + "2:10"}},
    });
}

TEST_CASE("figures without a description, broken attributes and lost words are refused at their place") {
    check({
        {"x ![](figure:hookup)", {"template-figure-without-description sheet.md:1:3"}},
        {"![ ](figure:hookup)", {"template-figure-without-description sheet.md:1:1"}},
        {"## a {.act", {}},
        {"## a {act}", {"template-attributes-unreadable sheet.md:1:6"}},
        {"## a {.act span=}", {"template-attributes-unreadable sheet.md:1:6"}},
        {"## a {.act aside=\u201Cb\u201D}", {"template-attributes-unreadable sheet.md:1:6"}},
        {"## a {span=\"{{name}}\"}", {"template-attributes-unreadable sheet.md:1:6"}},
        {"a{.act}", {"template-attributes-unreadable sheet.md:1:2"}},
        {"a {aside=\"b\"}", {"template-attributes-unreadable sheet.md:1:3"}},
        {"> [!NOTICE] {aside=\"b\"}\n> c", {"template-attributes-unreadable sheet.md:1:13"}},
        {"a\n\n{.act}\n", {"template-attributes-unreadable sheet.md:3:1"}},
        {"{.act}\n\n{.half}\n\nb", {"template-attributes-unreadable sheet.md:1:1"}},
        {"- {.act}\n\nb", {"template-attributes-unreadable sheet.md:1:3"}},
        {"| a |\n|---|\n| b | {{name}} |\n", {"template-words-lost sheet.md:3:7"}},
        {"| a |\n|---|\n| b | lost |\n", {"template-words-lost sheet.md:3:7"}},
        {"a\n\n[Note]: 555-0101\n", {"template-words-lost sheet.md:3:2"}},
    });
}

TEST_CASE("a fault in the turns of a list is told once") {
    check({{"{{#phones}}\n{{spo2}} *a*\n{{/phones}}", {"template-value-missing sheet.md:2:3"}},
           {"{{#phones}}\n- *a*\n{{/phones}}", {"template-markdown-not-allowed sheet.md:2:3"}}});
}

TEST_CASE("a value with characters that stand for something else here is refused") {
    const Rendered sheet = rendered("a {{x}}", {{"x", value("b\U00100000", "person.name")}});
    CHECK(places(sheet.findings) == "value-character-not-allowed sheet.md:1:3\n");
    CHECK(sheet.findings.front().marks.front().field == "person.name");
}

TEST_CASE("sections nested too deeply and too many pieces are refused") {
    std::string deep;
    for (int n = 0; n < 33; ++n) deep += "{{#on}}";
    deep += "x";
    for (int n = 0; n < 33; ++n) deep += "{{/on}}";
    CHECK(places(rendered(deep, home()).findings) == "template-too-large sheet.md:1:225\n");
    CHECK(places(rendered(std::string(100, '>') + " a", home()).findings) == "template-too-large sheet.md:1:102\n");
    std::string wide = "a\n\n";
    for (int n = 0; n < 41; ++n) wide += "| a ";
    wide += "\n";
    for (int n = 0; n < 41; ++n) wide += "|---";
    CHECK(places(rendered(wide).findings) == "template-too-large sheet.md:3:1\n");
    Partials doubling = {{"p0", {"p0", "x\n"}}};
    for (int n = 1; n < 20; ++n) {
        const std::string below = fmt::format("{{{{> p{}}}}}\n", n - 1);
        doubling[fmt::format("p{}", n)] = {fmt::format("p{}", n), below + below};
    }
    const Rendered large = rendered("{{> p19}}", {}, doubling);
    REQUIRE(!large.findings.empty());
    CHECK(large.findings.front().rule == "template-too-large");
}

TEST_CASE("a template with very many faults is still answered") {
    std::string text;
    for (int n = 0; n < 20000; ++n) text += "{{x}}\n| ";
    const std::vector<Finding> findings = rendered(text).findings;
    REQUIRE(findings.size() == 201);
    CHECK(findings.back().rule == "more-faults-than-listed");
    CHECK(findings.back().severity == Severity::refuse);
}
