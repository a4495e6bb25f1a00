#include <doctest/doctest.h>

#include <algorithm>

#include "judged_fragment.hpp"
#include "rules/edited_home.hpp"
#include "rules/explain.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

TEST_CASE("every rule of templates and laid-out sheets fires on its example and not on the near one") {
    for (const RuleText& rule : rule_book()) {
        if (rule.judges != Judges::markup && rule.judges != Judges::layout && rule.judges != Judges::overlay) continue;
        CAPTURE(std::string{rule.name});
        const std::vector<Finding> findings = judged_example(rule.example, rule.example.fires);
        const auto found = std::ranges::find(findings, rule.name, &Finding::rule);
        CHECK_MESSAGE(found != findings.end(), "does not fire: " << summary(findings));
        if (found != findings.end()) {
            CHECK(found->severity == rule.severity);
            REQUIRE(!found->marks.empty());
            CHECK(found->marks.front().file.starts_with("templates/"));
            CHECK(found->marks.front().place.known());
        }
        const std::vector<Finding> near = judged_example(rule.example, rule.example.silent);
        CHECK_MESSAGE(near.empty(), "fires too: " << summary(near));
    }
}

TEST_CASE("explain says what takes the place of which file") {
    CHECK(explain_rule("template-partial-recursive").value_or("").find(R"(
  example:  profiles/adult-tracheostomy.yaml on 2026-02-03 reports it with this as templates/en/partials/take-off.md
      Cap off. {{> take-off}}
    and does not with
      Cap off.
)") != std::string::npos);
    CHECK(explain_rule("template-attributes-unreadable")
              .value_or("")
              .find(R"( reports it with these words on bedside-card (wall)
      ## Rescue steps {act}

      1. Look.
    and does not with
)") != std::string::npos);
}
