#include "project/documents.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <regex>
#include <set>

#include "project/files.hpp"
#include "project/shell.hpp"

/// What README.md and DEVELOPERS.md promise is there.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kProject{VENTFOLIO_SOURCE_DIR};

std::string text(std::string_view file) { return contents(kProject / file); }

std::vector<std::string> all_matches(const std::string& in, const std::regex& pattern) {
    std::vector<std::string> found;
    for (std::sregex_iterator at{in.begin(), in.end(), pattern}; at != std::sregex_iterator{}; ++at)
        found.push_back((*at)[1].str());
    return found;
}

/// The two commands of the README.
std::vector<std::string> commands() {
    std::vector<std::string> blocks = fenced_blocks(text("README.md"), "sh");
    REQUIRE(blocks.size() >= 2);
    blocks.resize(2);
    return blocks;
}

std::set<std::string> words_of(const std::string& block) {
    const auto words = all_matches(block, std::regex{"(\\S+)"});
    return {words.begin(), words.end()};
}

/// What is quoted as code links nowhere.
std::string without_code(const std::string& markdown) {
    return std::regex_replace(markdown, std::regex{R"(\n    [^\n]*|`[^`\n]*`)"}, "");
}

/// Names of Debian packages in what CMake says when something is missing, comments left out.
std::set<std::string> packages_asked_for_in(const std::vector<fs::path>& files) {
    std::set<std::string> packages;
    const std::regex asked{
        R"((?:\bPACKAGE|ventfolio_package\(\S+|ventfolio_font\(\S+ \S+|ventfolio_missing\("[^"$]*")\s+([a-z0-9.+-]+)\b)"};
    for (const fs::path& file : files) {
        const std::string commands = std::regex_replace(contents(file), std::regex{"#[^\n]*"}, "");
        for (std::string& package : all_matches(commands, asked)) packages.insert(std::move(package));
    }
    return packages;
}

TEST_CASE("the two commands of the README stop at the first step that fails") {
    for (const std::string& block : commands()) {
        CAPTURE(block);
        const std::vector<std::string> lines = lines_of(block);
        REQUIRE(lines.size() > 3);
        for (std::size_t at = 0; at + 1 < lines.size(); ++at) {
            CAPTURE(lines[at]);
            CHECK((lines[at].ends_with("&&") || lines[at].ends_with(" \\")));
        }
        CHECK(block.find("apt-get update &&") != std::string::npos);
        CHECK(block.find("--no-install-recommends") != std::string::npos);
        const Scratch scratch;
        save(scratch.path("block"), block);
        CHECK(run_in(scratch.folder(), "bash -n block").status == 0);
        CHECK(run_in(scratch.folder(), "sh -n block").status == 0);
    }
    CHECK(lines_of(commands()[0]).back() ==
          "build/release/ventfolio print profiles/adult-tracheostomy.yaml --on 2026-02-03 -o papers");
    CHECK(lines_of(commands()[1]).back() == "ctest --preset release");
}

TEST_CASE("the commands of the README install every package that the build asks for") {
    const std::set<std::string> program = packages_asked_for_in({kProject / "cmake/Libraries.cmake"});
    std::set<std::string> tests;
    for (const fs::path& file : files_below(kProject / "tests", {".txt"})) tests.merge(packages_asked_for_in({file}));
    REQUIRE(program.contains("libhpdf-dev"));
    REQUIRE(program.contains("fonts-noto-core"));
    REQUIRE(tests.contains("doctest-dev"));
    const std::set<std::string> first = words_of(commands()[0]);
    const std::set<std::string> second = words_of(commands()[1]);
    for (const std::string& package : program) {
        CAPTURE(package);
        CHECK(first.contains(package));
        CHECK(second.contains(package));
    }
    for (const std::string& package : tests) {
        CAPTURE(package);
        CHECK(second.contains(package));
    }
}

TEST_CASE("links between the documents lead somewhere") {
    for (const std::string_view file : {"README.md", "DEVELOPERS.md"}) {
        CAPTURE(file);
        const auto links = all_matches(without_code(text(file)), std::regex{R"(\]\(([^)#:]+)\))"});
        CHECK(!links.empty());
        for (const std::string& link : links) {
            INFO("a picture below samples/ is made by the target samples");
            CAPTURE(link);
            CHECK(fs::exists(kProject / link));
        }
    }
}

TEST_CASE("files that the documents name exist") {
    // In backticks, from a top folder on; a name with capitals (TOPIC.hpp) stands for any.
    const std::regex named{R"(`((?:src|tests|templates|profiles|samples|cmake|licenses|\.ci)/[a-z0-9_./-]*)`)"};
    for (const std::string_view file : {"README.md", "DEVELOPERS.md"})
        for (const std::string& path : all_matches(text(file), named)) {
            CAPTURE(file);
            CAPTURE(path);
            CHECK(fs::exists(kProject / path));
        }
}

TEST_CASE("the script of the server is a program that the shell can read") {
    const auto mode = fs::status(kProject / ".ci/run").permissions();
    CHECK((mode & fs::perms::owner_exec) != fs::perms::none);
    CHECK(run_in(kProject, "bash -n .ci/run").status == 0);
}

}  // namespace
}  // namespace ventfolio::project
