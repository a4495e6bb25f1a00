#include "markup/helpers.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// A sheet that uses everything, for an invented home.
constexpr std::string_view kSheet = R"(---
title: Care card for {{person.name}}
audience: wall
paper: letter
type_size: 14
pages: 2
order: 3
---
{{! The family reads this at night. }}
# {{person.name}} {.name aside="{{#place}}{{place}}{{/place}}"}

> [!WARNING] {.wide}
> {{person.name}} needs the ventilator {{need.asleep}}.
{{#need.alone}}
> Never leave {{person.name}} alone.
{{/need.alone}}

## If the chest does not move {.act span=12}

{{> rescue}}

## Settings {.table}

{{#prescriptions}}
{{#first}}
| Setting | Now | Check |
|:--|--:|:-:|
{{/first}}
{{#settings}}
| {{label}} | **{{amount}}** | [ ] |
{{/settings}}
{{#last}}

{{/last}}
{{/prescriptions}}
{{^prescriptions}}
No settings.
{{/prescriptions}}
{{#oxygen}}
Oxygen: **{{oxygen.flow}}** by {{oxygen.route}}.
{{/oxygen}}
{{^oxygen}}
No oxygen.
{{/oxygen}}

![How the hoses connect](figure:hookup)

Signed ______________ {.sign}
)";

const Partials kPartials = {
    {"rescue",
     {"partials/rescue.md",
      "1. Call {{#phones}}**{{number}}**{{^last}} or {{/last}}{{/phones}}.\n2. Use the {{bag.size}} bag.\n"}}};

TemplateData home() {
    return object(
        {{"person", object({{"name", value("Robin Vale", "person.name")}})},
         {"place", value("Bed", "place")},
         {"need", object({{"asleep", value("when asleep", "need.asleep")}, {"alone", true}})},
         {"bag", object({{"size", value("1 L", "bag.size")}})},
         {"phones", list({object({{"number", value("555-0101", "phones.0")}}),
                          object({{"number", value("555-0102", "phones.1")}})})},
         {"prescriptions",
          list({object({{"settings", list({object({{"label", value("Rate", "rate")}, {"amount", value("12", "rate")}}),
                                           object({{"label", value("Volume", "volume")},
                                                   {"amount", value("450 mL", "volume")}})})}})})},
         {"oxygen",
          object({{"flow", value("2 L/min", "oxygen.flow")}, {"route", value("the hose", "oxygen.route")}})}});
}

}  // namespace

TEST_CASE("a whole sheet becomes the tree that its template shows") {
    const Rendered sheet = render(parsed(std::string{kSheet}, kPartials), home());
    CHECK(places(sheet.findings) == "");
    CHECK(shown(sheet.title) == "Care card for <Robin Vale>");
    CHECK(shown(sheet.blocks) ==
          "h1 <Robin Vale> {.name} aside <Bed>; "
          "WARNING {.wide}(p <Robin Vale> needs the ventilator <when asleep>. Never leave <Robin Vale> alone.); "
          "h2 If the chest does not move {.act span=12}; "
          "ol(li(p Call **<555-0101>** or **<555-0102>**.); li(p Use the <1 L> bag.)); "
          "h2 Settings {.table}; "
          "table(lrc |Setting|Now|Check| |<Rate>|**<12>**|[ ]| |<Volume>|**<450 mL>**|[ ]|); "
          "p Oxygen: **<2 L/min>** by <the hose>.; "
          "p (hookup: How the hoses connect); "
          "p Signed _14_ {.sign}");
}

TEST_CASE("every name of a template, misspelt one at a time, is refused at its place") {
    const std::string whole{kSheet};
    std::size_t tried = 0;
    for (std::size_t open = whole.find("{{"); open != std::string::npos; open = whole.find("{{", open + 2)) {
        const char sign = whole[open + 2];
        if (sign == '!' || sign == '>' || sign == '/') continue;
        const std::size_t name = open + (sign == '#' || sign == '^' ? 3 : 2);
        const std::size_t end = whole.find("}}", name);
        // The last letter, so that of a dotted name the last part is wrong; the end tag must still match.
        const std::string right = whole.substr(name, end - name);
        std::string text = whole.substr(0, name) + right + "q" + whole.substr(end);
        if (sign == '#' || sign == '^') {
            const std::size_t close = text.find("{{/" + right + "}}", end);
            REQUIRE(close != std::string::npos);
            text.insert(close + 3 + right.size(), "q");
        }
        CAPTURE(right);
        const Rendered sheet = render(parsed(text, kPartials), home());
        REQUIRE(!sheet.findings.empty());
        const Finding& finding = sheet.findings.front();
        CHECK(finding.rule == "template-name-unknown");
        CHECK(finding.marks.front().place.begin == name);
        CHECK(finding.marks.front().place.end == name + right.size() + 1);
        CHECK(finding.marks.front().label == "the nearest is \"" + right + "\"");
        ++tried;
    }
    CHECK(tried == 19);  // counted by hand
}

TEST_CASE("a template can be read once and rendered for many homes") {
    const Template sheet = parsed(std::string{kSheet}, kPartials);
    const std::string first = shown(render(sheet, home()).blocks);
    TemplateData::Object other = *home().object();
    other["oxygen"] = TemplateData{};
    other["prescriptions"] = list({});
    const std::string second = shown(render(sheet, other).blocks);
    CHECK(second.find("p No settings. No oxygen.") != std::string::npos);
    CHECK(shown(render(sheet, home()).blocks) == first);
}
