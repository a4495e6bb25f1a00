#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "markup/expansion.hpp"
#include "markup/helpers.hpp"
#include "markup/markdown_source.hpp"
#include "markup/name_check.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

TemplateData from_json(const nlohmann::json& json) {
    if (json.is_null()) return {};
    if (json.is_boolean()) return json.get<bool>();
    if (json.is_string()) return value(json.get<std::string>());
    if (json.is_number()) return value(json.dump());
    if (json.is_array()) {
        TemplateData::Items items;
        for (const auto& item : json) items.push_back(from_json(item));
        return items;
    }
    TemplateData::Object members;
    for (const auto& [key, member] : json.items()) members.emplace(key, from_json(member));
    return members;
}

struct Outcome {
    std::string text;
    std::string rule;  ///< of the first finding; then there is no text
};

/// What Mustache makes of a template, before any Markdown.
Outcome expanded(const Template& from, const TemplateData& data) {
    if (!from.findings.empty()) return {"", from.findings.front().rule};
    Faults faults{from.files};
    Scope scope;
    scope.push(data);
    check_names(from.body, scope, faults);
    if (!faults.empty()) return {"", faults.take().front().rule};
    const Expansion expansion{from, from.body, {&data}, faults};
    std::string text;
    for (const char32_t point : code_points(expansion.markdown()))
        text += point >= kFirstValueToken ? expansion.value(point).text() : utf8(point);
    return {text, ""};
}

Outcome expanded(std::string text, const TemplateData& data, const Partials& partials = {}) {
    return expanded(parsed(std::move(text), partials), data);
}

/// Where we differ from the specification, and why.
struct Difference {
    std::string_view file;
    std::string_view example;
    std::string_view rule;  ///< refused with this
    std::string_view text;  ///< or printed so
};
constexpr Difference kDifferences[] = {
    // A value is printed as itself: nothing is escaped, and there is no way to ask for it.
    {"interpolation", "HTML Escaping", "", "These characters should be HTML escaped: & \" < >\n"},
    {"interpolation", "Triple Mustache", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache Integer Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand Integer Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache Decimal Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand Decimal Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache Context Miss Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand Context Miss Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Dotted Names - Triple Mustache Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Dotted Names - Ampersand Interpolation", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache - Surrounding Whitespace", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand - Surrounding Whitespace", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache - Standalone", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand - Standalone", "template-tag-not-allowed", ""},
    {"interpolation", "Triple Mustache With Padding", "template-tag-not-allowed", ""},
    {"interpolation", "Ampersand With Padding", "template-tag-not-allowed", ""},
    {"partials", "Standalone Indentation", "template-tag-not-allowed", ""},
    // A name that the data does not have prints nothing there, and is refused here, also where nothing is printed.
    {"interpolation", "Basic Context Miss Interpolation", "template-name-unknown", ""},
    {"interpolation", "Dotted Names - Broken Chains", "template-name-unknown", ""},
    {"interpolation", "Dotted Names - Broken Chain Resolution", "template-name-unknown", ""},
    {"sections", "Context Misses", "template-name-unknown", ""},
    {"sections", "Dotted Names - Broken Chains", "template-name-unknown", ""},
    {"inverted", "Context Misses", "template-name-unknown", ""},
    {"inverted", "Dotted Names - Broken Chains", "template-name-unknown", ""},
    {"inverted", "Context", "template-name-unknown", ""},
    {"inverted", "List", "template-name-unknown", ""},
    {"partials", "Failed Lookup", "template-partial-unknown", ""},
    {"partials", "Recursion", "template-partial-recursive", ""},
    // A tab prints nothing that a reader could count on.
    {"sections", "Surrounding Whitespace", "template-character-not-allowed", ""},
    {"inverted", "Surrounding Whitespace", "template-character-not-allowed", ""},
    {"partials", "Surrounding Whitespace", "template-character-not-allowed", ""},
    // A partial on a line of its own ends with a line end, or its last word would run into the next line.
    {"partials", "Standalone Line Endings", "", "|\n>\n|"},
    {"partials", "Standalone Without Previous Line", "", "  >\n  >\n>"},
    {"partials", "Standalone Without Newline", "", ">\n  >\n  >\n"},
};

nlohmann::json examples(std::string_view file) {
    std::ifstream in{fmt::format("{}/tests/markup/mustache_specification/{}.json", VENTFOLIO_SOURCE_DIR, file)};
    return nlohmann::json::parse(in).at("tests");
}

}  // namespace

// Source: the Mustache specification 1.1, github.com/mustache/spec; see the folder mustache_specification.
TEST_CASE("every example of the Mustache specification comes out as it says, or differs for a reason that is named") {
    const std::map<std::string, std::size_t> sizes = {
        {"interpolation", 30}, {"sections", 25}, {"inverted", 21}, {"partials", 11}, {"comments", 11}};
    std::size_t differing = 0;
    for (const auto& [file, size] : sizes) {
        const auto tests = examples(file);
        CHECK(tests.size() == size);
        for (const auto& test : tests) {
            const std::string name = test.at("name");
            CAPTURE(file);
            CAPTURE(name);
            Partials partials;
            const auto given = test.value("partials", nlohmann::json::object());
            for (const auto& [key, text] : given.items()) partials[key] = {key, text};
            const Outcome outcome = expanded(test.at("template"), from_json(test.at("data")), partials);
            const auto* difference = std::ranges::find_if(
                kDifferences, [&](const Difference& one) { return one.file == file && one.example == name; });
            if (difference == std::end(kDifferences)) {
                CHECK(outcome.rule == "");
                CHECK(outcome.text == with_replaced(test.at("expected"), "\r\n", "\n"));
            } else {
                ++differing;
                CHECK(outcome.rule == difference->rule);
                CHECK(outcome.text == difference->text);
            }
        }
    }
    CHECK(differing == std::size(kDifferences));
}

// Source: "Dotted names should be resolved against former resolutions", an example of specification 1.2, from memory.
TEST_CASE("a dotted name is looked for in the section that has its first part, and nowhere else") {
    const TemplateData data = object({{"a", object({{"b", object({})}})}, {"b", object({{"c", value("WRONG")}})}});
    CHECK(expanded("{{#a}}{{b.c}}{{/a}}", data).rule == "template-name-unknown");
}

// Source: "Dotted Names - Context Precedence" and "Implicit Iterator - Nested", specification 1.2 and 1.3, from memory.
TEST_CASE("sections see lists, values, flags and objects as Mustache does") {
    const TemplateData data =
        object({{"yes", true},
                {"no", false},
                {"word", value("w")},
                {"missing", {}},
                {"name", value("outer")},
                {"child", object({{"name", value("inner")}})},
                {"empty", object({})},
                {"none", list({})},
                {"rows", list({list({value("1"), value("2")}), list({value("3")})})},
                {"people", list({object({{"name", value("A")}}), object({{"age", value("7")}})})}});
    struct Example {
        std::string_view given;
        std::string_view expected;
    };
    for (const auto& [given, expected] : {
             Example{"{{#yes}}y{{/yes}}{{^yes}}n{{/yes}}", "y"},
             Example{"{{#no}}y{{/no}}{{^no}}n{{/no}}", "n"},
             Example{"{{#word}}[{{.}}]{{/word}}{{^word}}n{{/word}}", "[w]"},
             Example{"{{#missing}}[{{missing}}]{{/missing}}{{^missing}}n{{/missing}}", "n"},
             Example{"{{#child}}{{name}} {{/child}}{{name}}", "inner outer"},
             Example{"{{#empty}}{{name}}{{/empty}}", "outer"},
             Example{"{{#none}}y{{/none}}{{^none}}n{{/none}}", "n"},
             Example{"{{#rows}}({{#.}}{{.}}{{/.}}){{/rows}}", "(12)(3)"},
             Example{"{{#people}}{{name}}{{#last}}.{{/last}}{{^last}}, {{/last}}{{/people}}", "A, outer."},
             Example{"{{#people}}{{^no}}{{name}}{{#first}}!{{/first}}{{/no}}{{/people}}", "A!outer"},
         }) {
        CAPTURE(given);
        const Outcome outcome = expanded(std::string{given}, data);
        CHECK(outcome.rule == "");
        CHECK(outcome.text == expected);
    }
}

// Common practice, no source: the lines are what a reader of the template expects.
TEST_CASE("lines that hold nothing but tags leave no line behind") {
    const TemplateData data = object({{"a", true}, {"b", false}});
    CHECK(expanded("- 1\n{{#a}}{{^b}}\n- 2\n{{/b}} {{/a}}\n- 3\n", data).text == "- 1\n- 2\n- 3\n");
    CHECK(expanded("- 1\n{{#b}}\n- 2\n{{/b}}\n- 3\n", data).text == "- 1\n- 3\n");
    CHECK(expanded("1\n{{#a}}\n\n2\n{{/a}}\n", data).text == "1\n\n2\n");
    CHECK(expanded("1\n{{! note }}{{> p}}\n2\n", data, {{"p", {"p.md", "x"}}}).text == "1\nx\n2\n");
}

TEST_CASE("a partial keeps the indentation of its tag in every line, also in lines that begin with a tag") {
    const TemplateData data = object({{"v", value("7")}, {"a", true}, {"b", false}});
    const Partials partials = {{"p", {"p.md", "{{v}} x\n{{#a}}y{{/a}}\n{{#b}}\nno\n{{/b}}\n{{> q}}\n"}},
                               {"q", {"q.md", "q"}}};
    CHECK(expanded("- a\n  {{> p}}\n- b\n", data, partials).text == "- a\n  7 x\n  y\n  q\n- b\n");
}
