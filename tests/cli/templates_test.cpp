#include <doctest/doctest.h>
#include <fmt/format.h>

#include "cli/program.hpp"

using namespace ventfolio::testing;

/// A clinic's own templates, and what the command line says of languages and regions.

TEST_CASE("the built-in templates are written once, and are right as they are") {
    const Scratch folder;
    CHECK(ventfolio_in(folder, "templates export clinic").status == 0);
    CHECK(holds(contents(folder.path("clinic/en/bedside-card.md")), "Rescue steps"));
    const std::string before = state_of(folder.path("clinic"));
    const Ran again = ventfolio_in(folder, "templates export clinic");
    CHECK(again.status == 3);
    CHECK(holds(again.err, "clinic is not empty; nothing was written"));
    CHECK(state_of(folder.path("clinic")) == before);
    const Ran checked =
        ventfolio_in(folder, fmt::format("templates check clinic '{}' --on 2026-02-03", profile_path("adult-mask")));
    CHECK_MESSAGE(checked.status == 0, checked.err);
    CHECK(holds(checked.out, "languages with 1 homes: 0 faults"));
}

TEST_CASE("templates check points at each fault, and status 1 says that there is one") {
    const Scratch folder;
    std::filesystem::create_directories(folder.path("clinic/en"));
    folder.save(
        "clinic/en/extra.md",
        "---\ntitle: Extra\naudience: wall\norder: 75\n---\n## Now\n\nUtilize the {{person.prefered_name}} bag.\n");
    const Ran ran =
        ventfolio_in(folder, fmt::format("templates check clinic '{}' --on 2026-02-03", profile_path("adult-mask")));
    CHECK(ran.status == 1);
    CHECK(holds(ran.err, "clinic/en/extra.md:8:15: refuse: There is no value called \"person.prefered_name\"."));
    CHECK(holds(ran.err, "the nearest is \"person.preferred_name\""));
    CHECK(holds(ran.err, "clinic/en/extra.md:8:1: warn: \"utilize\" is a hard word; a plainer one is \"use\"."));
    CHECK(ventfolio_in(folder, "templates check not-there").status == 3);
}

TEST_CASE("a template that stumbles over one home is named in the summary, and the others are printed") {
    const Scratch folder;
    std::filesystem::create_directories(folder.path("clinic/en"));
    folder.save(
        "clinic/en/tube-label.md",
        "---\ntitle: Tube label\naudience: wall\norder: 75\n---\n## Tube\n\n{{airway.neck_tube.inner_diameter}}\n");
    const Ran ran = ventfolio_in(
        folder, fmt::format("print '{}' '{}' --on 2026-02-03 -o papers --lang en --templates clinic --sheet tube-label",
                            profile_path("adult-tracheostomy"), profile_path("adult-mask")));
    CHECK(ran.status == 1);
    CHECK(holds(ran.out, "adult-mask.yaml: refused: stopped by template-value-missing"));
    CHECK(holds(ran.out, "adult-tracheostomy.yaml: printed:"));
    CHECK(holds(ran.err, "clinic/en/tube-label.md:8:3"));
    CHECK(std::filesystem::exists(folder.path("papers/DEMO-1/tube-label.pdf")));
}

TEST_CASE("a language or region that there is not is an error of usage, the nearest first") {
    const Scratch folder;
    const std::string home = profile_path("adult-mask");
    const Ran language = ventfolio_in(folder, fmt::format("print '{}' -o papers --lang ess", home));
    CHECK(language.status == 2);
    CHECK(language.err == "ventfolio: there is no language \"ess\"; the languages are: es, en\n");
    const Ran region = ventfolio_in(folder, fmt::format("print '{}' -o papers --region ub", home));
    CHECK(region.status == 2);
    CHECK(holds(region.err, "there is no region \"ub\"; the regions are: gb, us, es"));
    CHECK_FALSE(std::filesystem::exists(folder.path("papers")));
}

TEST_CASE("a packet keeps its language with --resume") {
    const Scratch folder;
    const std::string words = fmt::format("print '{}' --on 2026-02-03 -o papers --quiet", profile_path("adult-mask"));
    REQUIRE(ventfolio_in(folder, words + " --lang Español").status == 0);
    CHECK(holds(contents(folder.path("papers/packet.json")), "\"language\": \"es\""));
    const std::string before = state_of(folder.path("papers"));
    CHECK(ventfolio_in(folder, words + " --resume").status == 0);
    CHECK(state_of(folder.path("papers")) == before);
    CHECK(ventfolio_in(folder, words + " --resume --lang en").status == 0);
    CHECK(holds(contents(folder.path("papers/packet.json")), "\"language\": \"en\""));
}
