#include <doctest/doctest.h>

#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "project/files.hpp"
#include "project/shell.hpp"

/// What the program says of itself and what README.md says of it are the same.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kProject{VENTFOLIO_SOURCE_DIR};

std::string help(const std::string& command) {
    const Ran ran = run_in(kProject, quoted(VENTFOLIO_PROGRAM) + " " + command + " --help");
    CHECK(ran.status == 0);
    return ran.out;
}

/// What stands first on the indented lines below a heading of the help.
std::set<std::string> first_words_below(const std::string& help, std::string_view heading, const std::regex& word) {
    std::set<std::string> words;
    bool below = false;
    for (const std::string& line : lines_of(help)) {
        if (!line.starts_with(' ')) below = line.starts_with(heading);
        std::smatch found;
        if (below && std::regex_search(line, found, word)) words.insert(found[1].str());
    }
    return words;
}

std::set<std::string> commands_below(const std::string& command) {
    return first_words_below(help(command), "Subcommands:", std::regex{"^  ([a-z]+)"});
}

std::set<std::string> commands() { return commands_below(""); }

/// "print", "templates check": what options can follow.
std::set<std::string> whole_commands() {
    std::set<std::string> all;
    for (const std::string& command : commands()) {
        const std::set<std::string> below = commands_below(command);
        if (below.empty()) all.insert(command);
        for (const std::string& one : below) all.insert(command + " " + one);
    }
    return all;
}

std::set<std::string> options_of(const std::string& command) {
    const std::string said = help(command);
    std::set<std::string> options = first_words_below(said, "Options:", std::regex{"^  (?:-[a-z],)?(--[a-z-]+)"});
    const std::regex in_usage{R"(\[(--[a-z-]+) )"};
    for (std::sregex_iterator at{said.begin(), said.end(), in_usage}; at != std::sregex_iterator{}; ++at)
        options.insert((*at)[1].str());
    return options;
}

/// The rows of the README's table of options: option, and the commands that have it.
std::set<std::string> options_in_readme(const std::string& readme) {
    std::set<std::string> rows;
    const std::regex row{R"(\n\| `[^|]*?(--[a-z-]+)[^`]*` \| ([a-z, ]+) \|)"};
    for (std::sregex_iterator at{readme.begin(), readme.end(), row}; at != std::sregex_iterator{}; ++at) {
        const std::string of = (*at)[2].str();
        const std::regex name{"[a-z]+(?: [a-z]+)*"};
        for (std::sregex_iterator command{of.begin(), of.end(), name}; command != std::sregex_iterator{}; ++command)
            rows.insert(command->str() + " " + (*at)[1].str());
    }
    return rows;
}

TEST_CASE("the README lists every command, and no other") {
    const std::string readme = contents(kProject / "README.md");
    std::set<std::string> listed;
    const std::regex line{R"(\n    ventfolio ([a-z]+))"};
    for (std::sregex_iterator at{readme.begin(), readme.end(), line}; at != std::sregex_iterator{}; ++at)
        listed.insert((*at)[1].str());
    CHECK(listed.size() > 3);
    CHECK(listed == commands());
}

TEST_CASE("the README lists every option of every command, and no other") {
    std::set<std::string> options;
    for (const std::string& command : whole_commands())
        for (const std::string& option : options_of(command))
            if (option != "--help") options.insert(command + " " + option);
    CHECK(options.contains("print --sheet"));
    CHECK(options.contains("templates check --large-print"));
    CHECK(options_in_readme(contents(kProject / "README.md")) == options);
}

/// A manual page as someone reads it, without the strokes of a typewriter; its lines are as long as they get.
std::string manual_page(const char* page) {
    const Ran ran = run_in(fs::path{VENTFOLIO_BINARY_DIR} / "manual",
                           std::string{"groff -man -ww -Kutf8 -Tutf8 -P-cbou -rLL=2000n "} + page);
    CHECK(ran.status == 0);
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    return ran.out;
}

/// How a command may end, as its help says: {0, 2, 3}.
std::set<int> statuses_of(const std::string& command) {
    const std::string said = help(command);
    std::smatch line;
    REQUIRE_MESSAGE(std::regex_search(said, line, std::regex{"\nExit status: ([0-9, ]+)\n"}), command);
    std::set<int> statuses;
    for (const char letter : line[1].str())
        if (letter >= '0' && letter <= '9') statuses.insert(letter - '0');
    return statuses;
}

std::string in_words(const std::set<int>& statuses) {
    std::string words;
    for (const int status : statuses) words += (words.empty() ? "" : ", ") + std::to_string(status);
    return words;
}

// groff tells of every macro that it does not know (-ww).
TEST_CASE("the manual has every command, option and exit status") {
    const std::string manual = manual_page("ventfolio.1");
    for (const std::string& command : whole_commands()) {
        CAPTURE(command);
        const std::size_t begin = manual.find("\n   " + command + "\n");
        REQUIRE(begin != std::string::npos);
        const std::regex next{R"(\n(?:   )?[A-Za-z])"};
        std::smatch end;
        const std::string rest = manual.substr(begin + 2);
        const std::string part =
            std::regex_search(rest, end, next) ? rest.substr(0, std::size_t(end.position())) : rest;
        for (const std::string& option : options_of(command)) {
            CAPTURE(option);
            if (option != "--help") CHECK(std::regex_search(part, std::regex{"\n       (-[a-z], )?" + option + "\\b"}));
        }
        CHECK(part.find("\n       Exit status: " + in_words(statuses_of(command)) + ".\n") != std::string::npos);
    }
    for (const char* status : {"0", "1", "2", "3"})
        CHECK(manual.find("\n       " + std::string{status} + "      ") != std::string::npos);
}

TEST_CASE("the manual has every field, rule and calculator") {
    struct Row {
        const char* list;
        const char* page;
        std::size_t at_least;
    };
    for (const Row& row : {Row{"fields", "ventfolio-profile.5", 300}, Row{"rules", "ventfolio-rules.7", 120},
                           Row{"calculators", "ventfolio-rules.7", 30}}) {
        const std::string manual = manual_page(row.page);
        const Ran ran = run_in(kProject, quoted(VENTFOLIO_PROGRAM) + " list " + row.list);
        std::size_t names = 0;
        for (const std::string& line : lines_of(ran.out)) {
            const std::string name = line.substr(0, line.find(' '));
            if (name.empty()) continue;
            ++names;
            CAPTURE(name);
            CHECK(manual.find("\n       " + name + "\n") != std::string::npos);
        }
        CHECK(names >= row.at_least);
    }
}

/// What a shell offers behind these words; the last of them is begun.
std::string offered_by_bash(const std::string& words) {
    const Ran ran =
        run_in(kProject, "PATH=" + quoted(fs::path{VENTFOLIO_PROGRAM}.parent_path()) + ":$PATH bash -c '. " +
                             (fs::path{VENTFOLIO_BINARY_DIR} / "manual/ventfolio.bash").string() + "; COMP_WORDS=(" +
                             words + "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _ventfolio; echo ${COMPREPLY[*]}'");
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    return ran.out;
}

/// The same of zsh, with what would be offered printed in place of the menu.
std::string offered_by_zsh(const std::string& words) {
    const Ran ran =
        run_in(kProject, "PATH=" + quoted(fs::path{VENTFOLIO_PROGRAM}.parent_path()) +
                             ":$PATH zsh -f -c 'compadd() { shift; echo $*; }; _arguments() { print -l -- $*; }; "
                             "complete_it() { . " +
                             (fs::path{VENTFOLIO_BINARY_DIR} / "manual/_ventfolio").string() + "; }; words=(" + words +
                             "); CURRENT=${#words}; complete_it'");
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    return ran.out;
}

TEST_CASE("the tab key offers commands, options, choices and names") {
    struct Row {
        const char* words;
        const char* offered;
    };
    constexpr Row rows[] = {
        {"ventfolio pr", "print\n"},
        {"ventfolio templates \"\"", "export check\n"},
        {"ventfolio templates check --large", "--large-print\n"},
        {"ventfolio print home.yaml --sum", "--summary\n"},
        {"ventfolio print home.yaml --summary \"\"", "text json csv\n"},
        {"ventfolio print home.yaml --sheet bed", "bedside-card\n"},
        {"ventfolio explain pulse-oxygen-on-v", "pulse-oxygen-on-ventilator\n"},
        {"ventfolio explain suction.depth_", "suction.depth_mark\n"},
        {"ventfolio list ca", "calculators\n"},
        {"ventfolio calc --f", "--format\n"},
        {"ventfolio check profiles/adult-mas", "profiles/adult-mask.yaml\n"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CHECK(offered_by_bash(row.words) == row.offered);
    }
    CHECK(offered_by_zsh("ventfolio \"\"").starts_with("check print update match"));
    CHECK(offered_by_zsh("ventfolio templates \"\"") == "export check\n");
    const std::string print = offered_by_zsh("ventfolio print \"\"");
    CHECK(print.find("*--summary[What became of each home, as text, json or csv]:value:(text json csv)\n") !=
          std::string::npos);
    CHECK(print.find("*--resume[Leave packets alone that are what would be printed]\n") != std::string::npos);
    CHECK(offered_by_zsh("ventfolio explain \"\"").find("pulse-oxygen-on-ventilator") != std::string::npos);
}

TEST_CASE("exit statuses are those of the README") {
    struct Row {
        const char* words;
        int status;
    };
    constexpr Row rows[] = {
        {"check profiles/adult-tracheostomy.yaml --on 2026-02-03", 0},
        {"check tests/faults/number-without-unit.yaml --on 2026-02-03", 1},
        {"print tests/faults/number-without-unit.yaml --on 2026-02-03 -o build/not-made", 1},
        {"", 2},
        {"chekc", 2},
        {"check", 2},
        {"print profiles/adult-mask.yaml --on 2026-02-30 -o build/not-made", 2},
        {"explain no-such-rule", 2},
        {"check profiles/no-such-home.yaml", 3},
        {"list sheets", 0},
    };
    const std::string readme = contents(kProject / "README.md");
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CHECK(run_in(kProject, quoted(VENTFOLIO_PROGRAM) + " " + row.words).status == row.status);
        CHECK(readme.find("\n| " + std::to_string(row.status) + " | ") != std::string::npos);
    }
}

TEST_CASE("each command ends with each status that its help names, and with no other") {
    struct Row {
        const char* command;
        const char* words;
        int status;
    };
    constexpr Row rows[] = {
        {"check", "profiles/adult-mask.yaml --on 2026-02-03", 0},
        {"check", "faults/number-without-unit.yaml --on 2026-02-03", 1},
        {"check", "profiles/adult-mask.yaml --lang Klingon", 2},
        {"check", "gone.yaml", 3},
        {"print", "profiles/adult-tracheostomy.yaml --on 2026-02-03 -o papers", 0},
        {"print", "faults/number-without-unit.yaml --on 2026-02-03 -o refused", 1},
        {"print", "profiles/adult-mask.yaml --sheet no-such-sheet -o refused", 2},
        {"print", "profiles/adult-mask.yaml --on 2026-02-03 -o papers", 3},  // another person's
        {"update", "profiles/adult-tracheostomy-revision-2.yaml --from papers --on 2026-03-17 --dry-run", 0},
        {"update", "faults/number-without-unit.yaml --from papers --on 2026-03-17 --dry-run", 1},
        {"update", "profiles/adult-tracheostomy-revision-2.yaml --on 2026-03-17 --dry-run", 2},
        {"update", "profiles/adult-tracheostomy-revision-2.yaml --from gone --on 2026-03-17 --dry-run", 3},
        {"match", "papers CODE --on 2026-02-03", 0},
        {"match", "papers 000-000 --on 2026-02-03", 1},
        {"match", "papers five --on 2026-02-03", 2},
        {"match", "gone 000-000", 3},
        {"outage", "profiles/adult-mask.yaml --on 2026-02-03 --hours 8", 0},
        {"outage", "faults/number-without-unit.yaml --on 2026-02-03 --hours 8", 1},
        {"outage", "profiles/adult-mask.yaml", 2},
        {"outage", "gone.yaml --hours 8", 3},
        {"due", "profiles/adult-mask.yaml --on 2026-02-03", 0},
        {"due", "faults/number-without-unit.yaml --on 2026-02-03", 1},
        {"due", "profiles/adult-mask.yaml --within soon", 2},
        {"due", "gone.yaml", 3},
        {"calc", "predicted-weight --sex male --height \"170 cm\" --years 44", 0},
        {"calc", "predicted-weight --sex male --height \"20 cm\" --years 44", 1},
        {"calc", "predicted-weight", 2},
        {"calc", "> /dev/full", 3},
        {"explain", "suction.depth", 0},
        {"explain", "no-such-rule", 2},
        {"explain", "suction.depth > /dev/full", 3},
        {"list", "rules", 0},
        {"list", "people", 2},
        {"list", "rules > /dev/full", 3},
        {"templates export", "clinic", 0},
        {"templates export", "", 2},
        {"templates export", "clinic", 3},  // is not empty
        {"templates check", "clinic profiles/adult-mask.yaml --on 2026-02-03", 0},
        {"templates check", "bad profiles/adult-mask.yaml --on 2026-02-03", 1},
        {"templates check", "", 2},
        {"templates check", "gone profiles/adult-mask.yaml", 3},
        {"new", "", 0},
        {"new", "--no-such-option", 2},
        {"new", "> /dev/full", 3},  // full(4): every write fails with ENOSPC
        {"schema", "", 0},
        {"schema", "--of folder", 2},
        {"schema", "> /dev/full", 3},
    };
    const Scratch scratch;
    fs::create_directory_symlink(kProject / "profiles", scratch.path("profiles"));
    fs::create_directory_symlink(kProject / "tests/faults", scratch.path("faults"));
    fs::create_directories(scratch.path("bad/en"));
    save(scratch.path("bad/en/note.md"),
         "---\ntitle: Note\naudience: wall\norder: 75\n---\n## Note\n\n{{no_such_name}}\n");
    std::map<std::string, std::set<int>> seen;
    std::string code = "none yet";
    for (const Row& row : rows) {
        CAPTURE(std::string{row.command});
        CAPTURE(std::string{row.words});
        const std::string words = std::regex_replace(std::string{row.words}, std::regex{"CODE"}, code);
        const Ran ran = run_in(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " " + row.command + " " + words);
        CHECK_MESSAGE(ran.status == row.status, ran.err);
        seen[row.command].insert(ran.status);
        std::smatch found;
        const fs::path record = scratch.path("papers/packet.json");
        if (fs::exists(record)) {
            const std::string text = contents(record);
            if (std::regex_search(text, found, std::regex{R"re("code": "([0-9A-Z]{3}-[0-9A-Z]{3})")re"}))
                code = found[1];
        }
    }
    for (const std::string& command : whole_commands()) {
        CAPTURE(command);
        CHECK(in_words(seen[command]) == in_words(statuses_of(command)));
    }
}

TEST_CASE("the example of each command works") {
    const Scratch scratch;
    fs::create_directory_symlink(kProject / "profiles", scratch.path("profiles"));
    const auto run_example_of = [&](const std::string& command, const std::string& code) {
        const std::string said = help(command);
        const std::regex example{R"(\nExample: ventfolio (.+)\n)"};
        std::smatch found;
        CAPTURE(said);
        REQUIRE(std::regex_search(said, found, example));
        const std::string words = std::regex_replace(found[1].str(), std::regex{"K7M-2QD"}, code);
        CHECK(run_in(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " " + words).status == 0);
    };
    run_example_of("print", "");  // the papers that others are about
    // The code in the example of `match` is invented; one that stands on these papers takes its place.
    const std::string record = contents(scratch.path("papers/packet.json"));
    std::smatch code;
    REQUIRE(std::regex_search(record, code, std::regex{R"re("code": "([0-9A-Z]{3}-[0-9A-Z]{3})")re"}));
    for (const std::string& command : commands()) run_example_of(command, code[1].str());
}

}  // namespace
}  // namespace ventfolio::project
