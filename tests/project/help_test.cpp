#include <doctest/doctest.h>

#include <filesystem>
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
