#include <doctest/doctest.h>
#include <fmt/format.h>

#include "cli/program.hpp"

using namespace ventfolio::testing;

namespace {

/// A sheet of a clinic, with a line more in its front matter.
std::string sheet(const std::string& body, const std::string& line = "lists: nothing") {
    return fmt::format("---\ntitle: Extra\naudience: wall\npages: 2\norder: 75\n{}\n---\n## Now {{.act}}\n\n{}\n", line,
                       body);
}

std::string times(std::size_t count, const std::string& words) {
    std::string all;
    for (std::size_t at = 0; at < count; ++at) all += words;
    return all;
}

/// Both languages say the same, so that only what is tried is wrong.
void save_twins(const Scratch& folder, const std::string& english, const std::string& spanish) {
    for (const char* language : {"en", "es"})
        std::filesystem::create_directories(folder.path("clinic") / std::string{language});
    folder.save("clinic/en/extra.md", english);
    folder.save("clinic/es/extra.md", spanish);
}

Ran check_clinic(const Scratch& folder, const std::string& options) {
    return ventfolio_in(folder, fmt::format("templates check clinic '{}' --on 2026-02-03 --quiet {}",
                                            profile_path("adult-mask"), options));
}

}  // namespace

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

TEST_CASE("templates check lays out what print can: two languages, large print, either paper") {
    const Scratch folder;
    // A step goes on no other page: alone it fills most of one, in both languages or in large print it is taller.
    save_twins(folder, sheet("1. " + times(130, "Look at the chest. ")), sheet("1. " + times(130, "Mire el pecho. ")));
    struct Row {
        const char* options;
        int status;
        const char* told;
    };
    const Row rows[] = {
        {"", 0, "2 languages with 1 homes: 0 faults"},
        {"--lang en", 0, "1 languages with 1 homes: 0 faults"},
        {"--lang Spanish --region gb --paper a4", 0, "1 languages with 1 homes: 0 faults"},
        {"--lang en+es", 1, "clinic/en/extra.md:10:1: refuse: On extra, a part is"},
        {"--lang es+en", 1, "clinic/es/extra.md:10:1: refuse: On extra, a part is"},
        {"--lang en --large-print", 1, "clinic/en/extra.md:10:1: refuse: On extra, a part is"},
        {"--lang ess", 2, "there is no language \"ess\""},
        {"--region ub", 2, "there is no region \"ub\""},
        {"--paper a5", 2, "--paper: a5 not in {letter,a4}"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.options});
        const Ran ran = ventfolio_in(folder, fmt::format("templates check clinic '{}' --on 2026-02-03 {}",
                                                         profile_path("adult-mask"), row.options));
        CHECK(ran.status == row.status);
        CHECK_MESSAGE(holds(ran.out + ran.err, row.told), ran.err);
    }
}

TEST_CASE("templates check tells file and line of what is hard to read, lost or not translated") {
    const std::string hard = times(25, "Somebody documents every alarm. ");
    const std::string plain = times(25, "Look at the chest now. ");
    const std::string spanish = times(25, "Mire ya el pecho. ");
    struct Row {
        const char* about;
        std::string english;
        std::string spanish;
        std::vector<const char*> told;
    };
    const Row rows[] = {
        {"beyond its own limit",
         sheet(hard, "reading: 5"),
         sheet(spanish),
         {"clinic/en/extra.md:10:1: warn: extra: grade", "where 5 at most is due", "    6 | reading: 5"}},
        {"within its own limit", sheet(plain, "reading: 5"), sheet(spanish), {}},
        {"a limit that is no number",
         sheet(plain, "reading: easy"),
         sheet(spanish),
         {"clinic/en/extra.md:6:10: refuse: `reading` is a school grade from 1 to 12, not \"easy\"."}},
        {"a grade where ease is due",
         sheet(plain),
         sheet(spanish, "reading: 5"),
         {"clinic/es/extra.md:6:10: refuse: `reading` is an ease on the INFLESZ scale from 40 to 100, not \"5\"."}},
        {"a hard word",
         sheet("1. Utilize the bag."),
         sheet("1. Use la bolsa."),
         {"clinic/en/extra.md:10:4: warn: \"utilize\" is a hard word; a plainer one is \"use\"."}},
        {"a step that the translation lacks",
         sheet("1. Look.\n1. Call."),
         sheet("1. Mire."),
         {"clinic/es/extra.md:8:1: refuse: This section has 1 numbered items, the first language 2, "
          "clinic/en/extra.md:8."}},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.about});
        const Scratch folder;
        save_twins(folder, row.english, row.spanish);
        const Ran ran = check_clinic(folder, "");
        for (const char* told : row.told) CHECK_MESSAGE(holds(ran.err, told), ran.err);
        if (row.told.empty()) CHECK(ran.err == "");
    }
}

TEST_CASE("templates check tells of a sheet without its twin, without a caution, and with a limit that is gone") {
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, "templates export all --quiet").status == 0);
    std::filesystem::create_directories(folder.path("clinic/en"));
    folder.save("clinic/en/extra.md", sheet("1. Look."));
    std::string card = contents(folder.path("all/en/bedside-card.md"));
    const auto limit = card.find("reading: ");
    REQUIRE(limit != std::string::npos);
    card.erase(limit, card.find('\n', limit) + 1 - limit);
    folder.save("clinic/en/bedside-card.md", card);
    const Ran relaxed = check_clinic(folder, "");
    CHECK(relaxed.status == 1);
    CHECK(holds(relaxed.err, "clinic/en/extra.md:1:1: refuse: There is no extra in the language \"es\"."));
    CHECK(holds(relaxed.err, "clinic/en/bedside-card.md:1:1: warn: This sheet has no limit of its own"));
    const auto step = card.find("\n1. ");
    REQUIRE(step != std::string::npos);
    card.erase(step, card.find('\n', step + 1) - step);
    folder.save("clinic/en/bedside-card.md", card);
    const Ran dropped = check_clinic(folder, "");
    CHECK(dropped.status == 1);
    CHECK(holds(dropped.err, "clinic/en/bedside-card.md:1:1: refuse: This sheet lacks the caution"));
    CHECK(holds(dropped.err, "of templates/en/bedside-card.md:"));
}
