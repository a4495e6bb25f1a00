#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <regex>

#include "profile/read_profile.hpp"
#include "program.hpp"

/// A name is for the paper that needs it, not for a terminal, a log, a list, the name of a file or the program itself.
using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;

namespace {

/// What profiles/adult-tracheostomy.yaml says of the person and of people near: whole words of it.
constexpr const char* kPrivate[]{"Tobias", "Arlen",   "Ferncastle", "Toby",      "1978-02-11", "11 February 1978",
                                 "Priya",  "Juniper", "Osei-Lind",  "dystrophy", "penicillin", "Larkmoor"};

std::string private_words_in(std::string_view text) {
    std::string found;
    for (const char* word : kPrivate)
        if (holds(text, word)) found += fmt::format("{} ", word);
    return found;
}

}  // namespace

TEST_CASE("no command says on the terminal, in a log or in a list who the person is, unless names are asked for") {
    const Scratch folder;
    const std::string home = profile_path("adult-tracheostomy");
    folder.save("wrong.yaml", contents(home));
    folder.run("sed -i '0,/high_pressure: .*/s//high_pressure: 20 cmH2O/' wrong.yaml");
    folder.save("untyped.yaml", contents(home));
    folder.run("sed -i 's/  legal_name: .*/  legal_name: [Tobias Arlen Ferncastle/' untyped.yaml");
    folder.save("long.yaml", contents(home));
    folder.run("sed -i \"s/  legal_name: .*/  legal_name: Tobias $(printf 'Ferncastle %.0s' $(seq 20))/\" long.yaml");
    folder.save("strange.yaml", contents(home));
    folder.run("sed -i 's/  legal_name: .*/  legal_name: Tobias Ferncastle \xE6\xBC\xA2/' strange.yaml");
    struct Row {
        std::string words;
        int status;
    };
    const Row rows[]{
        {fmt::format("check '{}' --on 2026-02-03", home), 0},
        {fmt::format("check '{}' --on 2026-02-03 --format json", home), 0},
        {"check wrong.yaml --on 2026-02-03", 1},
        {"check untyped.yaml --on 2026-02-03", 1},
        {"check long.yaml --on 2026-02-03", 1},
        {"print strange.yaml --on 2026-02-03 -o strange", 1},
        {fmt::format("print '{}' --on 2026-02-03 -o papers", home), 0},
        {fmt::format("print '{}' --on 2026-02-03 -o R1 --summary json", home), 0},
        {fmt::format("print '{}' --on 2026-02-03 -o csv --summary csv --separate", home), 0},
        {"print wrong.yaml --on 2026-02-03 -o none", 1},
        {fmt::format("update '{}' --from R1 --on 2026-03-15 -o R2", profile_path("adult-tracheostomy-revision-2")), 0},
        {fmt::format("outage '{}' --hours 8 --on 2026-02-03", home), 0},
        {fmt::format("outage '{}' --hours 8 --on 2026-02-03 --format csv", home), 0},
        {fmt::format("due '{}' --on 2026-02-03 --within 400", home), 0},
        {fmt::format("due '{}' --on 2026-02-03 --within 400 --format csv", home), 0},
        {fmt::format("due '{}' --on 2026-02-03 --within 400 --format ics", home), 0},
        {"match R1 AAA-AAA", 1},
    };
    for (const Row& row : rows) {
        CAPTURE(row.words);
        const Ran ran = ventfolio_in(folder, row.words);
        CHECK(ran.status == row.status);
        CHECK(private_words_in(ran.out) == "");
        CHECK(private_words_in(ran.err) == "");
    }
    // The same list with names shows that these words would have been found.
    const Ran named = ventfolio_in(folder, fmt::format("outage '{}' --hours 8 --on 2026-02-03 --names", home));
    CHECK(private_words_in(named.out) != "");
}

TEST_CASE(
    "a clinic's own sheet for the wall cannot name what is not for the wall, and the refusal does not name it either") {
    for (const char* field : {"person.legal_name", "person.birth_date", "home.address"}) {
        CAPTURE(std::string{field});
        const Scratch folder;
        REQUIRE(ventfolio_in(folder, "templates export clinic").status == 0);
        folder.run(fmt::format("printf '\\n## Ours\\n\\n{{{{{}}}}}\\n' >> clinic/en/bedside-card.md", field));
        const Ran ran = ventfolio_in(folder, fmt::format("print '{}' --on 2026-02-03 --templates clinic -o papers",
                                                         profile_path("adult-tracheostomy")));
        CHECK(ran.status == 1);
        CHECK(holds(ran.err, "private-fact-in-wrong-place"));
        CHECK(private_words_in(ran.out + ran.err) == "");
        CHECK_FALSE(fs::exists(folder.path("papers")));
    }
}

TEST_CASE("of the files of a packet only the papers and the profile say who the person is, and no file's name does") {
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, fmt::format("print '{}' --on 2026-02-03 -o papers --separate --dump-layout",
                                             profile_path("adult-tracheostomy")))
                .status == 0);
    std::size_t files = 0;
    for (const auto& entry : fs::recursive_directory_iterator{folder.path("papers")}) {
        ++files;
        const std::string name = entry.path().filename().string();
        CAPTURE(name);
        CHECK(private_words_in(name) == "");
        // The record keeps the titles of the sheets as printed, and the title of a skills record names a caregiver.
        static const std::regex title{"\"title\": \"[^\"]*\""};
        if (name == "packet.json" || name == "SHA256SUMS")
            CHECK(private_words_in(std::regex_replace(contents(entry.path()), title, "")) == "");
    }
    CHECK(files > 20);
    const Ran information = folder.run("for file in papers/*.pdf; do pdfinfo \"$file\"; done");
    CHECK(holds(information.out, "Title"));
    CHECK(private_words_in(information.out) == "");
}

TEST_CASE("the program holds no demo person") {
    const std::string program = contents(VENTFOLIO_PROGRAM);
    REQUIRE(holds(program, "NOT YET CHECKED"));
    std::size_t homes = 0;
    for (const auto& entry : fs::directory_iterator{fs::path{profile_path("adult-tracheostomy")}.parent_path()}) {
        if (entry.path().extension() != ".yaml") continue;
        ++homes;
        const ReadResult read = read_profile({entry.path().string(), contents(entry.path())});
        CAPTURE(entry.path().filename().string());
        CHECK_FALSE(holds(program, *read.profile.person->legal_name));
        CHECK_FALSE(holds(program, *read.profile.home->address));
        for (const Caregiver& one : read.profile.caregivers) CHECK_FALSE(holds(program, *one.name));
        CHECK_FALSE(holds(program, *read.profile.contacts->prescriber_on_call->name));
    }
    CHECK(homes >= 7);
}
