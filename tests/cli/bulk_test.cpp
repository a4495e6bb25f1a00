#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;
using Json = nlohmann::json;

namespace {

constexpr const char* kHomes[] = {"adult-tracheostomy", "child-tracheostomy", "adult-mask"};

std::string with_number(std::string_view home, std::string_view number) {
    std::string text = contents(profile_path(home));
    const std::size_t begin = text.find("\nrecord_number: ") + 1;
    return text.replace(begin, text.find('\n', begin) - begin, fmt::format("record_number: {}", number));
}

/// Three demo homes, each with its record number, in the folder homes/.
void save_homes(const Scratch& folder) {
    fs::create_directory(folder.path("homes"));
    for (const char* home : kHomes) folder.save(fmt::format("homes/{}.yaml", home), contents(profile_path(home)));
}

void change(const Scratch& folder, const char* file, std::string_view from, std::string_view to) {
    const std::string text = contents(folder.path(file));
    REQUIRE(holds(text, from));
    folder.save(file, with_replaced(text, from, to));
}

/// What a JSON summary says of each home, in its order: "printed refused".
std::string outcomes(const Ran& ran) {
    std::vector<std::string> words;
    const Json summary = Json::parse(ran.out);
    for (const Json& home : summary.at("homes")) words.push_back(home.at("outcome"));
    return joined(words, " ");
}

Ran print_all(const Scratch& folder, std::string_view more, std::string_view day = "2026-02-03") {
    return ventfolio_in(folder, fmt::format("print homes --on {} -o papers --quiet --summary json {}", day, more));
}

}  // namespace

TEST_CASE("with one job and with eight the same is said and the same bytes are written") {
    const Scratch folder;
    save_homes(folder);
    folder.save("homes/dull.yaml", with_replaced(with_number("adult-tracheostomy", "DEMO-20"),
                                                 "high_pressure: 31 cmH2O", "high_pressure: 19 cmH2O"));
    folder.save("homes/broken.yaml", "record_number: [");
    folder.save("homes/more.yaml", with_number("toddler-dual-limb", "DEMO-21"));
    std::string said;
    for (const char* jobs : {"1", "8"}) {
        const Ran ran = ventfolio_in(
            folder, fmt::format("print missing.yaml homes --on 2026-02-03 -o papers --dump-layout --jobs {}", jobs));
        CHECK(ran.status == 3);
        CHECK(names_in(folder.path("papers")) == "DEMO-1 DEMO-2 DEMO-21 DEMO-3");
        if (said.empty()) said = ran.out + ran.err;
        CHECK(ran.out + ran.err == said);
        fs::rename(folder.path("papers"), folder.path(jobs));
    }
    const Ran compared = folder.run("diff --recursive 1 8");
    CHECK_MESSAGE(compared.status == 0, compared.out);
    CHECK(holds(said,
                "missing.yaml: unusable: cannot be read: No such file or directory\n"
                "homes/adult-mask.yaml: printed: DEMO-3, "));
    CHECK(holds(said, "\nhomes/broken.yaml: refused: stopped by "));
    CHECK(holds(said, "\nhomes/dull.yaml: refused: stopped by high-pressure-alarm-below-peak\nhomes/more.yaml: "));
    CHECK(holds(said, "\n7 homes: 4 printed, 0 current, 2 refused, 1 unusable\n"));
    // Of each that is printed, what findings say stands on its checking record; here only of those that are stopped.
    CHECK(holds(said, "homes/dull.yaml:"));
    CHECK(!holds(said, "homes/more.yaml:1"));
}

TEST_CASE("two profiles with one record number are both refused, in whatever part, and nothing of them is written") {
    const Scratch folder;
    folder.save("one.yaml", contents(profile_path("adult-mask")));
    folder.save("two.yaml", with_number("adult-tracheostomy", "DEMO-3"));
    folder.save("three.yaml", contents(profile_path("child-tracheostomy")));
    const Ran ran = ventfolio_in(folder, "print one.yaml three.yaml two.yaml --on 2026-02-03 -o papers");
    CHECK(ran.status == 1);
    CHECK(holds(ran.out, "one.yaml: refused: record number DEMO-3 is also that of two.yaml\n"));
    CHECK(holds(ran.out, "two.yaml: refused: record number DEMO-3 is also that of one.yaml\n"));
    CHECK(names_in(folder.path("papers")) == "DEMO-2");
    std::string parts;
    for (int part = 1; part <= 3; ++part) {
        const std::string words = fmt::format("print one.yaml two.yaml --on 2026-02-03 -o parts --shard {}/3", part);
        parts += ventfolio_in(folder, words).out;
    }
    CHECK(holds(parts, "one.yaml: refused: record number DEMO-3 is also that of two.yaml\n"));
    CHECK(holds(parts, "two.yaml: refused: record number DEMO-3 is also that of one.yaml\n"));
    CHECK(names_in(folder.path("parts")) == "");
}

TEST_CASE("a home that cannot be written does not stop the rest, and is named with the reason") {
    const Scratch folder;
    save_homes(folder);
    fs::create_directories(folder.path("papers/DEMO-1"));
    folder.save("papers/DEMO-1/letter.txt", "Dear Priya");  // somebody else's folder
    const Ran ran = print_all(folder, "");
    CHECK(ran.status == 3);
    CHECK(outcomes(ran) == "printed unusable printed");
    const std::string reason = Json::parse(ran.out).at("homes")[1].at("reason");
    CHECK_MESSAGE(reason.starts_with("papers/DEMO-1: "), reason);
    CHECK(names_in(folder.path("papers/DEMO-1")) == "letter.txt");
    CHECK(names_in(folder.path("papers")) == "DEMO-1 DEMO-2 DEMO-3");
    // Files may grow to 64 blocks of 512 bytes (POSIX, ulimit -f): every packet is larger.
    fs::remove_all(folder.path("papers"));
    const Ran full = folder.run(fmt::format(
        "ulimit -f 64; '{}' print homes --on 2026-02-03 -o papers --quiet --summary json", VENTFOLIO_PROGRAM));
    CHECK(full.status == 3);
    CHECK(outcomes(full) == "unusable unusable unusable");
    CHECK(holds(full.out, "packet.pdf: File too large"));
    CHECK(!fs::exists(folder.path("papers")));
    // The folder itself cannot be made.
    folder.save("file", "");
    const Ran nowhere = ventfolio_in(folder, "print homes --on 2026-02-03 -o file");
    CHECK(nowhere.status == 3);
    CHECK(holds(nowhere.err, "file: is not a folder"));
}

TEST_CASE("a disk that fills up in the middle of a caseload leaves the homes before it whole, and names the rest") {
    const Scratch folder;
    save_homes(folder);
    fs::create_directory(folder.path("small"));
    if (folder.run("unshare --mount sh -c 'mount -t tmpfs -o size=1m small small'").status != 0) {
        WARN_MESSAGE(false, "no file system can be mounted here, so only the limit on files was tried");
        return;
    }
    // A packet holds about 1.1 MB: one fits, and a second does not.
    const Ran ran = folder.run(fmt::format(
        "unshare --mount sh -c 'mount -t tmpfs -o size=2m small small && {{ \"{}\" print homes --on 2026-02-03 -o "
        "small/papers --jobs 1 --quiet --summary json > summary; echo status $?; cat summary >&2; cd small/papers && "
        "for "
        "home in *; do echo $home; (cd $home && sha256sum --check --strict --quiet SHA256SUMS) && echo whole; done; "
        "}}'",
        VENTFOLIO_PROGRAM));
    const std::size_t summary = ran.err.find('{');
    REQUIRE_MESSAGE(summary != std::string::npos, ran.err);
    const Json told = Json::parse(ran.err.substr(summary));
    std::set<std::string> printed;
    for (const Json& home : told.at("homes")) {
        if (home.at("outcome") == "printed") {
            printed.insert(home.at("record_number"));
            continue;
        }
        CHECK(home.at("outcome") == "unusable");
        CHECK(holds(home.at("reason").get<std::string>(), "No space left on device"));
    }
    CHECK(told.at("homes").size() == 3);
    CHECK(!printed.empty());
    CHECK(printed.size() < 3);
    std::string whole = "status 3\n";
    for (const std::string& record_number : printed) whole += record_number + "\nwhole\n";
    CHECK(ran.out == whole);
}

TEST_CASE("--resume leaves a packet alone if and only if it is what would be printed") {
    const Scratch folder;
    save_homes(folder);
    REQUIRE(outcomes(print_all(folder, "")) == "printed printed printed");
    const std::string before = state_of(folder.path("papers"));
    CHECK(outcomes(print_all(folder, "--resume")) == "current current current");
    CHECK(state_of(folder.path("papers")) == before);
    // A day on which nothing that stands on paper is otherwise.
    CHECK(outcomes(print_all(folder, "--resume", "2026-02-04")) == "current current current");
    CHECK(state_of(folder.path("papers")) == before);

    // One number of one home.
    change(folder, "homes/adult-mask.yaml", "high_rate: 35 breaths/min", "high_rate: 36 breaths/min");
    const std::string untouched = state_of(folder.path("papers/DEMO-1"));
    CHECK(outcomes(print_all(folder, "--resume")) == "printed current current");
    // More copies of a sheet: no sheet says anything else, but the slip that leads the packet does.
    change(folder, "homes/child-tracheostomy.yaml", "number: 1 piece}", "number: 2 pieces}");
    CHECK(outcomes(print_all(folder, "--resume")) == "current current printed");

    // A file is lost, or is not what it was.
    fs::remove(folder.path("papers/DEMO-3/packet.pdf"));
    folder.save("papers/DEMO-2/packet.pdf", contents(folder.path("papers/DEMO-2/packet.pdf")) + " ");
    CHECK(outcomes(print_all(folder, "--resume")) == "printed current printed");
    CHECK(state_of(folder.path("papers/DEMO-1")) == untouched);
    for (const char* home : {"DEMO-1", "DEMO-2", "DEMO-3"})
        CHECK(folder.run(fmt::format("cd papers/{} && sha256sum --check --strict SHA256SUMS", home)).status == 0);
    CHECK(outcomes(print_all(folder, "--resume")) == "current current current");

    // Printed otherwise; and without the word everything is printed.
    const auto print_one = [&](const char* more) {
        return outcomes(ventfolio_in(folder, fmt::format("print homes/adult-mask.yaml --on 2026-02-03 -o papers/DEMO-3 "
                                                         "--summary json {}",
                                                         more)));
    };
    CHECK(print_one("--resume") == "current");
    CHECK(print_one("--resume --paper a4") == "printed");
    CHECK(print_one("--resume --paper a4") == "current");
    CHECK(print_one("--resume --paper a4 --dump-layout") == "printed");
    CHECK(print_one("--paper a4 --dump-layout") == "printed");
}

TEST_CASE("a birthday makes a packet old, and so it is with the packet of a single profile") {
    const Scratch folder;
    folder.save("home.yaml", contents(profile_path("adult-tracheostomy")));  // born 1978-02-11
    const auto printed = [&](const char* day) {
        const Ran ran = ventfolio_in(folder, fmt::format("print home.yaml --on {} -o papers --resume", day));
        CHECK_MESSAGE(ran.status == 0, ran.err);
        return holds(ran.out, " sheets, ");
    };
    CHECK(printed("2026-02-09"));
    CHECK(!printed("2026-02-10"));
    CHECK(printed("2026-02-11"));
    CHECK(!printed("2026-02-11"));
    // The summary says the same of one file that is printed into the folder itself.
    const Ran told = ventfolio_in(folder, "print home.yaml --on 2026-02-11 -o papers --resume --summary json");
    CHECK(outcomes(told) == "current");
    CHECK(Json::parse(told.out).at("homes")[0].at("folder") == "papers");
}

TEST_CASE("homes come from folders and lists, and the parts of a caseload are all of it") {
    const Scratch folder;
    save_homes(folder);
    const std::string listed =
        "find homes -name '*.yaml' {} | sort{} | '{}' print - --on 2026-02-03 -o papers "
        "--sheet bedside-card --quiet --summary json";
    for (const auto& [how, sorted] : {std::pair{"", ""}, std::pair{"-print0", " -z"}}) {
        const Ran ran = folder.run(fmt::format(fmt::runtime(listed), how, sorted, VENTFOLIO_PROGRAM));
        CHECK_MESSAGE(outcomes(ran) == "printed printed printed", ran.err);
    }
    std::multiset<std::string> files;
    for (int part = 1; part <= 3; ++part) {
        const Ran ran = print_all(folder, fmt::format("--sheet bedside-card --shard {}/3", part));
        const Json summary = Json::parse(ran.out);
        CHECK(summary.at("shard") == fmt::format("{}/3", part));
        for (const Json& home : summary.at("homes")) files.insert(home.at("file").get<std::string>());
    }
    CHECK(files == std::multiset<std::string>{"homes/adult-mask.yaml", "homes/adult-tracheostomy.yaml",
                                              "homes/child-tracheostomy.yaml"});
    // The papers may lie below the profiles: a packet's copy of its profile is not another home.
    CHECK(ventfolio_in(folder, "print homes --on 2026-02-03 -o homes/papers --sheet bedside-card").status == 0);
    CHECK(ventfolio_in(folder, "print homes --on 2026-02-03 -o homes/papers --sheet bedside-card").status == 0);
}

TEST_CASE("the summary keeps to its schema and says nothing about a person") {
    const Scratch folder;
    save_homes(folder);
    change(folder, "homes/adult-mask.yaml", "high_pressure: 30 cmH2O", "high_pressure: 3 cmH2O");
    folder.save("homes/=1+1.yaml", "");
    const Ran json =
        ventfolio_in(folder, "print homes missing.yaml --on 2026-02-03 -o papers --sheet bedside-card --summary json");
    CHECK(json.status == 3);
    const Ran validation = validated_by(folder, "print", json.out);
    CHECK_MESSAGE(validation.status == 0, validation.out << validation.err);
    const Ran csv = ventfolio_in(
        folder, "print homes missing.yaml --on 2026-02-03 -o papers --sheet bedside-card --summary csv --resume");
    folder.save("summary.csv", csv.out);
    folder.save("read.py",
                "import csv\n"
                "for row in csv.DictReader(open('summary.csv', newline='')): print(row['file'], row['outcome'])\n");
    CHECK(folder.run("/usr/bin/python3 read.py").out ==
          "homes/=1+1.yaml refused\nhomes/adult-mask.yaml refused\nhomes/adult-tracheostomy.yaml current\n"
          "homes/child-tracheostomy.yaml current\nmissing.yaml unusable\n");
    for (const char* personal : {"Toby", "Ferncastle", "Dell", "Okonjo", "1978", "1996", "555-01"}) {
        CHECK(!holds(json.out, personal));
        CHECK(!holds(csv.out, personal));
    }
    // It is a real schema: it refuses a summary that is not one.
    const Json good = Json::parse(json.out);
    struct Row {
        const char* pointer;
        Json value;
    };
    const Row rows[] = {{"/status", 2},
                        {"/shard", "0/2"},
                        {"/on", "today"},
                        {"/more", 1},
                        {"/homes/0/outcome", "printed"},  // then it has a folder
                        {"/homes/2/record_number", "demo"},
                        {"/homes/2/pages", 0},
                        {"/homes/2/name", "Toby"},
                        {"/counts/printed", -1}};
    for (const Row& row : rows) {
        Json bad = good;
        bad[Json::json_pointer{row.pointer}] = row.value;
        CHECK_MESSAGE(validated_by(folder, "print", bad.dump()).status == 1, row.pointer);
    }
}

TEST_CASE("how far it is stands on a terminal only, and not with --quiet") {
    const Scratch folder;
    save_homes(folder);
    const std::string print = "print homes --on 2026-02-03 -o papers --sheet bedside-card";
    const Ran plain = ventfolio_in(folder, print);
    CHECK(plain.err == "");
    // script of util-linux runs it on a terminal of its own.
    const auto on_terminal = [&](const char* more) {
        return folder.run(fmt::format("script --quiet --return --command \"'{}' {} {}\" /dev/null < /dev/null",
                                      VENTFOLIO_PROGRAM, print, more));
    };
    const Ran shown = on_terminal("");
    CHECK(shown.status == 0);
    CHECK(holds(shown.out, "3 of 3 homes, 0 not printed, "));
    CHECK(holds(shown.out, " a second"));
    CHECK(shown.out.ends_with("3 homes: 3 printed, 0 current, 0 refused, 0 unusable\r\n"));
    CHECK(!holds(on_terminal("--quiet").out, " of 3"));
}
