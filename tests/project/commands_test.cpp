#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "project/documents.hpp"
#include "project/files.hpp"
#include "project/shell.hpp"

/// Every command of README.md and DEVELOPERS.md is run by a test, or stands below with what stands for it.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kProject{VENTFOLIO_SOURCE_DIR};

/// A command that is run here, in a folder with `profiles`, `homes`, `home.yaml` and its `papers`.
struct Run {
    const char* written;  ///< as it stands in the document
    int status = 0;
    const char* instead = "";  ///< where the document has a word in capitals for something, or a name alone
};

constexpr Run kRun[] = {
    {"ventfolio --help"},
    {"ventfolio print --help"},
    {"ventfolio explain NAME", 0, "ventfolio explain pulse-oxygen-on-ventilator"},
    {"ventfolio list rules"},
    {"ventfolio calc", 0, "ventfolio calc --help"},
    {"build/release/ventfolio calc NAME --help", 0, "ventfolio calc suction-depth --help"},
    {"ventfolio templates export clinic"},
    {"ventfolio templates check clinic"},
    {"build/release/ventfolio templates check templates", 0, "ventfolio templates check templates"},
    {"ventfolio print home.yaml -o papers --templates clinic"},
    {"ventfolio templates check clinic --lang en+es"},
    {"ventfolio templates check clinic --large-print --paper a4"},
    {"ventfolio print homes moved.yaml -o caseload --resume", 3},
    {"ventfolio outage profiles/adult-tracheostomy.yaml profiles/adult-mask.yaml --on 2026-02-03 --hours 8 --paper -o "
     "calls.pdf"},
    {"ventfolio due profiles/adult-tracheostomy.yaml --on 2026-02-03 --within 90 --format ics -o due.ics"},
    {"sha256sum --check SHA256SUMS", 0, "cd papers && sha256sum --check SHA256SUMS"},
    // One part of a caseload each, as a cluster would start it.
    {R"(ventfolio print homes --on 2026-02-03 -o papers --shard "$SLURM_ARRAY_TASK_ID/16" --resume --summary json)", 0,
     R"(export SLURM_ARRAY_TASK_ID=3; ventfolio print homes --on 2026-02-03 -o papers --shard "$SLURM_ARRAY_TASK_ID/16" )"
     "--resume --summary json"},
    {R"(sh -c 'ventfolio print homes --on 2026-02-03 -o papers --shard "$((JOB_COMPLETION_INDEX + 1))/16" --resume --summary json')",
     0,
     R"(export JOB_COMPLETION_INDEX=0; sh -c 'ventfolio print homes --on 2026-02-03 -o papers --shard )"
     R"("$((JOB_COMPLETION_INDEX + 1))/16" --resume --summary json')"},
};

/// A command that is not run here, and what stands for it: words in a file of the project.
struct StandIn {
    const char* written;
    const char* why;
    const char* file;
    const char* words;
};

constexpr const char* kServer = ".ci/run";
constexpr const char* kBuilds = "it builds what this test is part of";

constexpr StandIn kStandIns[] = {
    {R"sh(SUDO=$(test "$(id -u)" = 0 || echo sudo))sh", kBuilds, kServer, "second command of README.md"},
    {"$SUDO apt-get update", "it changes the machine", kServer, "second command of README.md"},
    {"$SUDO env DEBIAN_FRONTEND=noninteractive apt-get install …", "it changes the machine", kServer,
     "second command of README.md"},
    {"cmake --preset release -DBUILD_TESTING=OFF", kBuilds, "tests/project/documents_test.cpp",
     "the two commands of the README stop at the first step"},
    {"cmake --preset release -DBUILD_TESTING=ON", kBuilds, kServer, "second command of README.md"},
    {"cmake --build --preset release", kBuilds, kServer, "second command of README.md"},
    {"cmake --preset release", kBuilds, kServer, "second command of README.md"},
    {"ctest --preset release", "it runs this test", kServer, "second command of README.md"},
    {"build/release/ventfolio print profiles/adult-tracheostomy.yaml --on 2026-02-03 -o papers", "the walk prints it",
     "tests/project/walk_test.cpp", R"({"ventfolio print", 0})"},
    {"cmake --install build/release --prefix DIR", "it has a test of its own", "tests/project/install_test.cpp",
     "cmake --install"},
    {"man ventfolio", "manual pages are read with groff", "tests/project/help_test.cpp",
     R"(manual_page("ventfolio.1"))"},
    {"man ventfolio-profile", "as above", "tests/project/help_test.cpp", "ventfolio-profile.5"},
    {"man ventfolio-rules", "as above", "tests/project/help_test.cpp", "ventfolio-rules.7"},
    {"cd build/release", "packages have a test of their own", "tests/packages/archive_test.cpp", "the archive holds"},
    {"cpack", "as above", "tests/packages/archive_test.cpp", "cpack"},
    {"apt-get install ./ventfolio_*.deb", "it needs a new system: at night", "tests/packages/new_systems", "apt-get"},
    {"tar -xzf ventfolio-*-linux-*.tar.gz", "as above", "tests/packages/archive_test.cpp", "tar"},
    {"parallel build/release/ventfolio print homes …", "it has a test of its own", "tests/project/recipes_test.cpp",
     R"(starts_with("parallel "))"},
    {"sbatch --array=1-16", "no test has a cluster; what each part runs is run here", "tests/project/commands_test.cpp",
     "export SLURM_ARRAY_TASK_ID=3"},
    {"cmake --preset asan", "a second build", "CMakePresets.json", R"("name": "asan")"},
    {"cmake --build --preset asan", "a second build", "CMakePresets.json", R"("name": "asan")"},
    {"ctest --preset asan", "a second build", "CMakePresets.json", R"("name": "asan")"},
    {"cmake --preset fuzz", "a build with clang", "CMakePresets.json", R"("name": "fuzz")"},
    {"cmake --build --preset fuzz", "a build with clang", "CMakePresets.json", R"("name": "fuzz")"},
    {"ctest --preset fuzz", "a minute of fuzzing", "tests/fuzz/run", "VENTFOLIO_FUZZ_SECONDS"},
    {"VENTFOLIO_FUZZ_SECONDS=3600 ctest --preset fuzz -R profile", "hours of fuzzing", "tests/fuzz/run",
     "VENTFOLIO_FUZZ_SECONDS"},
    {"VENTFOLIO_TEST_ALL=1 build/release/tests/packet/test_bad_values", "many minutes", "tests/every_one.hpp",
     "VENTFOLIO_TEST_ALL"},
    {"build/release/tests/rules/test_rules -tc='*oxygen*'", "the tests of that room run whole",
     "tests/rules/CMakeLists.txt", "ventfolio_test(rules"},
    {"cmake --build --preset release --target tidy", "five minutes", kServer, "clang-tidy"},
    {"cmake --build --preset release --target samples", "it writes into the source", "tests/project/samples_test.cpp",
     "samples"},
    {"find src tests -name '*.[ch]pp' | xargs clang-format -i", "it writes into the source", kServer,
     "xargs -0 clang-format --dry-run"},
    {".ci/run", "it runs this test", "tests/project/documents_test.cpp", "the script of the server is a program"},
    {"tests/mutation/run.py", "half an hour: at night", "tests/mutation/CMakeLists.txt", "run.py"},
    {"tests/mutation/run.py --sample 500 --seed 1", "minutes: all of it at night", "tests/mutation/run.py", "--sample"},
    {"tests/mutation/run.py --survivors", "as above", "tests/mutation/run.py", "--survivors"},
    {"tests/mutation/run.py --only src/calc/age.cpp", "as above", "tests/mutation/run.py", "--only"},
    {"cmake --build --preset release --target bench make_homes", kBuilds, "tests/bench/CMakeLists.txt",
     "add_executable(bench"},
    {"build/release/tests/bench/bench build/release/ventfolio 100", "two minutes, and nothing to pass or fail",
     "tests/bench/CMakeLists.txt", "add_executable(bench"},
    {"build/release/tests/bench/make_homes 1000 7 homes", "a thousand homes", "tests/bench/homes_test.cpp",
     "TEST_CASE"},
    {"test_rules --mutant 17", "it needs that build", "tests/mutation/main.cpp", "--mutant"},
    {"make_homes 10000 2026 homes", "ten thousand homes", "tests/bench/homes_test.cpp", "TEST_CASE"},
};

/// Tests that are chosen by name or label: at least one must be there.
constexpr const char* kChosenTests[] = {"ctest --preset release -R rules", "ctest --preset release -R '^language$'",
                                        "ctest --preset release -R 'bad_values|records|project'",
                                        "ctest --preset release -R 'paper|packages'", "ctest --preset nightly"};

/// What is set off as code and is no command.
bool is_no_command(const std::string& line) {
    static const std::regex drawing{"[^$]*─►.*|(numbers|with|units|fields) .*"};
    static const std::regex letterhead{
        R"(## \{\.letterhead\}|!\[.*\]\(logo\.png\)|\*\*.*\*\* \{\.large\}|12 Willow Street.*)"};
    return std::regex_match(line, drawing) || std::regex_match(line, letterhead);
}

/// Whether code in running text is a command, and not a name: it begins with a program and has a word behind that.
bool is_command(const std::string& code) {
    static const std::regex command{
        R"((ventfolio|cmake|ctest|cpack|apt|apt-get|tar|find|parallel|sh|bash|man|sha256sum|sbatch|make_homes|bench|test_[a-z_]+|tests/\S+|python3|git|sudo|export|\S*build/\S+|[A-Z_]+=\S+) [^=].*|\.ci/run)"};
    return std::regex_match(code, command) && code.find("--target") == std::string::npos;
}

/// Every command of both documents but those of the ten-minute walk, which walk_test.cpp runs block by block.
std::set<std::string> commands_of_the_documents() {
    std::set<std::string> commands;
    for (const char* file : {"README.md", "DEVELOPERS.md"}) {
        CAPTURE(std::string{file});
        const std::string text = contents(kProject / file);
        const std::string walk = section(text, "## A ten-minute walk");
        CHECK(walk.empty() == (std::string_view{file} != "README.md"));
        for (const Fence& fence : fences(text)) {
            CAPTURE(fence.text);
            CHECK((fence.language == "sh" || fence.language == "text"));
            if (fence.language != "sh") continue;
            const bool of_walk = std::ranges::count(fenced_blocks(walk, "sh"), fence.text) > 0;
            for (std::string& command : shell_commands(fence.text))
                if (!of_walk) commands.insert(std::move(command));
        }
        // The list of commands is compared with the program by help_test.cpp.
        const std::vector<std::string> synopsis = indented_code(section(text, "## Commands"));
        for (const std::string& line : indented_code(text)) {
            if (is_no_command(line) || std::ranges::count(synopsis, line) > 0) continue;
            for (std::string& command : shell_commands(line)) commands.insert(std::move(command));
        }
        for (std::string& code : inline_code(text))
            if (is_command(code)) commands.insert(std::move(code));
    }
    return commands;
}

/// "apt-get install …" stands for whatever follows.
bool stands_for(const std::string& written, const std::string& command) {
    const std::size_t rest = written.find("…");
    return rest == std::string::npos ? written == command : command.starts_with(written.substr(0, rest));
}

TEST_CASE("every command of the documents is run by a test, or it is known what stands for it") {
    std::vector<std::string> known;
    for (const Run& run : kRun) known.emplace_back(run.written);
    for (const StandIn& stand_in : kStandIns) known.emplace_back(stand_in.written);
    for (const char* tests : kChosenTests) known.emplace_back(tests);
    const std::set<std::string> written = commands_of_the_documents();
    CHECK(written.size() > 40);
    for (const std::string& command : written) {
        INFO("a new command: run it in kRun, or say in kStandIns what stands for it");
        CAPTURE(command);
        CHECK(std::ranges::count_if(known, [&](const std::string& one) { return stands_for(one, command); }) == 1);
    }
    for (const std::string& one : known) {
        INFO("it is in no document any more");
        CAPTURE(one);
        CHECK(std::ranges::any_of(written, [&](const std::string& command) { return stands_for(one, command); }));
    }
}

TEST_CASE("what stands for a command is there") {
    for (const StandIn& stand_in : kStandIns) {
        CAPTURE(std::string{stand_in.written});
        CAPTURE(std::string{stand_in.words});
        CHECK(contents(kProject / stand_in.file).find(stand_in.words) != std::string::npos);
    }
}

TEST_CASE("presets, targets and programs of the build that the documents name are those of the build") {
    const std::string presets = contents(kProject / "CMakePresets.json");
    const std::string rules = contents(fs::path{VENTFOLIO_BINARY_DIR} / "build.ninja");
    const auto all = [](const std::string& in, const char* pattern) {
        std::vector<std::string> found;
        const std::regex regex{pattern};
        for (std::sregex_iterator at{in.begin(), in.end(), regex}; at != std::sregex_iterator{}; ++at)
            found.push_back((*at)[1].str());
        return found;
    };
    std::size_t seen = 0;
    for (const std::string& command : commands_of_the_documents()) {
        CAPTURE(command);
        for (const std::string& preset : all(command, "--preset (\\S+)")) {
            CHECK(presets.find("\"name\": \"" + preset + "\"") != std::string::npos);
            ++seen;
        }
        for (const std::string& targets : all(command, "--target (.+)"))
            for (const std::string& target : all(targets, "(\\S+)")) {
                CHECK(rules.find("\nbuild " + target + ": phony ") != std::string::npos);
                ++seen;
            }
        for (const std::string& program : all(command, "build/release/(\\S+)")) {
            CHECK(std::regex_search(rules, std::regex{"\nbuild " + program + "[: ]"}));
            ++seen;
        }
    }
    CHECK(seen > 20);
}

TEST_CASE("tests that the documents choose by name or label are there") {
    for (const std::string command : kChosenTests) {
        CAPTURE(command);
        const Ran ran = run_in(kProject, command + " -N --test-dir " + quoted(VENTFOLIO_BINARY_DIR));
        CHECK(ran.status == 0);
        CHECK(std::regex_search(ran.out, std::regex{"Total Tests: [1-9]"}));
    }
}

TEST_CASE("the commands of the documents do what they are for") {
    const Scratch scratch;
    const auto run = [&](const std::string& command) {
        return run_as_installed(VENTFOLIO_PROGRAM, scratch.folder(), command);
    };
    fs::create_directory_symlink(kProject / "profiles", scratch.path("profiles"));
    fs::create_directory_symlink(kProject / "templates", scratch.path("templates"));
    fs::create_directory(scratch.path("homes"));
    const auto home = [](std::string_view name) {
        return contents(kProject / "profiles" / (std::string{name} + ".yaml"));
    };
    // The caseload that the README quotes: one new home, one that is printed already, one with a slip, one that is
    // gone.
    save(scratch.path("homes/b.yaml"), home("adult-mask"));
    REQUIRE(run("ventfolio print homes -o caseload").status == 0);
    save(scratch.path("home.yaml"), home("adult-tracheostomy"));
    save(scratch.path("homes/a.yaml"), home("adult-tracheostomy"));
    save(scratch.path("homes/c.yaml"),
         std::regex_replace(home("child-tracheostomy"), std::regex{"high_pressure: [0-9]+"}, "high_pressure: 20"));
    REQUIRE(run("ventfolio print home.yaml -o papers").status == 0);

    const std::vector<std::string> shown =
        fenced_blocks(section(contents(kProject / "README.md"), "### Many homes"), "text");
    REQUIRE(shown.size() == 1);
    for (const Run& one : kRun) {
        CAPTURE(std::string{one.written});
        // Parts of a caseload go into a folder that holds nothing else, without the home that cannot be printed.
        const bool part = std::string_view{one.written}.find("--shard") != std::string_view::npos;
        if (part) {
            fs::remove_all(scratch.path("papers"));
            fs::remove(scratch.path("homes/c.yaml"));
        }
        const Ran ran = run(*one.instead != '\0' ? one.instead : one.written);
        CHECK_MESSAGE(ran.status == one.status, ran.err);
        if (std::string_view{one.written}.find("--resume") != std::string_view::npos && !part)
            CHECK(ran.out == shown[0]);
        if (part) CHECK(ran.out.find("\"homes\"") != std::string::npos);
    }
    CHECK(contents(scratch.path("calls.pdf")).starts_with("%PDF-"));
    CHECK(contents(scratch.path("due.ics")).starts_with("BEGIN:VCALENDAR\r\n"));
}

}  // namespace
}  // namespace ventfolio::project
