#include <algorithm>
#include <random>

#include "markup/expansion.hpp"
#include "markup/helpers.hpp"
#include "markup/markdown_source.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

TemplateData home() {
    return object({{"v", value("VALUE")},
                   {"m", {}},
                   {"t", true},
                   {"f", false},
                   {"o", object({{"v", value("VALUE")}, {"m", {}}})},
                   {"l", list({object({{"v", value("VALUE")}}), object({{"v", value("VALUE")}})})},
                   {"e", list({})}});
}

// clang-format off
constexpr std::string_view kPieces[] = {
    "{{v}}", "{{#l}}", "{{/l}}", "{{#t}}", "{{/t}}", "{{^f}}", "{{/f}}", "{{#o}}", "{{/o}}", "{{o.v}}", "{{> p}}",
    "{{! c }}", "{{m}}", "{{#m}}", "{{/m}}", "{{{", "{{", "}}", "}", "{", "word ", "12 ", "\n", "\n\n", "# ", "- ",
    "1. ", "> ", "[!NOTICE]", "|", "\n|---|\n", "| a ", "[ ]", "[x]", "___", "---\n", "===\n", "**", "*", "_", "`",
    "```\n", "<b>", "<!--", "&amp;", "&x;", "\\", "  ", "      ", "![a](figure:b)", "![", "](", "](x)", "[",
    "{.a}", "{.a b=\"{{v}}\"}", "aside=\"", "\"", "é", "\u00A0", "~~~\n", "<http://a>", "[a]: b\n", ":",
    "---\ntitle: ", "title: {{v}}\n",
};
// clang-format on

std::size_t count(std::string_view text, std::string_view what) {
    std::size_t found = 0;
    for (std::size_t at = text.find(what); at != text.npos; at = text.find(what, at + what.size())) ++found;
    return found;
}

/// How often "word" and the value stand in the Markdown, before anything has judged it.
std::pair<std::size_t, std::size_t> counted(const Template& from, const TemplateData& data) {
    Faults faults{from.files};
    const Expansion expansion{from, from.body, {&data}, faults};
    const auto points = code_points(expansion.markdown());
    const auto values = std::ranges::count_if(points, [](char32_t point) { return point >= kFirstValueToken; });
    return {count(expansion.markdown(), "word"), static_cast<std::size_t>(values)};
}

std::string sewn(std::mt19937& random, int length) {
    std::string text;
    for (int n = 0; n < length; ++n) text += kPieces[random() % std::size(kPieces)];
    return text;
}

}  // namespace

TEST_CASE("random templates never crash, and a sheet without findings has every word and value of its template") {
    const TemplateData data = home();
    const Partials partials = {{"p", {"p.md", "- {{v}}\n{{#t}}\n  x\n{{/t}}\n"}}};
    std::mt19937 random{20270305};
    int whole = 0;
    for (int turn = 0; turn < 20000; ++turn) {
        const std::string text = sewn(random, 1 + static_cast<int>(random() % 14));
        CAPTURE(text);
        const Template from = parsed(text, partials);
        const Rendered sheet = render(from, data);
        for (const Finding& finding : sheet.findings) {
            CHECK(!finding.rule.empty());
            CHECK(!finding.message.empty());
            CHECK(finding.marks.front().place.known());
        }
        if (!sheet.findings.empty()) continue;
        ++whole;
        const std::string tree = shown(sheet.blocks);
        CHECK(counted(from, data) == std::pair{count(tree, "word"), count(tree, "VALUE")});
    }
    CHECK(whole > 1000);
}

TEST_CASE("random bytes never crash") {
    std::mt19937 random{7};
    for (int turn = 0; turn < 5000; ++turn) {
        std::string text;
        for (std::size_t n = random() % 40; n > 0; --n) text += static_cast<char>(random() % 256);
        const Rendered sheet = rendered(text);
        if (text.find_first_of("\x01\x02\t") != std::string::npos) CHECK(!sheet.findings.empty());
    }
}

TEST_CASE("a sheet cut off at any byte never crashes") {
    const std::string whole =
        "---\ntitle: T {{v}}\n---\n# A {.b aside=\"{{v}}\"}\n\n{{#l}}\n- [ ] {{v}} ____\n{{/l}}\n\n"
        "| a | **{{v}}** |\n|---|--:|\n| | [ ] |\n\n> [!WARNING] {.x}\n> é ![a](figure:f)\n";
    for (std::size_t size = 0; size <= whole.size(); ++size) render(parsed(whole.substr(0, size)), home());
    CHECK(places(render(parsed(whole), home()).findings) == "");
}
