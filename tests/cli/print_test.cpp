#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;

namespace {

std::string print_words(std::string_view home, std::string_view more) {
    return fmt::format("print '{}' --on 2026-02-03 {}", profile_path(home), more);
}

unsigned mode_of(const fs::path& path) {
    struct stat status {};
    REQUIRE(::lstat(path.c_str(), &status) == 0);
    return status.st_mode & 07777U;
}

/// A demo home with some words changed, saved in the folder as home.yaml.
void save_home(const Scratch& folder, std::string_view from, std::string_view to) {
    const std::string text = contents(profile_path("adult-tracheostomy"));
    REQUIRE(holds(text, from));
    folder.save("home.yaml", with_replaced(text, from, to));
}

}  // namespace

TEST_CASE("print writes a folder and files for their owner only, whatever the user's mask says") {
    const Scratch folder;
    const Ran ran = folder.run(fmt::format("umask 000 && '{}' {}", VENTFOLIO_PROGRAM,
                                           print_words("adult-tracheostomy", "-o papers --dump-layout")));
    CHECK_MESSAGE(ran.status == 0, ran.err);
    CHECK(mode_of(folder.path("papers")) == 0700);
    CHECK(names_in(folder.path("papers")) == "SHA256SUMS packet.json packet.layout.txt packet.pdf profile.yaml");
    for (const auto& entry : fs::directory_iterator{folder.path("papers")}) CHECK(mode_of(entry.path()) == 0600);
    CHECK(contents(folder.path("papers") / "packet.pdf").starts_with("%PDF-1."));
    CHECK(names_in(folder.path("")) == "err out papers");  // nothing is left beside it
}

TEST_CASE("print writes nothing when a finding refuses, and leaves an earlier packet untouched") {
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, print_words("adult-tracheostomy", "-o papers")).status == 0);
    const std::string before = state_of(folder.path("papers"));
    save_home(folder, "high_pressure: 31 cmH2O", "high_pressure: 19 cmH2O");
    for (const char* more : {"", "--separate", "--sheet bedside-card", "--large-print"}) {
        CAPTURE(std::string{more});
        const Ran again = ventfolio_in(folder, fmt::format("print home.yaml --on 2026-02-03 -o papers {}", more));
        CHECK(again.status == 1);
        CHECK(again.out == "");
        CHECK(holds(again.err, "[high-pressure-alarm-below-peak]"));
        CHECK(holds(again.err, "nothing printed"));
        CHECK(state_of(folder.path("papers")) == before);
        const Ran fresh = ventfolio_in(folder, fmt::format("print home.yaml --on 2026-02-03 -o fresh {}", more));
        CHECK(fresh.status == 1);
        CHECK(!fs::exists(folder.path("fresh")));
    }
    CHECK(names_in(folder.path("")) == "err home.yaml out papers");
}

TEST_CASE("a folder of another person, another revision or other things is not replaced") {
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, print_words("adult-tracheostomy", "-o papers")).status == 0);
    const std::string before = state_of(folder.path("papers"));
    const Ran other = ventfolio_in(folder, print_words("adult-mask", "-o papers"));
    CHECK(other.status == 3);
    CHECK(holds(other.err, "papers"));
    const Ran revision = ventfolio_in(
        folder, fmt::format("print '{}' --on 2026-03-17 -o papers", profile_path("adult-tracheostomy-revision-2")));
    CHECK(revision.status == 3);
    CHECK(holds(revision.err, "update"));
    CHECK(state_of(folder.path("papers")) == before);

    fs::create_directory(folder.path("letters"));
    folder.save("letters/letter.txt", "Dear Priya");
    const std::string letters = state_of(folder.path("letters"));
    CHECK(ventfolio_in(folder, print_words("adult-mask", "-o letters")).status == 3);
    CHECK(state_of(folder.path("letters")) == letters);
    CHECK(ventfolio_in(folder, print_words("adult-mask", "-o letters/letter.txt")).status == 3);
    CHECK(state_of(folder.path("letters")) == letters);
}

TEST_CASE("two runs give the same bytes, whatever clock, language, home and place the user has") {
    struct Row {
        const char* environment;
        const char* folder;
    };
    const Row rows[] = {
        {"", "second"},
        {"TZ=Pacific/Kiritimati LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8 HOME=/nonexistent USER=nobody", "third"},
        {"TZ=America/Anchorage LC_ALL=tr_TR.UTF-8 HOME=/", "deep/er/fourth"},
        {"env -i", "fifth"},
        {"SOURCE_DATE_EPOCH=86400", "sixth"},  // --on has the last word
    };
    const char* more = "--separate --dump-layout";
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, print_words("child-tracheostomy", fmt::format("-o first {}", more))).status == 0);
    const std::string names = names_in(folder.path("first"));
    for (const Row& row : rows) {
        CAPTURE(std::string{row.environment});
        const std::string words = print_words("child-tracheostomy", fmt::format("-o {} {}", row.folder, more));
        const Ran ran = ventfolio_in(folder, words, row.environment);
        REQUIRE_MESSAGE(ran.status == 0, ran.err);
        CHECK(names_in(folder.path(row.folder)) == names);
        for (const std::string& name : split(names, ' ')) {
            CAPTURE(name);
            CHECK((contents(folder.path("first") / name) == contents(folder.path(row.folder) / name)));
        }
    }
}

TEST_CASE("without --on the print date is SOURCE_DATE_EPOCH, in universal time") {
    const Scratch folder;
    const std::string words = fmt::format("print '{}' -o ", profile_path("adult-mask"));
    // 2026-02-03T23:30:00Z; east of Greenwich it is the 4th already (reproducible-builds.org: the epoch is UTC).
    const Ran ran = ventfolio_in(folder, words + "dated", "SOURCE_DATE_EPOCH=1770161400 TZ=Asia/Tokyo");
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
    const auto dated = nlohmann::json::parse(contents(folder.path("dated") / "packet.json"));
    CHECK(dated.at("printed_on") == "2026-02-03");
    REQUIRE(ventfolio_in(folder, words + "same --on 2026-02-03").status == 0);
    CHECK((contents(folder.path("dated") / "packet.pdf") == contents(folder.path("same") / "packet.pdf")));
}

TEST_CASE("sheets can be had one by one") {
    const Scratch folder;
    const Ran one = ventfolio_in(folder, print_words("adult-mask", "-o papers --sheet bedside-card"));
    REQUIRE_MESSAGE(one.status == 0, one.err);
    CHECK(names_in(folder.path("papers")) == "SHA256SUMS bedside-card.pdf packet.json profile.yaml");
    const std::string card = contents(folder.path("papers") / "bedside-card.pdf");
    // A second sheet goes beside the first.
    const Ran two =
        ventfolio_in(folder, print_words("adult-mask", "-o papers --sheet setting-check --sheet responder-sheet"));
    REQUIRE_MESSAGE(two.status == 0, two.err);
    CHECK(names_in(folder.path("papers")) ==
          "SHA256SUMS bedside-card.pdf packet.json profile.yaml responder-sheet.pdf setting-check.pdf");
    CHECK(folder.run("cd papers && sha256sum --check --strict SHA256SUMS").status == 0);
    CHECK((contents(folder.path("papers") / "bedside-card.pdf") == card));
    REQUIRE(ventfolio_in(folder, print_words("adult-mask", "-o separate --separate")).status == 0);
    CHECK(names_in(folder.path("separate")) ==
          "SHA256SUMS alarm-response.pdf bedside-card.pdf care-schedule.pdf folder-index.pdf hookup.pdf "
          "notice-letters.pdf "
          "outage-plan.pdf packet.json profile.yaml responder-sheet.pdf setting-check.pdf settings-switch.pdf "
          "skills-record.pdf "
          "supplies.pdf verification.pdf visit-check.pdf wallet-card.pdf");
    CHECK((contents(folder.path("separate") / "bedside-card.pdf") == card));
}

TEST_CASE("packet.json lists each sheet with its place, code and pages") {
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, print_words("adult-tracheostomy", "-o papers")).status == 0);
    const auto manifest = nlohmann::json::parse(contents(folder.path("papers") / "packet.json"));
    CHECK(manifest.at("record_number") == "DEMO-1");
    CHECK(manifest.at("revision") == "R1");
    CHECK(manifest.at("sheets").size() > 30);
    const Ran text = folder.run("pdftotext papers/packet.pdf -");
    std::size_t pages = 2;
    for (const auto& sheet : manifest.at("sheets")) {
        CHECK(sheet.at("file") == "packet.pdf");
        CHECK(holds(text.out, sheet.at("code").get<std::string>()));
        // Each sheet begins on a front side, behind the leaf of the print slip.
        pages += pages % 2 + sheet.at("pages").get<std::size_t>();
    }
    const Ran info = folder.run("pdfinfo papers/packet.pdf");
    CHECK(holds(info.out, fmt::format("Pages:           {}\n", pages)));
}

TEST_CASE("paper and size of print are as asked for") {
    struct Row {
        const char* more;
        const char* size;
    };
    // US Letter by ANSI Y14.1 (8.5 by 11 inches), A4 by ISO 216 (210 by 297 mm), in points.
    const Row rows[] = {
        {"", "612 x 792 pts (letter)"},
        {"--paper letter", "612 x 792 pts (letter)"},
        {"--paper a4", "595.28 x 841.89 pts (A4)"},
        {"--paper a4 --large-print", "595.28 x 841.89 pts (A4)"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.more});
        const Scratch folder;
        const Ran ran = ventfolio_in(folder, print_words("adult-tracheostomy", fmt::format("-o papers {}", row.more)));
        REQUIRE_MESSAGE(ran.status == 0, ran.err);
        const Ran info = folder.run("pdfinfo papers/packet.pdf");
        CHECK_MESSAGE(holds(info.out, row.size), info.out);
    }
    const Scratch folder;
    REQUIRE(ventfolio_in(folder, print_words("adult-mask", "-o papers --dump-layout --sheet bedside-card")).status ==
            0);
    REQUIRE(ventfolio_in(folder, print_words("adult-mask", "-o large --large-print --dump-layout --sheet bedside-card"))
                .status == 0);
    const std::string normal = contents(folder.path("papers") / "bedside-card.layout.txt");
    const std::string large = contents(folder.path("large") / "bedside-card.layout.txt");
    CHECK(holds(normal, " 12 "));
    CHECK(holds(large, " 18 "));
    CHECK(!holds(large, " 12 \""));
}

TEST_CASE("several profiles go into a folder for each record number, and one that is refused stops only itself") {
    const Scratch folder;
    save_home(folder, "high_pressure: 31 cmH2O", "high_pressure: 19 cmH2O");
    const Ran ran = ventfolio_in(folder, fmt::format("print '{}' home.yaml '{}' --on 2026-02-03 -o homes",
                                                     profile_path("child-tracheostomy"), profile_path("adult-mask")));
    CHECK(ran.status == 1);
    CHECK(holds(ran.out, "home.yaml: refused: stopped by high-pressure-alarm-below-peak\n"));
    CHECK(holds(ran.err, "home.yaml:"));
    CHECK(holds(ran.err, "[high-pressure-alarm-below-peak]"));
    CHECK(names_in(folder.path("homes")) == "DEMO-2 DEMO-3");
    for (const char* record : {"DEMO-2", "DEMO-3"}) {
        CHECK(names_in(folder.path("homes") / record) == "SHA256SUMS packet.json packet.pdf profile.yaml");
        CHECK(mode_of(folder.path("homes") / record) == 0700);
    }
    const Ran missing = ventfolio_in(
        folder, fmt::format("print '{}' nowhere.yaml --on 2026-02-03 -o more", profile_path("child-tracheostomy")));
    CHECK(missing.status == 3);
    CHECK(names_in(folder.path("more")) == "DEMO-2");
}

TEST_CASE("a file that cannot be used is status 3 and says why") {
    const Scratch folder;
    fs::create_directory(folder.path("folder.yaml"));
    folder.save("broken.yaml", "record_number: [");
    folder.save("empty.yaml", "");
    folder.save("large.yaml", std::string(1024 * 1024 + 1, '#'));
    CHECK(ventfolio_in(folder, "print nowhere.yaml --on 2026-02-03 -o papers").status == 3);
    CHECK(ventfolio_in(folder, "print folder.yaml --on 2026-02-03 -o papers").status == 3);
    CHECK(ventfolio_in(folder, "print folder.yaml --on 2026-02-03 -o papers").out ==
          "folder.yaml: unusable: holds no profile (*.yaml)\n1 home: 0 printed, 0 current, 0 refused, 1 unusable\n");
    CHECK(ventfolio_in(folder, "print broken.yaml --on 2026-02-03 -o papers").status == 1);
    CHECK(ventfolio_in(folder, "print empty.yaml --on 2026-02-03 -o papers").status == 1);
    CHECK(ventfolio_in(folder, "print large.yaml --on 2026-02-03 -o papers").status == 1);
    CHECK(ventfolio_in(folder, print_words("adult-mask", "-o /proc/papers")).status == 3);
    CHECK(!fs::exists(folder.path("papers")));
}

TEST_CASE("a command line that is wrong is status 2, says what is wrong and writes nothing") {
    struct Row {
        const char* words;
        const char* told;
    };
    const std::string home = profile_path("adult-mask");
    const Row rows[] = {
        {"", "ubcommand"},
        {"prnt", "did you mean \"print\""},
        {"print", "profile"},
        {"print HOME", "--output"},
        {"print HOME -o papers --sheet bedside-crad", "did you mean \"bedside-card\""},
        {"print HOME -o papers --sheet nonsense", "the sheets are"},
        {"print HOME -o papers --paper a5", "a5"},
        {"print HOME -o papers --shard 3/2", "3/2"},
        {"print HOME -o papers --jobs 0", "--jobs"},
        {"print HOME -o papers --summary xml", "xml"},
        {"print HOME -o papers --on 2026-02-30", "2026-02-30"},
        {"print HOME -o papers --on yesterday", "yesterday"},
        {"print HOME -o papers --larg-print", "--larg-print"},
        {"check", "profile"},
        {"check HOME --format xml", "xml"},
        {"list", "what"},
        {"list everything", "everything"},
        {"explain", "name"},
        {"explain pulse-oxigen-on-ventilator", "did you mean \"pulse-oxygen-on-ventilator\""},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        const Scratch folder;
        const Ran ran = ventfolio_in(folder, with_replaced(row.words, "HOME", "'" + home + "'"));
        CHECK(ran.status == 2);
        CHECK(ran.out == "");
        CHECK_MESSAGE(holds(ran.err, row.told), ran.err);
        CHECK(!fs::exists(folder.path("papers")));
    }
}

TEST_CASE("--quiet says nothing where all is well") {
    const Scratch folder;
    const Ran ran = ventfolio_in(folder, print_words("child-tracheostomy", "-o papers --quiet"));
    CHECK(ran.status == 0);
    CHECK(ran.out == "");
    CHECK(!holds(ran.err, "why:"));
    const Ran loud = ventfolio_in(folder, print_words("child-tracheostomy", "-o loud"));
    CHECK(holds(loud.out, "DEMO-2"));
    CHECK(!holds(loud.out, "Abara-Lindqvist"));
}
