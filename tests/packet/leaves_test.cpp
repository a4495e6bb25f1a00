#include <doctest/doctest.h>

#include <algorithm>

#include "markup/template.hpp"
#include "packet/documents.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

struct Leaf {
    std::string name;
    std::string front;
    std::string text;
};

/// A home's documents from templates of the test's own.
std::vector<Document> made(std::string_view home, const std::vector<Leaf>& leaves, std::vector<Finding>& findings) {
    Stationery own = stationery();
    own.sheets.clear();
    for (const Leaf& leaf : leaves) {
        const std::string text = "---\ntitle: T\naudience: wall\n" + leaf.front + "---\n" + leaf.text + "\n";
        own.sheets.emplace(leaf.name, parse_template({"own/" + leaf.name + ".md", text}, {}));
    }
    const CheckedHome checked = check_home(demo_profile(home), demo_day());
    return make_documents(Household{checked.profile, demo_day()}, {}, own, own.in_order(), findings);
}

std::string names_of(const std::vector<Document>& documents) {
    std::string names;
    for (const Document& document : documents) names += document.name + " ";
    return names;
}

}  // namespace

TEST_CASE("a home has the leaves whose conditions hold, in their order, each a sheet of its own") {
    const std::vector<Leaf> leaves{
        {"chart", "order: 5\n", "Cover."},
        {"chart/mask", "order: 9\nonly_if: uses_mask\n", "For a mask."},
        {"chart/neck-tube", "order: 8\nonly_if: uses_neck_tube\n", "For a neck tube."},
        {"chart/child-with-tube", "order: 7\nonly_if: uses_neck_tube is_child\n", "For a child."},
        {"chart/oxygen", "order: 6\nonly_if: oxygen.flow_none\n", "Never made."},
        {"other", "order: 1\n", "Another sheet."},
    };
    struct Row {
        const char* home;
        const char* names;
    };
    for (const Row& row : {Row{"adult-tracheostomy", "other chart chart/neck-tube "},
                           Row{"child-tracheostomy", "other chart chart/child-with-tube chart/neck-tube "},
                           Row{"adult-mask", "other chart chart/mask "}}) {
        CAPTURE(std::string{row.home});
        std::vector<Finding> findings;
        std::vector<Document> documents = made(row.home, leaves, findings);
        CHECK(names_of(documents) == row.names);
        CHECK(documents.back().sheet == "chart");
        CHECK("chart/" + documents.back().place == documents.back().name);
        // A condition that no data has is a slip of the template: never a sheet left out in silence.
        REQUIRE(findings.size() == 1);
        CHECK(findings.front().rule == "template-name-unknown");
        CHECK(findings.front().marks.front().file == "own/chart/oxygen.md");
        CHECK(findings.front().marks.front().place.line == 5);
    }
}

TEST_CASE("leaves are numbered as this home has them, and a leaf that it lacks has no number") {
    const std::vector<Leaf> leaves{
        {"chart", "order: 1\n", "{{#leaf.mask}}Mask {{leaf.mask}}{{/leaf.mask}}, last {{leaf.last_one}}."},
        {"chart/first", "order: 2\n", "First."},
        {"chart/mask", "order: 3\nonly_if: uses_mask\n", "Mask."},
        {"chart/last-one", "order: 4\n", "Last."},
    };
    std::vector<Finding> findings;
    CHECK(plain_text(made("adult-mask", leaves, findings).front().blocks.front().inlines) == "Mask 2, last 3.");
    CHECK(plain_text(made("adult-tracheostomy", leaves, findings).front().blocks.front().inlines) == ", last 2.");
    CHECK(findings.empty());
}
